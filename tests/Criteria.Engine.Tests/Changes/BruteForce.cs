using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Changes;
using Criteria.Engine.Plans;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Changes;

/// <summary>What every single value of a fact would turn: the whole plan is run anew for each, and nothing is skipped.</summary>
internal sealed class BruteForce
{
    private readonly RulesInForce _rules;
    private readonly Plan _plan;
    private readonly Case _case;
    private readonly VerdictSheet _before;

    /// <param name="rules">The rules.</param>
    /// <param name="subject">The case.</param>
    /// <param name="settling">Whether it is tried, for each value, what every completion of the unknown facts agrees on.</param>
    public BruteForce(RulesInForce rules, Case subject, bool settling)
    {
        (_rules, _plan, _case) = (rules, settling ? new Plan(rules) : Plan.WithoutSettling(rules), subject);
        _before = _plan.Run(subject);
    }

    /// <summary>The findings that are open, as the keys name them.</summary>
    public HashSet<string> Open() => [.. Places().Where(place => _before[place.Criterion.Index, place.Night].Standing == Standing.Undetermined).Select(place => Key(place.Criterion, place.Night))];

    /// <summary>The values of a fact's grid, or all its words, or every day of some years.</summary>
    public static IEnumerable<Fact> Values(FactDefinition fact)
    {
        if (fact.Kind == FactKind.YesNo)
        {
            return [Fact.Known(fact, new YesNoValue(true), Provenance.Entered), Fact.Known(fact, new YesNoValue(false), Provenance.Entered)];
        }

        if (fact.Kind == FactKind.Choice)
        {
            return fact.Choices.Select(word => Fact.Known(fact, new ChoiceValue(word), Provenance.Entered));
        }

        if (fact.Kind == FactKind.Date)
        {
            return Enumerable.Range(0, 1500).Select(day => Fact.Known(fact, new DateValue(new DateOnly(2025, 1, 1).AddDays(day)), Provenance.Entered));
        }

        var grid = Grid.Of(fact, Rules.Library.Vocabulary)!;
        return Enumerable.Range(0, (int)(grid.Last - grid.First) + 1).Select(step => grid.At(grid.First + step));
    }

    /// <summary>For each finding that some value turns: the nearest such value under the present one, and over it; of words, each.</summary>
    public SortedDictionary<string, string> Turns(FactDefinition fact, int night)
    {
        var facts = fact.Scope == FactScope.Night ? _case.Nights[night].Facts : _case.Facts;
        var present = Place(facts[fact]);
        var turns = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var nearest = new Dictionary<string, decimal>(StringComparer.Ordinal);
        foreach (var value in Values(fact).Where(value => !value.Value!.Equals(facts[fact].Value)))
        {
            var after = _plan.Run(Changed(_case, [value, .. Companions.Of(fact, facts)], fact.Scope == FactScope.Night ? night : null));
            var distance = Place(value) - present;
            foreach (var (key, words) in Differences(after))
            {
                var side = distance is null ? value.Text : distance < 0 ? "under" : "over";
                var far = Math.Abs(distance ?? 0);
                if (!nearest.TryGetValue($"{key} {side}", out var known) || far < known)
                {
                    nearest[$"{key} {side}"] = far;
                    turns[$"{key} {side}"] = $"{(fact.Rounded ? value.Written : value.Text)}: {words}";
                }
            }
        }

        return turns;
    }

    /// <summary>The pairs of values that turn a finding though neither does alone: of each side, those that no nearer pair does as well.</summary>
    public string[] Pairs(FactDefinition first, FactDefinition second, Criterion finding, int night)
    {
        var found = new List<(Fact First, Fact Second, Verdict After)>();
        var others = NotAlone(second).ToArray();
        foreach (var one in NotAlone(first))
        {
            foreach (var other in others)
            {
                var after = _plan.Run(Changed(Changed(_case, one, night), other, night));
                if (IsTurn(finding, after, night) && !IsImpossible(after))
                {
                    found.Add((one, other, after[finding.Index, night]));
                }
            }
        }

        return
        [
            .. found.Where(pair => !found.Any(nearer => nearer != pair && nearer.After == pair.After && IsNoFurther(nearer.First, pair.First) && IsNoFurther(nearer.Second, pair.Second)))
                .Select(pair => $"{Written(pair.First)}, {Written(pair.Second)}: {new Turn(finding, null, _before[finding.Index, night], pair.After).AfterWords}").Order(StringComparer.Ordinal),
        ];

        IEnumerable<Fact> NotAlone(FactDefinition fact) => Values(fact).Where(value => !value.Value!.Equals(FactsOf(fact, night)[fact].Value))
            .Where(value => _plan.Run(Changed(_case, value, night)) is var after && (!IsTurn(finding, after, night) || IsImpossible(after)));

        bool IsNoFurther(Fact one, Fact other) => Place(one) is { } place && Place(FactsOf(one.Definition, night)[one.Definition]) is { } present
            ? Math.Sign(place - present) == Math.Sign(Place(other)!.Value - present) && Math.Abs(place - present) <= Math.Abs(Place(other)!.Value - present)
            : one == other;
    }

    /// <summary>Whether a pair, as <see cref="Pairs"/> writes it, turns the finding though neither value does alone.</summary>
    public bool IsPair(string pair, FactDefinition first, FactDefinition second, Criterion finding, int night)
    {
        var written = pair[..pair.LastIndexOf(": ", StringComparison.Ordinal)].Split(", ");
        var (one, other) = (Values(first).First(value => Written(value) == written[0]), Values(second).First(value => Written(value) == written[1]));
        return Turns(Changed(Changed(_case, one, night), other, night)) && !Turns(Changed(_case, one, night)) && !Turns(Changed(_case, other, night));

        bool Turns(Case changed) => _plan.Run(changed) is var after && IsTurn(finding, after, night) && !IsImpossible(after);
    }

    /// <summary>The value as a change writes it.</summary>
    public static string Written(Fact fact) => fact.Definition.Rounded ? fact.Written! : fact.Text;

    private FactSet FactsOf(FactDefinition fact, int night) => fact.Scope == FactScope.Night ? _case.Nights[night].Facts : _case.Facts;

    private bool IsTurn(Criterion finding, VerdictSheet after, int night) =>
        new Turn(finding, null, _before[finding.Index, night], after[finding.Index, night]) is { Before.Standing: not Standing.Undetermined, After.Standing: not Standing.Undetermined } turn
        && (turn.BeforeWords != turn.AfterWords || Bands(turn.Before) != Bands(turn.After));

    private static Case Changed(Case subject, Fact value, int night)
    {
        var fact = value.Definition;
        var facts = fact.Scope == FactScope.Night ? subject.Nights[night].Facts : subject.Facts;
        return Changed(subject, [value, .. Companions.Of(fact, facts)], fact.Scope == FactScope.Night ? night : null);
    }

    /// <summary>For each open finding that some value settles: what to, by every value that does.</summary>
    public SortedDictionary<string, int> Settled(FactDefinition fact, int night)
    {
        var facts = fact.Scope == FactScope.Night ? _case.Nights[night].Facts : _case.Facts;
        var settled = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var value in Values(fact))
        {
            var after = _plan.Run(Changed(_case, [value, .. Companions.Of(fact, facts)], fact.Scope == FactScope.Night ? night : null));
            if (IsImpossible(after))
            {
                continue;
            }

            foreach (var (criterion, place) in Places())
            {
                if (_before[criterion.Index, place].Standing == Standing.Undetermined && after[criterion.Index, place].Standing != Standing.Undetermined)
                {
                    var key = Key(criterion, place);
                    settled[key] = settled.GetValueOrDefault(key) + 1;
                }
            }
        }

        return settled;
    }

    /// <summary>The same, of an outlook.</summary>
    public static SortedDictionary<string, string> Turns(Outlook outlook, FactDefinition fact, Fact present, string? night)
    {
        var turns = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var change in outlook.Changes.Where(change => change.Fact == fact.Id && change.Night == night))
        {
            var value = Values(fact).First(value => (fact.Rounded ? value.Written : value.Text) == change.To);
            var distance = Place(value) - Place(present);
            foreach (var turn in change.Turns)
            {
                turns.Add($"{turn.Criterion.Id} {turn.Night} {(distance is null ? value.Text : distance < 0 ? "under" : "over")}", $"{change.To}: {turn.AfterWords}");
            }
        }

        return turns;
    }

    private string Key(Criterion criterion, int place) => $"{criterion.Id} {(criterion.PerNight ? _case.Nights[place].Label : "")}";

    private IEnumerable<(Criterion Criterion, int Night)> Places() => _rules.Criteria.Where(criterion => criterion.Shown != Shown.InTheTrace)
        .SelectMany(criterion => Enumerable.Range(0, criterion.PerNight ? _case.Nights.Length : 1).Select(night => (criterion, night)));

    private IEnumerable<(string Key, string Words)> Differences(VerdictSheet after)
    {
        if (IsImpossible(after))
        {
            yield break;
        }

        foreach (var (criterion, night) in Places().Where(place => !place.Criterion.Impossible))
        {
            var turn = new Turn(criterion, null, _before[criterion.Index, night], after[criterion.Index, night]);
            if (turn.Before.Standing != Standing.Undetermined && turn.After.Standing != Standing.Undetermined && (turn.BeforeWords != turn.AfterWords || Bands(turn.Before) != Bands(turn.After)))
            {
                yield return (Key(criterion, night), turn.AfterWords);
            }
        }
    }

    private static (int, int) Bands(Verdict verdict) => verdict.Standing == Standing.Met ? (verdict.LowestBand, verdict.HighestBand) : (0, 0);

    // Contradictions that the change makes; those that were there before are not its fault.
    private bool IsImpossible(VerdictSheet after) => _rules.Criteria.Where(criterion => criterion.Impossible).Any(criterion =>
        Enumerable.Range(0, criterion.PerNight ? _case.Nights.Length : 1).Any(night => after[criterion.Index, night].Standing == Standing.Met && _before[criterion.Index, night].Standing != Standing.Met));

    private static Case Changed(Case subject, IReadOnlyList<Fact> facts, int? night) => night is { } place
        ? subject with { Nights = subject.Nights.SetItem(place, subject.Nights[place] with { Facts = subject.Nights[place].Facts.With(facts) }) }
        : subject with { Facts = subject.Facts.With(facts), Nights = [.. subject.Nights.Select(each => each with { Facts = each.Facts.With(facts) })] };

    private static decimal? Place(Fact fact) => fact.Value switch
    {
        NumberValue number => (number.Printed ?? number.Range.Low).Rounded,
        DateValue date => date.Date.DayNumber,
        _ => null,
    };
}

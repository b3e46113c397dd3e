using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Tests.Differential;

/// <summary>Makes random cases for one ruleset: each fact that it may read is unknown, or lies at, just below or just above a threshold.</summary>
/// <remarks>The numbers of a seed are the same on every machine.</remarks>
internal sealed class CaseMaker
{
    private const int MinutesPerHour = 60;
    private static readonly decimal[] AnyMinutes = [60, 119, 120, 180, 239, 240, 300, 360, 420, 480];
    private static readonly decimal[] AnyCount = [0, 1, 2, 5, 10, 20, 30, 40, 60, 100];
    private static readonly int[] AnyDay = [-400, -366, -365, -184, -183, -100, -92, -91, -90, -31, -30, -10, -1, 0, 1, 10, 30, 31, 90, 91, 92];

    private readonly Ruleset _ruleset;
    private readonly ImmutableArray<FactDefinition> _read;
    private readonly Dictionary<string, SortedSet<decimal>> _bounds = new(StringComparer.Ordinal);
    private readonly ImmutableArray<RecordDefinition> _records;
    private readonly Random _random;
    private double _open;
    private double _yes;

    public CaseMaker(string ruleset, int seed)
    {
        _ruleset = CoveredRulesets.Find(ruleset);
        _random = new Random(seed);
        var rules = Support.Rules.Library.InForce(Support.Rules.Date, _ruleset.Payer, _ruleset.Item);
        Rules = rules;
        Criteria = [.. rules.Criteria.Where(criterion => criterion.Ruleset.Id == ruleset)];
        var wanted = Reads(rules, Criteria);
        RestsOn = [.. wanted.Select(criterion => criterion.Ruleset).Distinct().OrderBy(other => other.Id == ruleset).ThenBy(other => other.Order).Select(other => other.Id)];
        _records = [.. wanted.SelectMany(criterion => criterion.ReadsRecords).Distinct()];
        var facts = new SortedDictionary<int, FactDefinition>();
        foreach (var criterion in wanted)
        {
            foreach (var slot in criterion.ReadsFacts)
            {
                AddParts(rules.Vocabulary.Facts[slot], facts);
            }

            foreach (var bound in criterion.Bounds)
            {
                AddBound(bound.Fact.Id, bound.At.Rounded);
            }
        }

        _read = [.. facts.Values];
        foreach (var definition in _read.Reverse().Where(definition => definition.Computed is not null))
        {
            PassBoundsDown(definition);
        }
    }

    /// <summary>The rules that count for the cases.</summary>
    public RulesInForce Rules { get; }

    /// <summary>The criteria of the ruleset.</summary>
    public ImmutableArray<Criterion> Criteria { get; }

    /// <summary>The rulesets whose criteria it reads, itself last.</summary>
    public ImmutableArray<string> RestsOn { get; }

    /// <summary>The facts that a case file may state and that the ruleset may read, directly or through others.</summary>
    public IEnumerable<FactDefinition> Stated => _read.Where(definition => definition.Computed is null || definition.At is not null);

    public Case Next(int number)
    {
        _open = Pick(0, 0.05, 0.2, 0.5);
        _yes = Pick(0.1, 0.4, 0.6, 0.9);
        var facts = new Dictionary<string, Fact>(StringComparer.Ordinal);
        foreach (var definition in Stated)
        {
            facts[definition.Id] = Any(definition);
        }

        foreach (var definition in _read)
        {
            Relate(definition, facts);
        }

        Lean(facts);
        Cover(facts);
        var ofCase = FactSet.Of(Vocabulary, facts.Values.Where(fact => fact.Definition.Scope == FactScope.Case), _records.Select(List));
        var ofNight = ofCase.With(facts.Values.Where(fact => fact.Definition.Scope == FactScope.Night));
        return new Case($"HT-{number}", Support.Rules.Date, ofCase, [new Night("night 1", ofNight)]);
    }

    private static Vocabulary Vocabulary => Support.Rules.Library.Vocabulary;

    private static ImmutableArray<Criterion> Reads(RulesInForce rules, IEnumerable<Criterion> criteria)
    {
        var seen = new SortedDictionary<int, Criterion>();
        var open = new Stack<Criterion>(criteria);
        while (open.TryPop(out var criterion))
        {
            if (seen.TryAdd(criterion.Index, criterion))
            {
                foreach (var index in criterion.ReadsCriteria)
                {
                    open.Push(rules.Criteria[index]);
                }
            }
        }

        return [.. seen.Values];
    }

    private static void AddParts(FactDefinition definition, SortedDictionary<int, FactDefinition> facts)
    {
        if (!facts.TryAdd(definition.Slot, definition))
        {
            return;
        }

        foreach (var part in (definition.Computed?.From ?? []).Select(Vocabulary.Find).OfType<FactDefinition>())
        {
            AddParts(part, facts);
        }
    }

    private void AddBound(string fact, decimal bound)
    {
        if (!_bounds.TryGetValue(fact, out var bounds))
        {
            _bounds[fact] = bounds = [];
        }

        bounds.Add(bound);
    }

    // What is computed from parts crosses a threshold when its parts lie near it.
    private void PassBoundsDown(FactDefinition definition)
    {
        if (!_bounds.TryGetValue(definition.Id, out var bounds) || definition.Computed is not { } computed)
        {
            return;
        }

        foreach (var part in computed.From.Select(Vocabulary.Find).OfType<FactDefinition>().Where(part => part.IsNumeric && part.Unit.Dimension == definition.Unit.Dimension))
        {
            foreach (var bound in bounds)
            {
                AddBound(part.Id, bound);
            }
        }
    }

    // Most nights are good ones: by chance alone hardly any would be, and all that waits for a good night would say nothing.
    private void Lean(Dictionary<string, Fact> facts)
    {
        if (_random.Next(_ruleset.Id == "night-adequacy" ? 2 : 5) == 0)
        {
            return;
        }

        foreach (var (id, value) in CoveredRulesets.Leaning)
        {
            if (Often(id) is null && _random.Next(40) > 0 && facts.TryGetValue(id, out var fact))
            {
                facts[id] = Fact.Known(fact.Definition, value, Provenance.Entered, "as written");
            }
        }
    }

    private void Cover(Dictionary<string, Fact> facts)
    {
        Put("coverage.payer", _ruleset.Payer);
        Put("coverage.item", _ruleset.Item);

        void Put(string id, string? word)
        {
            if (word is not null)
            {
                facts[id] = Fact.Known(Vocabulary.Find(id)!, new ChoiceValue(word), Provenance.Entered);
            }
        }
    }

    // What a ruleset is mostly about, if that is said of it.
    private FactValue[]? Often(string fact) => CoveredRulesets.Often.GetValueOrDefault((_ruleset.Id, fact));

    private Fact Any(FactDefinition definition) => Often(definition.Id) is { } often && _random.Next(8) > 0
        ? Fact.Known(definition, Pick(often), Provenance.Entered, "as written")
        : _random.NextDouble() < _open
        ? new Fact(definition, _random.Next(6) switch { 0 => FactState.NotApplicable, 1 or 2 => FactState.Unknown, _ => FactState.Absent }, null, Provenance.Entered)
        : Fact.Known(definition, Value(definition), Provenance.Entered, "as written");

    private FactValue Value(FactDefinition definition) => definition.Kind switch
    {
        _ when definition.Scope == FactScope.Record && CoveredRulesets.Leaning.TryGetValue(definition.Id, out var value) && _random.Next(4) > 0 => value,
        FactKind.YesNo => new YesNoValue(_random.NextDouble() < _yes),
        FactKind.Choice => new ChoiceValue(Pick([.. definition.Choices])),
        FactKind.Date when definition.AlsoYesNo && _random.Next(2) == 0 => new YesNoValue(_random.NextDouble() < _yes),
        FactKind.Date => new DateValue(Support.Rules.Date.AddDays(_random.Next(2) == 0 ? Pick(-1, 0, 1) : Pick(AnyDay))),
        FactKind.Code => new CodeValue(Pick([.. Codes(definition)])),
        FactKind.Text => new TextValue("text"),
        FactKind.Durations => new DurationsValue([.. Enumerable.Range(0, _random.Next(100)).Select(_ => Night())]),
        _ => Number(definition, Near(definition)),
    };

    private static IEnumerable<string> Codes(FactDefinition definition) =>
        Vocabulary.CodeSets.Where(set => set.System == definition.System).SelectMany(set => set.Codes.Select(code => code.Code)).Append("Z00.00");

    private Ratio? Night() => _random.Next(20) switch { 0 => null, < 15 => 240, _ => Pick(0m, 239, 300) };

    // A value at, just below or just above one of the thresholds of the fact.
    private decimal Near(FactDefinition definition)
    {
        if (CoveredRulesets.Near.TryGetValue(definition.Id, out var near))
        {
            return Pick(near);
        }

        if (!_bounds.TryGetValue(definition.Id, out var bounds))
        {
            return Pick(definition.Kind == FactKind.Duration ? AnyMinutes : AnyCount);
        }

        var step = definition.Kind == FactKind.Number && definition.Unit.Dimension != Dimension.Age ? 0.1m : 1;
        return Pick([.. bounds]) + (step * Pick(-1, 0, 1));
    }

    // A printed figure stands for what rounds to it.
    private static NumberValue Number(FactDefinition definition, decimal value)
    {
        var range = definition.Range!.Value;
        var inside = Math.Clamp(value, range.Low.Rounded, range.High.Rounded);
        return definition.Rounded
            ? new NumberValue(new Interval(Math.Max(0, inside - 0.05m), inside + 0.05m, HighIncluded: false), inside)
            : new NumberValue(Interval.Exactly(inside));
    }

    // Counts that meet a threshold of the rate over the time that the case gives; weights that meet one of the body mass index.
    private void Relate(FactDefinition definition, Dictionary<string, Fact> facts)
    {
        if (definition.Computed is not { } computed || !_bounds.TryGetValue(definition.Id, out var bounds) || _random.Next(5) == 0)
        {
            return;
        }

        switch (computed.Measure)
        {
            case "body mass index":
                Meet("weight", Minutes("height") is { } height ? Pick([.. bounds]) * height * height / 10_000 : null, 0.5m);
                break;
            case "rate over":
                var events = Vocabulary.Find(computed.From[0])!;
                var part = events.Computed is { From: var parts } ? Pick([.. parts]) : events.Id;
                Meet(part, Minutes(computed.From[1]) is { } time ? Pick([.. bounds]) * time / MinutesPerHour : null, 1);
                break;
            default:
                if (Vocabulary.Indices.FirstOrDefault(index => index.Rate == definition) is { } own)
                {
                    Index(own, bounds);
                }

                break;
        }

        decimal? Minutes(string id) => facts.GetValueOrDefault(id)?.Number?.Low.Rounded;

        void Meet(string id, decimal? value, decimal step)
        {
            if (value is { } target && facts.TryGetValue(id, out var fact) && fact.IsKnown)
            {
                facts[id] = Fact.Known(fact.Definition, Number(fact.Definition, decimal.Round(target) + (step * Pick(-1, 0, 1))), Provenance.Entered, "as written");
            }
        }

        // Nothing, the printed figure only, count and time only, or all three, agreeing or not.
        void Index(IndexDefinition index, SortedSet<decimal> rates)
        {
            var form = _random.Next(8);
            if (form is 0 or 1 or 2 or 3)
            {
                facts[index.Events.Id] = Fact.Absent(index.Events);
            }

            if (form is 0 or 4 or 5)
            {
                facts[index.Printed.Id] = Fact.Absent(index.Printed);
            }

            if (_random.Next(2) == 0 && facts.ContainsKey(computed.From[3]))
            {
                facts[index.Time.Id] = Fact.Absent(index.Time);
            }

            if (form is >= 4 and not 7 && (Minutes(index.Time.Id) ?? Minutes(computed.From[3])) is > 0 and { } minutes)
            {
                var count = Math.Max(0, decimal.Round(Pick([.. rates]) * minutes / MinutesPerHour) + Pick(-1, 0, 1));
                facts[index.Events.Id] = Fact.Known(index.Events, Number(index.Events, count), Provenance.Entered, "as written");
                if (form == 6)
                {
                    var printed = decimal.Round(count * MinutesPerHour / minutes, 1, MidpointRounding.AwayFromZero);
                    facts[index.Printed.Id] = Fact.Known(index.Printed, Number(index.Printed, printed), Provenance.Entered, "as written");
                }
            }
        }
    }

    private RecordList List(RecordDefinition definition)
    {
        var kinds = CoveredRulesets.Kinds.GetValueOrDefault(_ruleset.Id)?.Intersect(definition.Kinds).ToArray() is { Length: > 0 } known
            ? known
            : [.. definition.Kinds];
        var items = Enumerable.Range(1, _random.Next((kinds.Length * 2) + 1))
            .Select(number => new CaseRecord($"{definition.At}-{number}", Pick(kinds), [.. definition.Attributes.Select(Any)]));
        return new RecordList(definition, [.. items], _random.NextDouble() > _open * 2 ? "a reviewer" : null);
    }

    private T Pick<T>(params T[] choices) => choices[_random.Next(choices.Length)];
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Changes;

/// <summary>The facts that open findings wait for, and what an answer to each settles by itself.</summary>
internal sealed class Questions
{
    private readonly Vocabulary _vocabulary;
    private readonly Dictionary<int, Criterion> _open;
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly List<MissingFact> _order = [];
    private readonly Dictionary<(string Fact, string Label), List<string>> _waiting = [];
    private readonly Dictionary<string, List<(string? Text, ImmutableArray<Settles> Settles)>> _learned = new(StringComparer.Ordinal);

    public Questions(Assessment assessment, Vocabulary vocabulary)
    {
        _vocabulary = vocabulary;
        _open = assessment.Findings.Where(finding => Settler.IsOpen(finding.Conclusion.Verdict)).Select(finding => finding.Criterion).Distinct().ToDictionary(criterion => criterion.Index);
        foreach (var finding in assessment.Findings)
        {
            foreach (var missing in finding.Missing.Concat(finding.Conclusion.MissingOfValue))
            {
                Wait(missing, finding.Id);
            }
        }
    }

    private sealed record Settling(Criterion Criterion, string? Night, string?[] Answers)
    {
        public bool Always => Answers.Length > 1 && Answers.All(answer => answer is not null);
    }

    /// <summary>Whether something waits for that fact.</summary>
    public bool Has(string id) => _ids.Contains(id);

    /// <summary>What each value of a fact would move.</summary>
    /// <param name="id">The fact's id among the missing facts.</param>
    /// <param name="text">What is looked for, where several searches share the id.</param>
    /// <param name="inOrder">Whether the values are in an order, the lowest first.</param>
    /// <param name="answers">Every value that may differ from another, and what it moves.</param>
    /// <param name="nightOf">The night of a moved finding.</param>
    public void Learn(string id, string? text, bool inOrder, IReadOnlyList<(string Value, List<Move> Moves)> answers, Func<Move, string?> nightOf)
    {
        var settles = new Dictionary<(int Criterion, string? Night), Settling>();
        for (var i = 0; i < answers.Count; i++)
        {
            foreach (var move in answers[i].Moves.Where(move => move.Before.Standing == Standing.Undetermined && move.After.Standing != Standing.Undetermined && move.Criterion.Shown != Shown.InTheTrace))
            {
                var night = nightOf(move);
                if (!settles.TryGetValue((move.Criterion.Index, night), out var settling))
                {
                    settling = new Settling(move.Criterion, night, new string?[answers.Count]);
                    settles.Add((move.Criterion.Index, night), settling);
                }

                settling.Answers[i] = new Turn(move.Criterion, night, move.Before, move.After).AfterWords;
            }
        }

        if (!_learned.TryGetValue(id, out var all))
        {
            _learned.Add(id, all = []);
        }

        var values = answers.Select(answer => answer.Value).ToArray();
        all.Add((text, [.. settles.Values.Select(settling => new Settles(settling.Criterion, settling.Night, AnswerWords.Of(values, settling.Answers, inOrder), settling.Always))]));
    }

    /// <summary>The questions, those first that decide most.</summary>
    public ImmutableArray<Question> Ranked() =>
        [.. _order.Select(Question).OrderByDescending(WeightOf).ThenByDescending(question => question.Settles.Length).ThenByDescending(question => question.Helps.Length)];

    /// <summary>The facts that the case says are unknown and that nothing waits for.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="settler">Tells what open findings rest on. With a fact the completions may come to agree although Kleene logic does not wait for it.</param>
    public ImmutableArray<string> CannotChange(Case subject, Settler settler)
    {
        var tried = _open.Values.Where(settler.MaySettle).SelectMany(OpenFacts).ToHashSet();
        var sets = new[] { subject.Facts }.Concat(subject.Nights.Select(night => night.Facts));
        return
        [
            .. sets.SelectMany(set => set.Entered).Where(fact => fact.State == FactState.Unknown && !Has(fact.Definition.Id) && !tried.Contains(fact.Definition.Slot))
                .OrderBy(fact => fact.Definition.Slot).Select(fact => fact.Definition.Label).Distinct(StringComparer.Ordinal),
        ];
    }

    // Those that an open finding rests on, itself or through other open ones.
    private HashSet<int> OpenFacts(Criterion finding)
    {
        var facts = new HashSet<int>();
        var seen = new HashSet<int>();
        var next = new Stack<Criterion>([finding]);
        while (next.TryPop(out var criterion))
        {
            if (seen.Add(criterion.Index))
            {
                facts.UnionWith(criterion.ReadsFacts);
                foreach (var upstream in criterion.ReadsCriteria.Where(_open.ContainsKey))
                {
                    next.Push(_open[upstream]);
                }
            }
        }

        return facts;
    }

    // What an answer decides, the least first: what every answer settles counts more than what some do.
    private enum Weight
    {
        Nothing = 0,
        SomeFinding,
        Finding,
        SomeResult,
        Result,
        SomeCoverage,
        Coverage,
    }

    private static Weight WeightOf(Question question) => question.Settles.Select(WeightOf).DefaultIfEmpty().Max();

    private static Weight WeightOf(Settles settles) => (settles.Criterion, settles.Always) switch
    {
        ({ Shown: Shown.AtTheTop, Ruleset.Function: RulesetFunction.Coverage }, var always) => always ? Weight.Coverage : Weight.SomeCoverage,
        ({ Shown: Shown.AtTheTop }, var always) => always ? Weight.Result : Weight.SomeResult,
        (_, var always) => always ? Weight.Finding : Weight.SomeFinding,
    };

    private void Wait(MissingFact missing, string finding)
    {
        _ids.Add(missing.Fact);

        // A rate is learned as its printed figure.
        if (_vocabulary.Indices.FirstOrDefault(index => index.Rate.Id == missing.Fact) is { } index)
        {
            _ids.Add(index.Printed.Id);
        }

        var key = (missing.Fact, missing.Label);
        if (!_waiting.TryGetValue(key, out var waiting))
        {
            _waiting.Add(key, waiting = []);
            _order.Add(missing);
        }

        if (!waiting.Contains(finding))
        {
            waiting.Add(finding);
        }
    }

    private Question Question(MissingFact missing)
    {
        var settles = LearnedOf(missing).SelectMany(learned => learned.Settles)
            .GroupBy(one => (one.Criterion.Index, one.Night))
            .Select(group => new Settles(group.First().Criterion, group.Key.Night, [.. group.SelectMany(one => one.Answers).Distinct(StringComparer.Ordinal)], group.All(one => one.Always)))
            .OrderBy(one => one.Criterion.Index).ThenBy(one => one.Night, StringComparer.Ordinal).ToImmutableArray();
        return new Question(
            missing.Fact, missing.Label, missing.Ask, missing.Owner, settles,
            [.. _waiting[(missing.Fact, missing.Label)].Where(finding => settles.All(one => one.Criterion.Id != finding))]);
    }

    private IEnumerable<(string? Text, ImmutableArray<Settles> Settles)> LearnedOf(MissingFact missing)
    {
        var ids = _vocabulary.Indices.FirstOrDefault(index => index.Rate.Id == missing.Fact) is { } index ? [missing.Fact, index.Printed.Id] : new[] { missing.Fact };
        return ids.SelectMany(id => _learned.GetValueOrDefault(id) ?? []).Where(learned => learned.Text is null || learned.Text == missing.Label);
    }
}

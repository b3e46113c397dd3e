using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.BoundTests;

/// <summary>What the tests of one criterion have shown of it: each comparison in each state, each bound from each side.</summary>
internal sealed class SeenStates
{
    private const string Recorded = " is recorded";

    private readonly Dictionary<string, (string Kind, HashSet<Truth> Truths)> _leaves = new(StringComparer.Ordinal);
    private readonly HashSet<(NumberBound Bound, int Side)> _sides = [];
    private readonly HashSet<Standing> _standings = [];
    private readonly HashSet<string> _questions = new(StringComparer.Ordinal);

    public void Add(Finding finding, FactSet facts)
    {
        _standings.Add(finding.Standing);
        _questions.UnionWith(finding.Silent.Select(question => question.Id));
        Walk(finding.Because);
        foreach (var bound in finding.Criterion.Bounds)
        {
            if (facts[bound.Fact].Value is NumberValue number)
            {
                // A printed figure that reads as the bound is on it, though it stands for a range.
                var value = number.Printed ?? number.Range.Low;
                _sides.Add((bound, value.CompareTo(bound.At)));
            }
        }
    }

    public IEnumerable<string> Gaps(Criterion criterion)
    {
        if (_standings.Count == 0)
        {
            yield return "no test";
            yield break;
        }

        foreach (var (text, (kind, truths)) in _leaves.OrderBy(leaf => leaf.Key, StringComparer.Ordinal))
        {
            foreach (var truth in Needed(text, kind).Where(truth => !truths.Contains(truth)))
            {
                yield return $"{text}: never {Words(truth)}";
            }
        }

        foreach (var bound in criterion.Bounds)
        {
            foreach (var (side, words) in new[] { (-1, "below"), (0, "on"), (1, "above") }.Where(side => !_sides.Contains((bound, side.Item1)) && CanBe(bound, side.Item1)))
            {
                yield return $"{bound.Fact.Id} {bound.Text}: never {words}";
            }
        }

        if (criterion.AppliesWhen is not Constant && !_standings.Contains(Standing.NotApplicable))
        {
            yield return "never not applicable";
        }

        foreach (var question in criterion.Silent.Where(question => question.Answer is null && !_questions.Contains(question.Id)))
        {
            yield return $"question {question.Id}: never put";
        }
    }

    private static bool CanBe(NumberBound bound, int side) => bound.Fact.Range is not { } range
        || (side < 0 ? range.Low < bound.At : side <= 0 || range.High > bound.At);

    // That a fact is recorded can be open, never refuted; another finding may be open for many reasons of its own.
    private static Truth[] Needed(string text, string kind) => kind switch
    {
        "finding" => [Truth.Met, Truth.NotMet],
        _ when text.EndsWith(Recorded, StringComparison.Ordinal) => [Truth.Met, Truth.Unknown],
        _ => [Truth.Met, Truth.NotMet, Truth.Unknown],
    };

    private static string Words(Truth truth) => truth switch
    {
        Truth.Met => "met",
        Truth.NotMet => "not met",
        _ => "unknown",
    };

    private void Walk(TraceNode node)
    {
        if (node.Kind is "fact" or "finding" or "documents")
        {
            if (!_leaves.TryGetValue(node.Text, out var leaf))
            {
                _leaves.Add(node.Text, leaf = (node.Kind, []));
            }

            leaf.Truths.Add(node.Truth);
            return;
        }

        foreach (var part in node.Parts)
        {
            Walk(part);
        }
    }
}

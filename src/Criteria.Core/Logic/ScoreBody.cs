using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>One item of a score.</summary>
/// <param name="Points">What it adds when it is met.</param>
/// <param name="When">When it is met.</param>
/// <param name="Label">A few words.</param>
public sealed record ScoreItem(int Points, Predicate When, string Label);

/// <summary>One class of a score, both ends included.</summary>
public sealed record ScoreClass(string Name, int From, int To);

/// <summary>An additive score. Known points give the lowest total, known and open points together the highest.</summary>
public sealed class ScoreBody : Body
{
    internal ScoreBody(ImmutableArray<ScoreItem> items, ImmutableArray<ScoreClass> classes) => (Items, Classes) = (items, classes);

    /// <summary>The items.</summary>
    public ImmutableArray<ScoreItem> Items { get; }

    /// <summary>The classes, lowest first; may be empty.</summary>
    public ImmutableArray<ScoreClass> Classes { get; }

    /// <summary>The highest total.</summary>
    public int Most => Items.Sum(item => item.Points);

    /// <inheritdoc/>
    public override string Kind => "score";

    /// <inheritdoc/>
    public override BodyOutcome Evaluate(View view)
    {
        var low = 0;
        var high = 0;
        foreach (var item in Items)
        {
            var truth = item.When.Evaluate(view);
            low += truth == Truth.Met ? item.Points : 0;
            high += truth == Truth.NotMet ? 0 : item.Points;
        }

        return OutcomeOf(new PointRange(low, high));
    }

    /// <summary>What points come to.</summary>
    internal BodyOutcome OutcomeOf(PointRange points)
    {
        var (low, high) = points;
        if (Classes.IsEmpty)
        {
            return new BodyOutcome(low == high ? Truth.Met : Truth.Unknown, -1, -1, points);
        }

        var lowest = ClassOf(low);
        var highest = ClassOf(high);
        return new BodyOutcome(lowest == highest ? Truth.Met : Truth.Unknown, lowest, highest, points);
    }

    /// <inheritdoc/>
    public override string ValueText(BodyOutcome outcome)
    {
        var points = outcome.Points!.Value;
        var words = $"{points} of {Most} points";
        return outcome.LowestBand < 0 ? words
            : outcome.LowestBand == outcome.HighestBand ? $"{Classes[outcome.LowestBand].Name}, {words}"
            : $"{Classes[outcome.LowestBand].Name} to {Classes[outcome.HighestBand].Name}, {words}";
    }

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var outcome = Evaluate(view);
        return new TraceNode(
            "score", $"{Items.Length} items, {Most} points at most", outcome.Truth, ValueText(outcome), null,
            [.. Items.Select(item => Explain(item, view))]);
    }

    /// <inheritdoc/>
    public override TraceNode? Residual(View view)
    {
        var outcome = Evaluate(view);
        if (outcome.Truth != Truth.Unknown)
        {
            return null;
        }

        var open = Items.Where(item => item.When.Evaluate(view) == Truth.Unknown).ToArray();
        return new TraceNode(
            "score", $"{outcome.Points!.Value.Low} points so far, up to {open.Sum(item => item.Points)} more open", Truth.Unknown, null, null,
            [.. open.Select(item => item.When.Reduce(view).Explain(view))]);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        if (Evaluate(view).Truth == Truth.Unknown)
        {
            foreach (var item in Items)
            {
                item.When.Reduce(view).AddMissing(view, missing);
            }
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        foreach (var item in Items)
        {
            item.When.AddReads(reads);
        }
    }

    // INVARIANT: classes cover 0 to Most once; the reader checks it.
    private int ClassOf(int points)
    {
        for (var i = 0; i < Classes.Length; i++)
        {
            if (points <= Classes[i].To)
            {
                return i;
            }
        }

        return Classes.Length - 1;
    }

    private static TraceNode Explain(ScoreItem item, View view)
    {
        var node = item.When.Explain(view);
        return new TraceNode("item", $"{item.Label}: {item.Points} {(item.Points == 1 ? "point" : "points")}", node.Truth, node.Value, node.From, node.Parts.IsEmpty ? [node with { Value = null, From = null }] : node.Parts);
    }
}

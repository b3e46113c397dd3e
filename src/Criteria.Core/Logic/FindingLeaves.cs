using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A criterion as conditions refer to it.</summary>
/// <param name="Index">Its place among all criteria.</param>
/// <param name="Id">Its id.</param>
/// <param name="Title">Its title.</param>
public sealed record CriterionReference(int Index, string Id, string Title);

/// <summary>A condition on the finding of another criterion.</summary>
internal abstract class FindingLeaf : Predicate
{
    private protected FindingLeaf(CriterionReference criterion) => Criterion = criterion;

    /// <summary>The criterion.</summary>
    public CriterionReference Criterion { get; }

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var conclusion = view[Criterion.Index];
        var value = conclusion.Value.Length > 0 && conclusion.Standing != Standing.NotApplicable
            ? $"{conclusion.Standing.Words()}, {conclusion.Value}"
            : conclusion.Standing.Words();
        return TraceNode.Leaf("finding", Text, Evaluate(view), value, Criterion.Id);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        foreach (var fact in view[Criterion.Index].Missing)
        {
            missing.Add(fact);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads) => reads.Criteria.Add(Criterion.Index);

    // A grade or points can be ruled out before it is known whether the finding stands.
    private protected static void AddMissingWithValue(Conclusion conclusion, MissingFacts missing)
    {
        foreach (var fact in conclusion.Missing.Concat(conclusion.MissingOfValue))
        {
            missing.Add(fact);
        }
    }

    // While it is open whether the finding stands at all, only a "no" is safe: one that does not apply is a no too.
    private protected static Truth OnlyNoIsSafe(in Verdict conclusion, Truth truth) =>
        truth == Truth.Met && conclusion.Stands != Truth.Met ? Truth.Unknown : truth;
}

/// <summary>The standing of a finding. A finding that is not applicable is not met.</summary>
internal sealed class StandingLeaf : FindingLeaf
{
    internal StandingLeaf(CriterionReference criterion, Standing expected)
        : base(criterion) => Expected = expected;

    /// <summary>The standing that meets it.</summary>
    public Standing Expected { get; }

    private protected override string Describe() => Expected == Standing.Met ? Criterion.Title : $"{Criterion.Title}: {Expected.Words()}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => view.VerdictOf(Criterion.Index).Standing switch
    {
        Standing.Undetermined => Truth.Unknown,
        var standing => Truths.Of(standing == Expected),
    };
}

/// <summary>The grade, or the class of a score. When it does not apply there is none, and no comparison holds.</summary>
internal sealed class BandLeaf : FindingLeaf
{
    private readonly string _words;

    internal BandLeaf(CriterionReference criterion, int lowest, int highest, bool negated, string words)
        : base(criterion) => (Lowest, Highest, Negated, _words) = (lowest, highest, negated, words);

    /// <summary>The lowest band that meets it.</summary>
    public int Lowest { get; }

    /// <summary>The highest band that meets it.</summary>
    public int Highest { get; }

    /// <summary>Whether it is met by the other bands.</summary>
    public bool Negated { get; }

    private protected override string Describe() => $"{Criterion.Title} is {_words}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        ref readonly var conclusion = ref view.VerdictOf(Criterion.Index);
        if (conclusion.Standing == Standing.NotApplicable)
        {
            return Truth.NotMet;
        }

        if (conclusion.LowestBand < 0)
        {
            return Truth.Unknown;
        }

        var inside = conclusion.LowestBand >= Lowest && conclusion.HighestBand <= Highest;
        var outside = conclusion.HighestBand < Lowest || conclusion.LowestBand > Highest;
        var truth = inside ? Truth.Met : outside ? Truth.NotMet : Truth.Unknown;
        return OnlyNoIsSafe(conclusion, Negated ? Truths.Not(truth) : truth);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing) => AddMissingWithValue(view[Criterion.Index], missing);
}

/// <summary>The points of a score.</summary>
internal sealed class PointsLeaf : FindingLeaf
{
    private readonly Interval _bound;
    private readonly string _boundText;

    internal PointsLeaf(CriterionReference criterion, Operator comparison, Ratio bound, string boundText)
        : base(criterion) => (Comparison, _bound, _boundText) = (comparison, Interval.Exactly(bound), boundText);

    /// <summary>How they are compared.</summary>
    public Operator Comparison { get; }

    /// <summary>The bound.</summary>
    public Ratio Bound => _bound.Low;

    private protected override string Describe() => $"{Criterion.Title} {Comparison.Sign()} {_boundText}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        ref readonly var conclusion = ref view.VerdictOf(Criterion.Index);
        return conclusion.Standing == Standing.NotApplicable ? Truth.NotMet
            : conclusion.Points is { } points ? OnlyNoIsSafe(conclusion, Logic.Comparison.Compare(Interval.Between(points.Low, points.High), Comparison, _bound))
            : Truth.Unknown;
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing) => AddMissingWithValue(view[Criterion.Index], missing);
}

/// <summary>Two grades that differ.</summary>
internal sealed class DiffersLeaf : FindingLeaf
{
    private readonly CriterionReference _other;

    internal DiffersLeaf(CriterionReference criterion, CriterionReference other)
        : base(criterion) => _other = other;

    private protected override string Describe() => $"{Criterion.Title} differs from {_other.Title}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        ref readonly var left = ref view.VerdictOf(Criterion.Index);
        ref readonly var right = ref view.VerdictOf(_other.Index);
        if (left.Standing == Standing.NotApplicable || right.Standing == Standing.NotApplicable)
        {
            return Truth.NotMet;
        }

        if (left.LowestBand < 0 || right.LowestBand < 0)
        {
            return Truth.Unknown;
        }

        var apart = left.HighestBand < right.LowestBand || right.HighestBand < left.LowestBand;
        var same = left.LowestBand == left.HighestBand && right.LowestBand == right.HighestBand && left.LowestBand == right.LowestBand;
        return OnlyNoIsSafe(left, OnlyNoIsSafe(right, apart ? Truth.Met : same ? Truth.NotMet : Truth.Unknown));
    }

    /// <inheritdoc/>
    public override TraceNode Explain(View view) => TraceNode.Leaf(
        "finding", Text, Evaluate(view), $"{Words(view[Criterion.Index])} against {Words(view[_other.Index])}", $"{Criterion.Id}, {_other.Id}");

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        AddMissingWithValue(view[Criterion.Index], missing);
        AddMissingWithValue(view[_other.Index], missing);
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        base.AddReads(reads);
        reads.Criteria.Add(_other.Index);
    }

    private static string Words(Conclusion conclusion) => conclusion.Value.Length > 0 ? conclusion.Value : conclusion.Standing.Words();
}

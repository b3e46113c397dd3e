using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>A condition made of parts.</summary>
internal abstract class Group : Predicate
{
    private protected Group(ImmutableArray<Predicate> parts, string? say) => (Parts, Say) = (parts, say);

    /// <summary>The parts, in the order of the ruleset.</summary>
    public ImmutableArray<Predicate> Parts { get; }

    /// <summary>A short text for reports, if the ruleset gives one.</summary>
    public string? Say { get; }

    private protected abstract string Kind { get; }

    // What the parts of a trace come to together: the same as Evaluate, without evaluating them again.
    private protected abstract Truth Combine(IReadOnlyList<TraceNode> parts);

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var parts = ImmutableArray.CreateBuilder<TraceNode>(Parts.Length);
        foreach (var part in Parts)
        {
            parts.Add(part.Explain(view));
        }

        return new TraceNode(Kind, Text, Combine(parts), null, null, parts.MoveToImmutable());
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        foreach (var part in Parts)
        {
            part.AddMissing(view, missing);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        foreach (var part in Parts)
        {
            part.AddReads(reads);
        }
    }

    private protected string Joined(string word) => string.Join(word, Parts.Select(part => part is Group { Say: null } and not Negation ? $"({part.Text})" : part.Text));
}

/// <summary>All parts.</summary>
internal sealed class All : Group
{
    internal All(ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say)
    {
    }

    private protected override string Describe() => Say ?? Joined(" and ");

    private protected override string Kind => "all";

    private protected override Truth Combine(IReadOnlyList<TraceNode> parts) => parts.Aggregate(Truth.Met, (truth, part) => Truths.And(truth, part.Truth));

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        var truth = Truth.Met;
        foreach (var part in Parts)
        {
            truth = Truths.And(truth, part.Evaluate(view));
            if (truth == Truth.NotMet)
            {
                return truth;
            }
        }

        return truth;
    }

    /// <inheritdoc/>
    public override Predicate Reduce(View view)
    {
        if (Evaluate(view) == Truth.NotMet)
        {
            return Constant.Never;
        }

        var open = Parts.Select(part => part.Reduce(view)).Where(part => part is not Constant).ToImmutableArray();
        return open.Length switch { 0 => Constant.Always, 1 => open[0], _ => new All(open) };
    }
}

/// <summary>Any part.</summary>
internal sealed class Any : Group
{
    internal Any(ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say)
    {
    }

    private protected override string Describe() => Say ?? Joined(" or ");

    private protected override string Kind => "any";

    private protected override Truth Combine(IReadOnlyList<TraceNode> parts) => parts.Aggregate(Truth.NotMet, (truth, part) => Truths.Or(truth, part.Truth));

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        var truth = Truth.NotMet;
        foreach (var part in Parts)
        {
            truth = Truths.Or(truth, part.Evaluate(view));
            if (truth == Truth.Met)
            {
                return truth;
            }
        }

        return truth;
    }

    /// <inheritdoc/>
    public override Predicate Reduce(View view)
    {
        if (Evaluate(view) == Truth.Met)
        {
            return Constant.Always;
        }

        var open = Parts.Select(part => part.Reduce(view)).Where(part => part is not Constant).ToImmutableArray();
        return open.Length switch { 0 => Constant.Never, 1 => open[0], _ => new Any(open) };
    }
}

/// <summary>The opposite of its one part.</summary>
internal sealed class Negation : Group
{
    internal Negation(Predicate part, string? say = null)
        : base([part], say)
    {
    }

    private protected override string Describe() => Say ?? $"not ({Parts[0].Text})";

    private protected override string Kind => "not";

    private protected override Truth Combine(IReadOnlyList<TraceNode> parts) => Truths.Not(parts[0].Truth);

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => Truths.Not(Parts[0].Evaluate(view));

    /// <inheritdoc/>
    public override Predicate Reduce(View view) => Parts[0].Reduce(view) switch
    {
        Constant settled => settled.Evaluate(view) == Truth.Met ? Constant.Never : Constant.Always,
        var open => new Negation(open),
    };
}

/// <summary>At least so many of the parts.</summary>
internal sealed class AtLeast : Group
{
    internal AtLeast(int count, ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say) => Count = count;

    /// <summary>How many parts must be met.</summary>
    public int Count { get; }

    private protected override string Describe() => Say ?? $"at least {Count} of: {Joined(", ")}";

    private protected override string Kind => "at-least";

    private protected override Truth Combine(IReadOnlyList<TraceNode> parts) =>
        Counted(parts.Count(part => part.Truth == Truth.Met), parts.Count(part => part.Truth == Truth.Unknown));

    private Truth Counted(int met, int unknown) => met >= Count ? Truth.Met : met + unknown < Count ? Truth.NotMet : Truth.Unknown;

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        var met = 0;
        var unknown = 0;
        foreach (var part in Parts)
        {
            switch (part.Evaluate(view))
            {
                case Truth.Met:
                    met++;
                    break;
                case Truth.Unknown:
                    unknown++;
                    break;
            }
        }

        return Counted(met, unknown);
    }

    /// <inheritdoc/>
    public override Predicate Reduce(View view)
    {
        switch (Evaluate(view))
        {
            case Truth.Met:
                return Constant.Always;
            case Truth.NotMet:
                return Constant.Never;
        }

        var needed = Count - Parts.Count(part => part.Evaluate(view) == Truth.Met);
        var open = Parts.Where(part => part.Evaluate(view) == Truth.Unknown).Select(part => part.Reduce(view)).ToImmutableArray();
        return needed == 1 && open.Length == 1 ? open[0]
            : needed == 1 ? new Any(open)
            : needed == open.Length ? new All(open)
            : new AtLeast(needed, open);
    }
}

using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>A condition made of parts.</summary>
public abstract class Group : Predicate
{
    private protected Group(ImmutableArray<Predicate> parts, string? say) => (Parts, Say) = (parts, say);

    /// <summary>The parts, in the order of the ruleset.</summary>
    public ImmutableArray<Predicate> Parts { get; }

    /// <summary>A short text for reports, if the ruleset gives one.</summary>
    public string? Say { get; }

    private protected abstract string Kind { get; }

    /// <inheritdoc/>
    public override TraceNode Explain(View view) =>
        new(Kind, Say ?? Text, Evaluate(view), null, null, [.. Parts.Select(part => part.Explain(view))]);

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
public sealed class All : Group
{
    internal All(ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say)
    {
    }

    /// <inheritdoc/>
    public override string Text => Say ?? Joined(" and ");

    private protected override string Kind => "all";

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
public sealed class Any : Group
{
    internal Any(ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say)
    {
    }

    /// <inheritdoc/>
    public override string Text => Say ?? Joined(" or ");

    private protected override string Kind => "any";

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
public sealed class Negation : Group
{
    internal Negation(Predicate part, string? say = null)
        : base([part], say)
    {
    }

    /// <inheritdoc/>
    public override string Text => Say ?? $"not ({Parts[0].Text})";

    private protected override string Kind => "not";

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
public sealed class AtLeast : Group
{
    internal AtLeast(int count, ImmutableArray<Predicate> parts, string? say = null)
        : base(parts, say) => Count = count;

    /// <summary>How many parts must be met.</summary>
    public int Count { get; }

    /// <inheritdoc/>
    public override string Text => Say ?? $"at least {Count} of: {Joined(", ")}";

    private protected override string Kind => "at-least";

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

        return met >= Count ? Truth.Met : met + unknown < Count ? Truth.NotMet : Truth.Unknown;
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

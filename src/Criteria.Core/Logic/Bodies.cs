using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>What the heart of a criterion comes to.</summary>
/// <param name="Truth">Met, not met or open; for a grade or score, met means decided.</param>
/// <param name="LowestBand">The lowest band still possible, or -1.</param>
/// <param name="HighestBand">The highest band still possible, or -1.</param>
/// <param name="Points">The possible points of a score.</param>
/// <param name="DoesNotApply">The fact it grades was said not to apply.</param>
public readonly record struct BodyOutcome(Truth Truth, int LowestBand, int HighestBand, PointRange? Points, bool DoesNotApply = false);

/// <summary>The heart of a criterion: a condition, a grade, a score or an option.</summary>
public abstract class Body
{
    /// <summary>The word for its kind in JSON.</summary>
    public abstract string Kind { get; }

    /// <summary>What it comes to.</summary>
    public abstract BodyOutcome Evaluate(View view);

    /// <summary>Its value in words; empty when it has none.</summary>
    public virtual string ValueText(BodyOutcome outcome) => "";

    /// <summary>The trace.</summary>
    public abstract TraceNode Explain(View view);

    /// <summary>What remains to be known, or null when nothing does.</summary>
    public abstract TraceNode? Residual(View view);

    /// <summary>Adds the facts that are open in it.</summary>
    public abstract void AddMissing(View view, MissingFacts missing);

    /// <summary>Adds everything it may read.</summary>
    public abstract void AddReads(Reads reads);
}

/// <summary>A condition.</summary>
internal sealed class ConditionBody : Body
{
    internal ConditionBody(Predicate condition) => Condition = condition;

    /// <summary>The condition.</summary>
    public Predicate Condition { get; }

    /// <inheritdoc/>
    public override string Kind => "condition";

    /// <inheritdoc/>
    public override BodyOutcome Evaluate(View view) => new(Condition.Evaluate(view), -1, -1, null);

    /// <inheritdoc/>
    public override TraceNode Explain(View view) => Condition.Explain(view);

    /// <inheritdoc/>
    public override TraceNode? Residual(View view) => Condition.Reduce(view) is var open and not Constant ? open.Explain(view) : null;

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing) => Condition.Reduce(view).AddMissing(view, missing);

    /// <inheritdoc/>
    public override void AddReads(Reads reads) => Condition.AddReads(reads);
}

/// <summary>One point for or against an option.</summary>
/// <param name="Condition">When it counts.</param>
/// <param name="Say">The point in words.</param>
public sealed record OptionPoint(Predicate Condition, string Say);

/// <summary>A pathway option with what speaks for and against it. Never an order.</summary>
public sealed class OptionBody : Body
{
    internal OptionBody(Predicate when, string offer, ImmutableArray<OptionPoint> pointsFor, ImmutableArray<OptionPoint> pointsAgainst, string strength, string certainty) =>
        (When, Offer, For, Against, Strength, Certainty) = (when, offer, pointsFor, pointsAgainst, strength, certainty);

    /// <summary>When the option comes up.</summary>
    public Predicate When { get; }

    /// <summary>What is offered.</summary>
    public string Offer { get; }

    /// <summary>What may speak for it.</summary>
    public ImmutableArray<OptionPoint> For { get; }

    /// <summary>What may speak against it.</summary>
    public ImmutableArray<OptionPoint> Against { get; }

    /// <summary>The strength of the recommendation, in the source's words.</summary>
    public string Strength { get; }

    /// <summary>The certainty of the evidence, in the source's words.</summary>
    public string Certainty { get; }

    /// <summary>Who would carry it out, in the words for whom a letter can go to; empty when nobody else is needed.</summary>
    public ImmutableArray<string> CarriedOutBy { get; init; } = [];

    /// <inheritdoc/>
    public override string Kind => "option";

    /// <inheritdoc/>
    public override BodyOutcome Evaluate(View view) => new(When.Evaluate(view), -1, -1, null);

    /// <inheritdoc/>
    public override string ValueText(BodyOutcome outcome) => Offer;

    /// <inheritdoc/>
    public override TraceNode Explain(View view) => new(
        "all", $"option: {Offer}", When.Evaluate(view), null, null,
        [
            .. When is Constant ? [] : new[] { When.Explain(view) },
            .. For.Select(point => Explain("for", point, view)),
            .. Against.Select(point => Explain("against", point, view)),
        ]);

    // The point's own truth, where it rests on a finding: "ruled out: met" may rest on a finding that is not met.
    private static TraceNode Explain(string side, OptionPoint point, View view)
    {
        var node = point.Condition.Explain(view);
        return node with { Text = $"{side}: {point.Say.TrimEnd('.')}", Value = node.Kind == "finding" ? node.Truth.Words() : node.Value };
    }

    /// <inheritdoc/>
    public override TraceNode? Residual(View view) => When.Reduce(view) is var open and not Constant ? open.Explain(view) : null;

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing) => When.Reduce(view).AddMissing(view, missing);

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        When.AddReads(reads);
        foreach (var point in For.Concat(Against))
        {
            point.Condition.AddReads(reads);
        }
    }
}

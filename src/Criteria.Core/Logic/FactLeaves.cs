using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A condition on one fact.</summary>
internal abstract class FactLeaf : Predicate
{
    private protected FactLeaf(FactDefinition fact, Vocabulary vocabulary) => (Fact, Vocabulary) = (fact, vocabulary);

    /// <summary>The fact.</summary>
    public FactDefinition Fact { get; }

    private protected Vocabulary Vocabulary { get; }

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var fact = view.Facts[Fact];
        return TraceNode.Leaf("fact", Text, Evaluate(view), ValueText(view, fact), fact.Origin.Words);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing) => missing.Add(Fact, view.Facts);

    /// <inheritdoc/>
    public override void AddReads(Reads reads) => reads.Add(Fact, Vocabulary);

    private protected virtual string ValueText(View view, Fact fact) => fact.Text;
}

/// <summary>A number compared with a bound, or with another fact.</summary>
internal sealed class NumberLeaf : FactLeaf
{
    private readonly Interval _bound;
    private readonly string _boundText;
    private readonly FactDefinition? _other;
    private readonly Ratio _factor = 1;

    internal NumberLeaf(FactDefinition fact, Operator comparison, Ratio bound, string boundText, Rounding rounding, Vocabulary vocabulary)
        : base(fact, vocabulary) => (Comparison, _bound, _boundText, Rounding) = (comparison, Interval.Exactly(bound), boundText, rounding);

    /// <param name="fact">The fact on the left.</param>
    /// <param name="comparison">How it is compared.</param>
    /// <param name="share">What the fact on the right is multiplied by, and how that is written before its name.</param>
    /// <param name="other">The fact on the right.</param>
    /// <param name="rounding">How the ruleset takes rounded figures.</param>
    /// <param name="vocabulary">The vocabulary.</param>
    internal NumberLeaf(FactDefinition fact, Operator comparison, (Ratio Factor, string Words) share, FactDefinition other, Rounding rounding, Vocabulary vocabulary)
        : base(fact, vocabulary) =>
        (Comparison, _factor, _other, _boundText, Rounding) = (comparison, share.Factor, other, share.Words + other.Label, rounding);

    /// <summary>How they are compared.</summary>
    public Operator Comparison { get; }

    /// <summary>The bound, when it is not another fact.</summary>
    public Interval? Bound => _other is null ? _bound : null;

    /// <summary>How the ruleset takes rounded figures.</summary>
    public Rounding Rounding { get; }

    private protected override string Describe() => $"{Fact.Label} {Comparison.Sign()} {_boundText}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        if (view.Facts[Fact].Value is not NumberValue left)
        {
            return Truth.Unknown;
        }

        if (_other is null)
        {
            return Logic.Comparison.Compare(Logic.Comparison.Round(left, Rounding), Comparison, _bound);
        }

        return view.Facts[_other].Value is NumberValue right
            ? Logic.Comparison.Compare(Logic.Comparison.Round(left, Rounding), Comparison, Logic.Comparison.Round(right, Rounding).Times(_factor))
            : Truth.Unknown;
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        var fact = view.Facts[Fact];
        if (_other is null || fact is not { IsKnown: true, Number.IsExact: true })
        {
            base.AddMissing(view, missing);
        }

        if (_other is not null && view.Facts[_other] is not { IsKnown: true, Number.IsExact: true })
        {
            missing.Add(_other, view.Facts);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        base.AddReads(reads);
        if (_other is not null)
        {
            reads.Add(_other, Vocabulary);
            reads.FactBounds.Add(new FactBound(Fact, _factor, _other));
        }
        else
        {
            reads.Bounds.Add(new NumberBound(Fact, _bound.Low, _boundText));
        }
    }

    private protected override string ValueText(View view, Fact fact) =>
        _other is null ? fact.Text : $"{fact.Text} against {view.Facts[_other].Text}";
}

/// <summary>Whether two figures can be the same number: the ranges that they stand for overlap.</summary>
/// <remarks>Ranges that a further fact may narrow settle nothing by overlapping; they do by lying apart.</remarks>
internal sealed class AgreementLeaf : FactLeaf
{
    private readonly FactDefinition _other;

    internal AgreementLeaf(FactDefinition fact, FactDefinition other, Vocabulary vocabulary)
        : base(fact, vocabulary) => _other = other;

    private protected override string Describe() => $"{Fact.Label} agrees with {_other.Label}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        if (view.Facts[Fact].Value is not NumberValue left || view.Facts[_other].Value is not NumberValue right)
        {
            return Truth.Unknown;
        }

        return Comparison.Compare(left.Range, Operator.Equal, right.Range) == Truth.NotMet ? Truth.NotMet
            : IsFinal(left) && IsFinal(right) ? Truth.Met
            : Truth.Unknown;
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        foreach (var fact in new[] { Fact, _other }.Where(fact => view.Facts[fact].Value is not NumberValue number || !IsFinal(number)))
        {
            missing.Add(fact, view.Facts);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        base.AddReads(reads);
        reads.Add(_other, Vocabulary);
        reads.FactBounds.Add(new FactBound(Fact, 1, _other));
    }

    private protected override string ValueText(View view, Fact fact) => $"{fact.Text} against {view.Facts[_other].Text}";

    // Exact, or the range of one rounded figure.
    private static bool IsFinal(NumberValue value) => value.Range.IsExact || value.Printed is not null;
}

/// <summary>A yes/no fact. One that does not apply counts as no.</summary>
internal sealed class YesNoLeaf : FactLeaf
{
    internal YesNoLeaf(FactDefinition fact, bool expected, Vocabulary vocabulary)
        : base(fact, vocabulary) => Expected = expected;

    /// <summary>The answer that meets it.</summary>
    public bool Expected { get; }

    private protected override string Describe() => Expected ? Fact.Label : $"{Fact.Label} = no";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => view.Facts[Fact] switch
    {
        { Value: YesNoValue { Yes: var yes } } => Truths.Of(yes == Expected),
        { State: FactState.NotApplicable } => Truths.Of(!Expected),
        _ => Truth.Unknown,
    };
}

/// <summary>A choice among words.</summary>
internal sealed class ChoiceLeaf : FactLeaf
{
    internal ChoiceLeaf(FactDefinition fact, ImmutableArray<string> words, bool negated, Vocabulary vocabulary)
        : base(fact, vocabulary) => (Words, Negated) = (words, negated);

    /// <summary>The words.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Whether it is met by the other words.</summary>
    public bool Negated { get; }

    private protected override string Describe() => $"{Fact.Label} is {(Negated ? "not " : "")}{string.Join(" or ", Words)}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) =>
        view.Facts[Fact].Value is ChoiceValue { Word: var word } ? Truths.Of(Words.Contains(word) != Negated) : Truth.Unknown;
}

/// <summary>Whether a code belongs to a set on a date.</summary>
internal sealed class CodeLeaf : FactLeaf
{
    private readonly CodeSet _set;
    private readonly FactDefinition _date;

    internal CodeLeaf(FactDefinition fact, CodeSet set, FactDefinition date, Vocabulary vocabulary)
        : base(fact, vocabulary) => (_set, _date) = (set, date);

    private protected override string Describe() => $"{Fact.Label} is a code for {_set.Label} on {_date.Label}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        if (view.Facts[Fact].Value is not CodeValue { Code: var code })
        {
            return Truth.Unknown;
        }

        var entries = _set.Codes.Where(entry => entry.Code == code);
        return view.Facts[_date].Value is DateValue { Date: var day } ? Truths.Of(entries.Any(entry => entry.IsIn(day)))
            : entries.Any(entry => entry.From is null && entry.Until is null) ? Truth.Met
            : entries.Any() ? Truth.Unknown
            : Truth.NotMet;
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        if (!view.Facts[Fact].IsKnown)
        {
            base.AddMissing(view, missing);
        }

        if (view.Facts[_date].Value is not DateValue)
        {
            missing.Add(_date, view.Facts);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        base.AddReads(reads);
        reads.Add(_date, Vocabulary);
    }

    private protected override string ValueText(View view, Fact fact) => $"{fact.Text} on {view.Facts[_date].Text}";
}

/// <summary>Whether a fact is in the case. Never not met: what is not there may still be found.</summary>
internal sealed class RecordedLeaf : FactLeaf
{
    internal RecordedLeaf(FactDefinition fact, Vocabulary vocabulary)
        : base(fact, vocabulary)
    {
    }

    private protected override string Describe() => $"{Fact.Label} is recorded";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => view.Facts[Fact].IsKnown ? Truth.Met : Truth.Unknown;
}

/// <summary>Whether a fact is not in the case. Only cautions may ask it: learning the fact turns it round.</summary>
internal sealed class NotRecordedLeaf : FactLeaf
{
    internal NotRecordedLeaf(FactDefinition fact, Vocabulary vocabulary)
        : base(fact, vocabulary)
    {
    }

    private protected override string Describe() => $"{Fact.Label} is not recorded";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => Truths.Of(!view.Facts[Fact].IsKnown);
}

/// <summary>A date against another.</summary>
internal sealed class DateLeaf : FactLeaf
{
    private readonly DateRelation _relation;

    internal DateLeaf(FactDefinition fact, DateRelation relation, Vocabulary vocabulary)
        : base(fact, vocabulary) => _relation = relation;

    /// <summary>The relation.</summary>
    public DateRelation Relation => _relation;

    private protected override string Describe() => $"{Fact.Label} {_relation.Text}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) =>
        view.Facts[Fact].Value is DateValue { Date: var date } ? _relation.Evaluate(date, view) : Truth.Unknown;

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        if (view.Facts[Fact].Value is DateValue { Date: var date })
        {
            _relation.AddMissing(date, view, missing);
            return;
        }

        base.AddMissing(view, missing);
        _relation.AddMissing(view, missing);
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        base.AddReads(reads);
        _relation.AddReads(reads);
        reads.Dates.Add(new DateBound(Fact, _relation));
    }

    private protected override string ValueText(View view, Fact fact) => $"{fact.Text}{_relation.AnchorText(view)}";
}

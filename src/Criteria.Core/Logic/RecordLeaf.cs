using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A test of one attribute of a document or therapy trial.</summary>
internal abstract class AttributeTest(FactDefinition attribute)
{
    public FactDefinition Attribute { get; } = attribute;

    public abstract string Text { get; }

    public abstract Truth Evaluate(Fact fact, View view);

    public virtual void AddMissing(View view, MissingFacts missing)
    {
    }

    public virtual void AddReads(Reads reads)
    {
    }

    public virtual string AnchorText(View view) => "";
}

internal sealed class AttributeYesNo(FactDefinition attribute, bool expected) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label}: {(expected ? "yes" : "no")}";

    // A signature date says that there is a signature.
    public override Truth Evaluate(Fact fact, View view) => fact switch
    {
        { Value: YesNoValue { Yes: var yes } } => Truths.Of(yes == expected),
        { Value: DateValue } => Truths.Of(expected),
        { State: FactState.NotApplicable } => Truths.Of(!expected),
        _ => Truth.Unknown,
    };
}

internal sealed class AttributeWord(FactDefinition attribute, ImmutableArray<string> words) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label}: {string.Join(" or ", words)}";

    public override Truth Evaluate(Fact fact, View view) => fact.Value is ChoiceValue { Word: var word } ? Truths.Of(words.Contains(word)) : Truth.Unknown;
}

internal sealed class AttributeNumber(FactDefinition attribute, Operator comparison, Ratio bound, string boundText) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label} {comparison.Sign()} {boundText}";

    public override Truth Evaluate(Fact fact, View view) =>
        fact.Number is { } range ? Comparison.Compare(range, comparison, Interval.Exactly(bound)) : Truth.Unknown;
}

internal sealed class AttributeDate(FactDefinition attribute, DateRelation relation) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label} {relation.Text}";

    // What was never signed was signed on no day; what was signed on a day nobody wrote down is open.
    public override Truth Evaluate(Fact fact, View view) => fact.Value switch
    {
        DateValue { Date: var date } => relation.Evaluate(date, view),
        YesNoValue { Yes: false } => Truth.NotMet,
        _ => Truth.Unknown,
    };

    public override void AddMissing(View view, MissingFacts missing) => relation.AddMissing(view, missing);

    public override void AddReads(Reads reads) => relation.AddReads(reads);

    public override string AnchorText(View view) => relation.AnchorText(view);
}

/// <summary>Whether the case holds a document, or a therapy trial, that fits.</summary>
/// <remarks>Met when one that is listed fits wholly. When none does, only a closed list settles that there is none.</remarks>
internal sealed class RecordLeaf : Predicate
{
    private readonly RecordDefinition _list;
    private readonly ImmutableArray<string> _kinds;
    private readonly ImmutableArray<AttributeTest> _tests;

    internal RecordLeaf(RecordDefinition list, ImmutableArray<string> kinds, ImmutableArray<AttributeTest> tests, string? say) =>
        (_list, _kinds, _tests, Say) = (list, kinds, tests, say);

    /// <summary>A short text for reports, if the ruleset gives one.</summary>
    public string? Say { get; }

    private protected override string Describe() => Say ?? (_tests.IsEmpty
        ? $"{_list.Label} on file: {string.Join(" or ", _kinds)}"
        : $"{_list.Label} on file: {string.Join(" or ", _kinds)} ({string.Join(", ", _tests.Select(test => test.Text))})");

    /// <inheritdoc/>
    public override Truth Evaluate(View view)
    {
        var list = view.Facts.RecordsOf(_list);
        var truth = list.ClosedBy is null ? Truth.Unknown : Truth.NotMet;
        foreach (var item in list.Items)
        {
            if (_kinds.Contains(item.Kind))
            {
                truth = Truths.Or(truth, Fits(item, view));
            }
        }

        return truth;
    }

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var list = view.Facts.RecordsOf(_list);
        var candidates = list.Items.Where(item => _kinds.Contains(item.Kind)).Select(item => Explain(item, view)).ToImmutableArray();
        var kinds = string.Join(" or ", _kinds);
        var end = list.ClosedBy is null ? "and the list is not closed" : "and the list is closed";
        var value = $"no {(candidates.IsEmpty ? "" : "other ")}{_list.Label.ToLowerInvariant()} of the kind {kinds} is listed, {end}";
        return new TraceNode("documents", Text, Evaluate(view), value, list.ClosedBy is { } by ? $"list closed by {by}" : null, candidates);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        var open = view.Facts.RecordsOf(_list).Items.Where(item => _kinds.Contains(item.Kind) && Fits(item, view) == Truth.Unknown).ToArray();
        foreach (var item in open)
        {
            foreach (var test in _tests.Where(test => test.Evaluate(item[test.Attribute], view) == Truth.Unknown))
            {
                if (item[test.Attribute] is { IsKnown: true, Value: not YesNoValue })
                {
                    test.AddMissing(view, missing);
                }
                else
                {
                    missing.Add(new MissingFact($"{item.Id}: {test.Attribute.Id}", $"{test.Attribute.Label} of {item.Id}", test.Attribute.Ask, test.Attribute.Owner));
                }
            }
        }

        if (open.Length == 0)
        {
            missing.Add(new MissingFact($"{_list.At}: {string.Join(" or ", _kinds)}", Text, "", ""));
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        reads.Records.Add(_list);
        foreach (var test in _tests)
        {
            test.AddReads(reads);
        }
    }

    private Truth Fits(CaseRecord item, View view)
    {
        var truth = Truth.Met;
        foreach (var test in _tests)
        {
            truth = Truths.And(truth, test.Evaluate(item[test.Attribute], view));
        }

        return truth;
    }

    // Enough to find it in the file: kind, date, author, signature.
    private string Described(CaseRecord item)
    {
        var words = item.Kind;
        foreach (var (name, lead) in new[] { ("date", " of "), ("start", " from "), ("author", ", "), ("signed", ", signed ") })
        {
            if (_list.Attribute(name) is { } attribute && item[attribute] is { IsKnown: true, Value: not YesNoValue { Yes: false } } fact)
            {
                words += fact.Value is YesNoValue ? ", signed" : lead + fact.Text;
            }
        }

        return words;
    }

    private TraceNode Explain(CaseRecord item, View view) => new(
        "document", $"{item.Id} ({Described(item)})", Fits(item, view), null, null,
        [
            .. _tests.Select(test => TraceNode.Leaf(
                "fact", test.Text, test.Evaluate(item[test.Attribute], view), item[test.Attribute].Text + test.AnchorText(view), item[test.Attribute].Origin.Words)),
        ]);
}

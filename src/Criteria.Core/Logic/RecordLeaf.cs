using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A test of one attribute of a document or therapy trial.</summary>
internal abstract class AttributeTest(FactDefinition attribute)
{
    public FactDefinition Attribute { get; } = attribute;

    public abstract string Text { get; }

    public abstract Truth Evaluate(Fact fact, View view);

    /// <summary>Adds what is open although the attribute itself is known.</summary>
    public virtual void AddMissing(Fact fact, View view, MissingFacts missing)
    {
    }

    public virtual void AddReads(Reads reads)
    {
    }

    /// <summary>A value that passes, or null where none can be made up from what is known.</summary>
    public abstract Fact? Fitting(FactSet facts);

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

    public override Fact? Fitting(FactSet facts) => Fact.Known(Attribute, new YesNoValue(expected), Provenance.Entered);
}

internal sealed class AttributeWord(FactDefinition attribute, ImmutableArray<string> words) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label}: {string.Join(" or ", words)}";

    public override Truth Evaluate(Fact fact, View view) => fact.Value is ChoiceValue { Word: var word } ? Truths.Of(words.Contains(word)) : Truth.Unknown;

    public override Fact? Fitting(FactSet facts) => Fact.Known(Attribute, new ChoiceValue(words[0]), Provenance.Entered);
}

internal sealed class AttributeNumber(FactDefinition attribute, Operator comparison, Ratio bound, string boundText) : AttributeTest(attribute)
{
    public override string Text => $"{Attribute.Label} {comparison.Sign()} {boundText}";

    public override Truth Evaluate(Fact fact, View view) =>
        fact.Number is { } range ? Comparison.Compare(range, comparison, Interval.Exactly(bound)) : Truth.Unknown;

    public override Fact? Fitting(FactSet facts)
    {
        var value = comparison switch
        {
            Operator.Above or Operator.Different => bound.Rounded + 1,
            Operator.Below => bound.Rounded - 1,
            _ => bound,
        };
        return Fact.Known(Attribute, new NumberValue(Interval.Exactly(value)), Provenance.Entered);
    }
}

internal sealed class AttributeDate(FactDefinition attribute, DateRelation relation) : AttributeTest(attribute)
{
    /// <summary>The relation.</summary>
    public DateRelation Relation => relation;

    public override string Text => $"{Attribute.Label} {relation.Text}";

    // What was never signed was signed on no day; what was signed on a day nobody wrote down is open.
    public override Truth Evaluate(Fact fact, View view) => fact.Value switch
    {
        DateValue { Date: var date } => relation.Evaluate(date, view),
        YesNoValue { Yes: false } => Truth.NotMet,
        _ => Truth.Unknown,
    };

    public override void AddMissing(Fact fact, View view, MissingFacts missing)
    {
        if (fact.Value is DateValue { Date: var date })
        {
            relation.AddMissing(date, view, missing);
        }
    }

    public override void AddReads(Reads reads)
    {
        relation.AddReads(reads);
        reads.Dates.Add(new DateBound(Attribute, relation));
    }

    public override Fact? Fitting(FactSet facts) => relation.Fitting(facts) is { } day
        ? Fact.Known(Attribute, new DateValue(day), Provenance.Entered)
        : null;

    public override string AnchorText(View view) => relation.AnchorText(view);
}

/// <summary>Whether the case holds a document, or a therapy trial, that fits.</summary>
/// <remarks>Met when one that is listed fits wholly. When none does, only a closed list settles that there is none.</remarks>
internal sealed class RecordLeaf : Predicate
{
    private readonly RecordSearch _search;

    internal RecordLeaf(RecordSearch search, string? say) => (_search, Say) = (search, say);

    /// <summary>A short text for reports, if the ruleset gives one.</summary>
    public string? Say { get; }

    /// <summary>What is looked for.</summary>
    public RecordSearch Search => _search;

    private protected override string Describe() => Say ?? $"{_search.List.Label} on file: {_search.Text}";

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => _search.Any(view);

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var list = view.Facts.RecordsOf(_search.List);
        var candidates = _search.Candidates(view).Select(item => Explain(item, view)).ToImmutableArray();
        var end = list.ClosedBy is null ? "and the list is not closed" : "and the list is closed";
        var value = $"no {(candidates.IsEmpty ? "" : "other ")}{_search.List.Label.ToLowerInvariant()} of the kind {_search.KindWords} is listed, {end}";
        return new TraceNode("documents", Text, Evaluate(view), value, list.ClosedBy is { } by ? $"list closed by {by}" : null, candidates);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        var open = _search.Candidates(view).Where(item => _search.Fits(item, view) == Truth.Unknown).ToArray();
        foreach (var item in open)
        {
            _search.AddMissing(item, view, missing);
        }

        if (open.Length == 0)
        {
            missing.Add(new MissingFact(_search.MissingId, Text, "", ""));
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        _search.AddReads(reads);
        reads.Sought.Add(new Sought(_search, Text));
    }

    // Enough to find it in the file: kind, date, author, signature.
    private string Described(CaseRecord item)
    {
        var words = item.Kind;
        foreach (var (name, lead) in new[] { ("date", " of "), ("start", " from "), ("author", ", "), ("signed", ", signed ") })
        {
            if (_search.List.Attribute(name) is { } attribute && item[attribute] is { IsKnown: true, Value: not YesNoValue { Yes: false } } fact)
            {
                words += fact.Value is YesNoValue ? ", signed" : lead + fact.Text;
            }
        }

        return words;
    }

    private TraceNode Explain(CaseRecord item, View view) => new(
        "document", $"{item.Id} ({Described(item)})", _search.Fits(item, view), null, null,
        [
            .. _search.Tests.Select(test => TraceNode.Leaf(
                "fact", test.Text, test.Evaluate(item[test.Attribute], view), item[test.Attribute].Text + test.AnchorText(view), item[test.Attribute].Origin.Words)),
        ]);
}

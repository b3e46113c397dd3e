using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A date of another document or trial, against which a date is set: on or after the report of the test.</summary>
/// <param name="search">The records whose date may be the anchor.</param>
/// <param name="attribute">Which of their dates.</param>
internal sealed class RecordAnchor(RecordSearch search, FactDefinition attribute)
{
    public FactDefinition Attribute => attribute;

    public string Text => $"the {attribute.Label.ToLowerInvariant()} of a {search.List.Label.ToLowerInvariant()} of the kind {search.Text}";

    /// <summary>Met when one record that fits stands so to the date; not met only when no other can exist.</summary>
    public Truth Evaluate(View view, Func<DateOnly, Truth> relation) =>
        search.Any(view, item => item[attribute].Value is DateValue { Date: var anchor } ? relation(anchor) : Truth.Unknown);

    public string AnchorText(View view)
    {
        var anchors = search.Candidates(view).Select(item => $"{item.Id} of {item[attribute].Text}").ToArray();
        return anchors.Length == 0 ? "" : $" against {string.Join(", ", anchors)}";
    }

    public void AddMissing(View view, MissingFacts missing, Func<DateOnly, Truth> relation)
    {
        var open = search.Candidates(view).Where(item => search.Fits(item, view) != Truth.NotMet
            && (item[attribute].Value is not DateValue { Date: var anchor } || relation(anchor) == Truth.Met)).ToArray();
        foreach (var item in open)
        {
            search.AddMissing(item, view, missing);
            if (item[attribute].Value is not DateValue)
            {
                missing.Add(RecordSearch.Attribute(item, attribute));
            }
        }

        if (open.Length == 0 && view.Facts.RecordsOf(search.List).ClosedBy is null)
        {
            missing.Add(new MissingFact(search.MissingId, $"{search.List.Label} on file: {search.KindWords}", "", ""));
        }
    }

    /// <summary>The dates that may be the anchor.</summary>
    public IEnumerable<DateOnly> Dates(FactSet facts) => facts.RecordsOf(search.List).Items.Where(item => search.Kinds.Contains(item.Kind))
        .Select(item => item[attribute].Value).OfType<DateValue>().Select(value => value.Date);

    /// <summary>Whether the records of that list and kind may be the anchor.</summary>
    public bool Covers(string list, string kind) => search.List.At == list && search.Kinds.Contains(kind);

    /// <summary>The latest date of a record that surely fits, or null.</summary>
    public DateOnly? Latest(View view) => search.Candidates(view).Where(item => search.Fits(item, view) == Truth.Met)
        .Select(item => item[attribute].Value).OfType<DateValue>().Select(value => (DateOnly?)value.Date).Max();

    /// <summary>Names the record as missing.</summary>
    public void AddMissing(MissingFacts missing) =>
        missing.Add(new MissingFact(search.MissingId, Text, attribute.Ask, attribute.Owner));

    public void AddReads(Reads reads) => search.AddReads(reads);
}

using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>Writes the documents, the therapy trials or another list of a case.</summary>
internal static class RecordWriter
{
    public static void Write(RecordList list, CaseLines lines)
    {
        lines.Add(0, $"{list.Definition.At}:");
        foreach (var record in list.Items)
        {
            var start = lines.Count;
            lines.Add(2, $"id: {Scalars.Text(record.Id)}");
            lines.Add(2, $"kind: {Scalars.Text(record.Kind)}");
            foreach (var attribute in record.Attributes.Where(attribute => attribute.State != FactState.Absent))
            {
                lines.Add(2, attribute.Definition.At![(list.Definition.At.Length + 1)..], attribute);
            }

            lines.BeginItem(start);
        }

        if (list.ClosedBy is { } reviewer)
        {
            lines.Add(1, $"- {{ others: no, reviewed_by: {Scalars.Text(reviewer)} }}");
        }
    }
}

/// <summary>Writes the indices of a night.</summary>
internal static class IndexWriter
{
    public static void Write(IReadOnlyList<Fact> facts, Vocabulary vocabulary, CaseLines lines)
    {
        var entered = facts.ToDictionary(fact => fact.Definition);
        var given = vocabulary.Indices.Where(index => new[] { index.Printed, index.Events, index.Time }.Any(entered.ContainsKey)).ToArray();
        if (given.Length > 0)
        {
            lines.Add(2, $"{IndexReader.Key}:");
        }

        foreach (var index in given)
        {
            var rule = IndexReader.RuleKey(index.Type.Index);
            var parts = new[] { ("per_hour", index.Printed), ("events", index.Events), ("over", index.Time) }
                .Where(part => entered.ContainsKey(part.Item2)).Select(part => $", {part.Item1}: {Scalars.Of(entered[part.Item2])}");
            lines.Add(3, $"- {{ index: {Scalars.Text(index.Type.Index)}, {rule}: {Scalars.Text(index.Type.Rule)}{string.Concat(parts)} }}");
        }
    }
}

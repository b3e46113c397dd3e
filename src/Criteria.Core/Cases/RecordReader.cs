using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Reads the documents, or the therapy trials, of a case.</summary>
internal sealed class RecordReader(DiagnosticBag bag, ValueReader values)
{
    private const string IdKey = "id";
    private const string KindKey = "kind";

    public RecordList Read(RecordDefinition definition, Node node)
    {
        if (node is not ListNode list)
        {
            bag.Add(ReadingDiagnostics.Expected($"a list for `{definition.At}`", node.Described, node.Span));
            return RecordList.Unknown(definition);
        }

        var items = new List<CaseRecord>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        string? closedBy = null;
        foreach (var item in list.Items)
        {
            if (item is MapNode map && map.Find("others") is not null)
            {
                closedBy = ReadClosing(definition, map) ?? closedBy;
            }
            else if (Fields.Of(item, Name(definition), bag) is { } fields && ReadOne(definition, fields, ids) is { } record)
            {
                items.Add(record);
            }
        }

        return new RecordList(definition, [.. items.OrderBy(record => record.Id, StringComparer.Ordinal)], closedBy);
    }

    private string? ReadClosing(RecordDefinition definition, MapNode map)
    {
        foreach (var entry in map.Entries.Where(entry => entry.Key is not ("others" or "reviewed_by")))
        {
            bag.Add(ReadingDiagnostics.UnknownKey(Wording.Quote(entry.Key), "the line that closes a list", null, ["others", "reviewed_by"], entry.KeySpan));
        }

        return Closing.Read(map, $"`{definition.At}`", bag);
    }

    private CaseRecord? ReadOne(RecordDefinition definition, Fields fields, HashSet<string> ids)
    {
        var id = fields.Scalar(IdKey);
        var kind = fields.Word(KindKey, $"a kind of {Name(definition)}", definition.Kinds, required: true);
        var attributes = new List<Fact>();
        foreach (var attribute in definition.Attributes)
        {
            var node = fields.Node(attribute.At![(definition.At.Length + 1)..]);
            attributes.Add((node is null ? null : values.Read(attribute, node)) ?? Fact.Absent(attribute));
        }

        fields.Done();
        if (id is null)
        {
            bag.Add(CaseDiagnostics.RecordIdMissing(Name(definition), fields.Map.Span));
            return null;
        }

        if (!ids.Add(id.Text))
        {
            bag.Add(CaseDiagnostics.RecordIdTwice(id.Text, id.Span));
            return null;
        }

        return kind is null ? null : new CaseRecord(Wording.Quote(id.Text), kind, [.. attributes]);
    }

    private static string Name(RecordDefinition definition) => definition.Label.ToLowerInvariant();
}

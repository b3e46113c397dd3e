using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.BoundTests;

/// <summary>Edits the tree of a case: <c>intake.neck</c>, <c>nights.scoring</c>, <c>indices.rei_4</c>, <c>documents.visit-note.signed</c>.</summary>
/// <remarks>What is put in keeps its own place, so that a problem of the case points into the tests.</remarks>
internal sealed class CaseEdits(Vocabulary vocabulary, DiagnosticBag bag)
{
    private const string Nothing = "nothing";
    private const string Closed = "closed";

    public MapNode Apply(MapNode tree, IEnumerable<MapEntry> edits)
    {
        foreach (var edit in edits)
        {
            tree = Apply(tree, edit);
        }

        return tree;
    }

    private MapNode Apply(MapNode tree, MapEntry edit)
    {
        var steps = edit.Key.Split('.');
        if (steps[0] == IndexReader.Key && steps.Length > 1)
        {
            return SetIndex(tree, edit, edit.Key[(IndexReader.Key.Length + 1)..]);
        }

        if (steps[0] == Vocabulary.NightPlace && steps.Length > 1)
        {
            return OnFirstNight(tree, edit, night => Set(night, Vocabulary.NightPlace, steps.AsSpan(1), edit));
        }

        return vocabulary.Record(steps[0]) is not null && steps.Length > 1 ? SetRecord(tree, edit, steps) : Set(tree, "", steps, edit);
    }

    private MapNode Set(MapNode map, string at, ReadOnlySpan<string> steps, MapEntry edit)
    {
        var key = steps[0];
        if (steps.Length == 1)
        {
            return IsNothing(edit.Value) ? Without(map, key) : With(map, key, edit.KeySpan, edit.Value);
        }

        var place = at.Length == 0 ? key : $"{at}.{key}";
        var inner = map[key] switch
        {
            MapNode found => found,
            ListNode list => WrittenOut(list, place),
            _ => new MapNode([], edit.KeySpan),
        };
        return With(map, key, edit.KeySpan, Set(inner, place, steps[1..], edit));
    }

    // A complete list of channels as a map: what is listed is yes, everything else is no.
    private MapNode WrittenOut(ListNode list, string place) => new(
        [
            .. vocabulary.Facts.Where(fact => fact.At?.StartsWith(place + ".", StringComparison.Ordinal) == true).Select(fact => fact.At![(place.Length + 1)..])
                .Select(name => new MapEntry(name, list.Span, new ScalarNode(list.Items.Any(item => item is ScalarNode listed && listed.Text == name) ? "yes" : "no", Quoted: true, list.Span))),
        ],
        list.Span);

    private static MapNode OnFirstNight(MapNode tree, MapEntry edit, Func<MapNode, MapNode> change)
    {
        var nights = tree[Vocabulary.NightPlace] as ListNode;
        var first = nights is { Items: [MapNode night, ..] } ? night : new MapNode([], edit.KeySpan);
        var rest = nights is null ? [] : nights.Items.Skip(1);
        return With(tree, Vocabulary.NightPlace, edit.KeySpan, new ListNode([change(first), .. rest], nights?.Span ?? edit.KeySpan));
    }

    private MapNode SetIndex(MapNode tree, MapEntry edit, string id)
    {
        if (vocabulary.Indices.FirstOrDefault(index => index.Rate.Id == id) is not { } index)
        {
            var known = vocabulary.Indices.Select(one => one.Rate.Id).ToArray();
            bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(id), "an index", NearestName.Of(id, known), known, edit.KeySpan));
            return tree;
        }

        var ruleKey = index.Type.Index == "ODI" ? "desaturation" : "hypopnea";
        ScalarNode Word(string text) => new(text, Quoted: true, edit.KeySpan);
        return OnFirstNight(tree, edit, night =>
        {
            var entries = (night[IndexReader.Key] as ListNode)?.Items ?? [];
            var kept = entries.Where(entry => entry is not MapNode map
                || (map["index"] as ScalarNode)?.Text != index.Type.Index || (map[ruleKey] as ScalarNode)?.Text != index.Type.Rule);
            if (IsNothing(edit.Value))
            {
                return With(night, IndexReader.Key, edit.KeySpan, new ListNode([.. kept], edit.KeySpan));
            }

            var figures = edit.Value is MapNode given ? given.Entries : [new MapEntry("per_hour", edit.KeySpan, edit.Value)];
            var made = new MapNode(
                [new MapEntry("index", edit.KeySpan, Word(index.Type.Index)), new MapEntry(ruleKey, edit.KeySpan, Word(index.Type.Rule)), .. figures], edit.KeySpan);
            return With(night, IndexReader.Key, edit.KeySpan, new ListNode([.. kept, made], edit.KeySpan));
        });
    }

    private MapNode SetRecord(MapNode tree, MapEntry edit, string[] steps)
    {
        var list = (tree[steps[0]] as ListNode)?.Items ?? [];
        bool IsClosing(Node item) => item is MapNode map && map["others"] is not null;
        bool IsMeant(Node item) => item is MapNode map && (map["id"] as ScalarNode)?.Text == steps[1];
        ScalarNode Word(string text) => new(text, Quoted: true, edit.KeySpan);
        IEnumerable<Node> items;
        if (steps[1] == Closed)
        {
            var open = list.Where(item => !IsClosing(item));
            items = edit.Value is ScalarNode { Text: "yes" or "true" }
                ? [.. open, new MapNode([new MapEntry("others", edit.KeySpan, Word("no")), new MapEntry("reviewed_by", edit.KeySpan, Word("billing staff"))], edit.KeySpan)]
                : open;
        }
        else if (steps.Length == 2)
        {
            var others = list.Where(item => !IsMeant(item));
            items = edit.Value is MapNode whole ? [With(whole, "id", edit.KeySpan, Word(steps[1])), .. others] : others;
        }
        else
        {
            var meant = list.FirstOrDefault(IsMeant) as MapNode ?? new MapNode([new MapEntry("id", edit.KeySpan, Word(steps[1]))], edit.KeySpan);
            items = [Set(meant, "", steps.AsSpan(2), edit), .. list.Where(item => !IsMeant(item))];
        }

        return With(tree, steps[0], edit.KeySpan, new ListNode([.. items], edit.KeySpan));
    }

    private static bool IsNothing(Node node) => node is ScalarNode { Text: Nothing };

    private static MapNode Without(MapNode map, string key) => map with { Entries = [.. map.Entries.Where(entry => entry.Key != key)] };

    private static MapNode With(MapNode map, string key, SourceSpan span, Node value) => map.Find(key) is { } old
        ? map with { Entries = [.. map.Entries.Select(entry => ReferenceEquals(entry, old) ? entry with { Value = value } : entry)] }
        : map with { Entries = [.. map.Entries, new MapEntry(key, span, value)] };
}

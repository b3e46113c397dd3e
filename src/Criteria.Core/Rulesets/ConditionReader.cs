using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads conditions: trees of comparisons, and documents or trials looked for.</summary>
internal sealed class ConditionReader(BindingContext context)
{
    private static readonly string[] GroupKeys = ["all", "any", "not", "at_least"];

    private readonly LeafReader _leaves = new(context);

    /// <summary>The condition, or null (and diagnostics).</summary>
    public Predicate? Read(Node node, bool gapsAllowed = false)
    {
        switch (node)
        {
            case ScalarNode { Text.Length: > 0 } leaf:
                return _leaves.Read(leaf, gapsAllowed);
            case MapNode map when GroupKeys.FirstOrDefault(key => map[key] is not null) is { } key:
                return Group(map, key, gapsAllowed);
            case MapNode map when context.Vocabulary.Records.FirstOrDefault(record => map[KeyOf(record)] is not null) is { } record:
                return Record(map, record);
            default:
                context.Bag.Add(RulesetDiagnostics.NotACondition(node.Described, node.Span));
                return null;
        }
    }

    // `documents` are looked for with `document:`; `therapy` with `therapy:`.
    internal static string KeyOf(RecordDefinition record) => record.At.EndsWith('s') ? record.At[..^1] : record.At;

    private Predicate? Group(MapNode map, string key, bool gapsAllowed)
    {
        var fields = Fields.Of(map, "a condition", context.Bag)!;
        var say = fields.Text("say")?.TrimEnd('.');
        var body = fields.Node(key)!;
        var of = key == "at_least" ? fields.RequiredNode("of") : null;
        fields.Done();
        switch (key)
        {
            case "not":
                return Opposite(body, say, gapsAllowed);
            case "at_least":
                return Counted(body, of, say, gapsAllowed);
            default:
                var parts = Parts(body, key, gapsAllowed);
                return parts.IsDefault ? null : key == "all" ? new All(parts, say) : new Any(parts, say);
        }
    }

    // "Not recorded" would turn round when the fact is learned: a conclusion may not rest on it.
    private Negation? Opposite(Node body, string? say, bool gapsAllowed)
    {
        var part = Read(body, gapsAllowed);
        if (part is RecordedLeaf)
        {
            context.Bag.Add(RulesetDiagnostics.UndeterminedAsked("not: ... is recorded", body.Span));
            return null;
        }

        return part is null ? null : new Negation(part, say);
    }

    private AtLeast? Counted(Node count, Node? of, string? say, bool gapsAllowed)
    {
        if (of is null)
        {
            return null;
        }

        var parts = Parts(of, "of", gapsAllowed);
        if (parts.IsDefault)
        {
            return null;
        }

        if (count is ScalarNode { Text.Length: < 5 } text && int.TryParse(text.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var needed)
            && needed >= 1 && needed <= parts.Length)
        {
            return new AtLeast(needed, parts, say);
        }

        context.Bag.Add(RulesetDiagnostics.BadCount((count as ScalarNode)?.Text ?? "", parts.Length, count.Span));
        return null;
    }

    private ImmutableArray<Predicate> Parts(Node node, string key, bool gapsAllowed)
    {
        if (node is not ListNode { Items.Count: > 0 } list)
        {
            context.Bag.Add(RulesetDiagnostics.EmptyGroup(key, node.Span));
            return default;
        }

        var parts = list.Items.Select(item => Read(item, gapsAllowed)).ToArray();
        return parts.All(part => part is not null) ? [.. parts!] : default;
    }

    private RecordLeaf? Record(MapNode map, RecordDefinition record) =>
        Search(map, record, ["say"]) is { } search ? new RecordLeaf(search, (map["say"] as ScalarNode)?.Text.TrimEnd('.')) : null;

    // What is looked for; the keys that are not attributes are read by whoever asks.
    private RecordSearch? Search(MapNode map, RecordDefinition record, string[] otherKeys)
    {
        var key = KeyOf(record);
        var kinds = Words(key, map[key]!, $"a kind of {record.Label.ToLowerInvariant()}", record.Kinds);
        var faulty = kinds.IsDefault;
        var tests = ImmutableArray.CreateBuilder<AttributeTest>();
        foreach (var entry in map.Entries.Where(entry => entry.Key != key && !otherKeys.Contains(entry.Key)))
        {
            if (Attribute(entry, record) is { } test)
            {
                tests.Add(test);
            }
            else
            {
                faulty = true;
            }
        }

        return faulty ? null : new RecordSearch(record, kinds, tests.ToImmutable());
    }

    // `dated: { on or after: { document: sleep test report } }`: the date of another record is the anchor.
    private DateRelation? AgainstRecord(MapNode map)
    {
        if (map.Entries is not [{ Value: MapNode inner } relation]
            || context.Vocabulary.Records.FirstOrDefault(list => inner[KeyOf(list)] is not null) is not { } record)
        {
            context.Bag.Add(ReadingDiagnostics.Expected("a date relation and one record, such as `{ on or after: { document: order } }`", map.Described, map.Span));
            return null;
        }

        if (Search(inner, record, ["its"]) is not { } search || DateOf(inner["its"], record) is not { } attribute)
        {
            return null;
        }

        return _leaves.ReadDateRelation(relation.Key, relation.KeySpan, new RecordAnchor(search, attribute));
    }

    // `its: delivered` names the date that counts; else the date of a document, or the start of a trial.
    private FactDefinition? DateOf(Node? its, RecordDefinition record)
    {
        var dates = record.Attributes.Where(attribute => attribute.Kind == FactKind.Date).ToArray();
        var names = dates.Select(date => date.At![(record.At.Length + 1)..]).ToArray();
        if (its is null)
        {
            return record.Attribute("date") ?? record.Attribute("start") ?? dates.FirstOrDefault();
        }

        var name = (its as ScalarNode)?.Text ?? "";
        if (names.Contains(name))
        {
            return record.Attribute(name);
        }

        context.Bag.Add(ReadingDiagnostics.UnknownWord(
            Wording.Quote(name), $"a date of a {record.Label.ToLowerInvariant()}", NearestName.Of(name, names), names, its.Span));
        return null;
    }

    // `dated` and `started` read better than `date` and `start`.
    private static string AttributeName(string key) => key switch
    {
        "dated" => "date",
        "started" => "start",
        "ended" => "end",
        _ => key,
    };

    private AttributeTest? Attribute(MapEntry entry, RecordDefinition record)
    {
        if (record.Attribute(AttributeName(entry.Key)) is not { } attribute)
        {
            var known = record.Attributes.Select(fact => fact.At![(record.At.Length + 1)..]).ToArray();
            context.Bag.Add(ReadingDiagnostics.UnknownKey(
                Wording.Quote(entry.Key), $"a {record.Label.ToLowerInvariant()} looked for", NearestName.Of(entry.Key, known), known, entry.KeySpan));
            return null;
        }

        if (entry.Value is ScalarNode { Text.Length: > 0 } answer
            && (attribute.Kind == FactKind.YesNo || attribute.AlsoYesNo) && YesNoWords.Read(answer.Text) is { } expected)
        {
            return new AttributeYesNo(attribute, expected);
        }

        switch (attribute.Kind, entry.Value)
        {
            case (FactKind.Choice, _):
                var words = Words(entry.Key, entry.Value, $"a value of `{entry.Key}`", attribute.Choices);
                return words.IsDefault ? null : new AttributeWord(attribute, words);
            case (FactKind.Date, MapNode against):
                return AgainstRecord(against) is { } other ? new AttributeDate(attribute, other) : null;
            case (FactKind.Date, ScalarNode relation):
                return _leaves.ReadDateRelation(relation) is { } read ? new AttributeDate(attribute, read) : null;
            case (FactKind.Number or FactKind.Count or FactKind.Duration, ScalarNode bound):
                return _leaves.ReadBound(bound, attribute) is { } found ? new AttributeNumber(attribute, found.Comparison, found.Bound, found.Text) : null;
            default:
                context.Bag.Add(ReadingDiagnostics.Expected($"`yes` or `no` for `{entry.Key}`", entry.Value.Described, entry.Value.Span));
                return null;
        }
    }

    private ImmutableArray<string> Words(string key, Node node, string what, ImmutableArray<string> allowed)
    {
        if (node is ListNode { Items.Count: 0 })
        {
            context.Bag.Add(RulesetDiagnostics.EmptyGroup(key, node.Span));
            return default;
        }

        var words = ImmutableArray.CreateBuilder<string>();
        var faulty = false;
        foreach (var item in node is ListNode list ? list.Items : [node])
        {
            if (item is ScalarNode word && allowed.Contains(word.Text))
            {
                words.Add(word.Text);
            }
            else
            {
                var text = (item as ScalarNode)?.Text ?? "";
                context.Bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(text), what, NearestName.Of(text, allowed), allowed, item.Span));
                faulty = true;
            }
        }

        return faulty ? default : words.ToImmutable();
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Support;

/// <summary>Reads trees, and walks them.</summary>
internal static class Trees
{
    public static (Node? Tree, IReadOnlyList<Diagnostic> Problems) Read(string text, string name = "file.yaml") =>
        Read(System.Text.Encoding.UTF8.GetBytes(text), name);

    public static (Node? Tree, IReadOnlyList<Diagnostic> Problems) Read(ReadOnlySpan<byte> bytes, string name = "file.yaml")
    {
        var bag = new DiagnosticBag();
        var tree = TreeReader.Read(name, bytes, bag);
        return (tree, bag.Ordered());
    }

    /// <summary>The tree, which must read without a problem.</summary>
    public static Node Tree(string text, string name = "file.yaml")
    {
        var (tree, problems) = Read(text, name);
        problems.ShouldSay();
        return tree!;
    }

    /// <summary>Every text in the tree, keys too, as a scalar.</summary>
    public static IEnumerable<ScalarNode> Scalars(this Node node) => node switch
    {
        ScalarNode scalar => [scalar],
        ListNode list => list.Items.SelectMany(Scalars),
        MapNode map => map.Entries.SelectMany(entry => entry.Value.Scalars().Prepend(new ScalarNode(entry.Key, Quoted: false, entry.KeySpan))),
        _ => [],
    };

    /// <summary>The tree in a short form without places: <c>{a: [1, 2]}</c>.</summary>
    public static string Outline(this Node node) => node switch
    {
        ScalarNode scalar => scalar.Text,
        ListNode list => "[" + string.Join(", ", list.Items.Select(Outline)) + "]",
        MapNode map => "{" + string.Join(", ", map.Entries.Select(entry => $"{entry.Key}: {entry.Value.Outline()}")) + "}",
        _ => "",
    };

    /// <summary>The same content as JSON text.</summary>
    public static string ToJson(this Node node) => ToJsonNode(node).ToJsonString(new JsonSerializerOptions { WriteIndented = true });

    private static JsonNode ToJsonNode(Node node) => node switch
    {
        ScalarNode { Text: "yes", Quoted: false } => JsonValue.Create(true),
        ScalarNode { Text: "no", Quoted: false } => JsonValue.Create(false),
        ScalarNode { Quoted: false } number when decimal.TryParse(number.Text, System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var value) =>
            JsonValue.Create(value),
        ScalarNode scalar => JsonValue.Create(scalar.Text),
        ListNode list => new JsonArray([.. list.Items.Select(ToJsonNode)]),
        MapNode map => new JsonObject(map.Entries.Select(entry => KeyValuePair.Create(entry.Key, (JsonNode?)ToJsonNode(entry.Value)))),
        _ => throw new ArgumentException("a node of no kind", nameof(node)),
    };
}

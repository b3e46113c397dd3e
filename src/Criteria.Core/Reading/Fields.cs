using System.Globalization;

namespace Criteria.Core.Reading;

/// <summary>Reads the keys of one map, and reports what is missing, of the wrong form, or not known.</summary>
internal sealed class Fields
{
    private readonly string _where;
    private readonly DiagnosticBag _bag;
    private readonly List<string> _asked = [];

    private Fields(MapNode map, string where, DiagnosticBag bag) => (Map, _where, _bag) = (map, where, bag);

    public MapNode Map { get; }

    /// <summary>The fields of a node, or null (and a diagnostic) when it is not a map.</summary>
    public static Fields? Of(Node node, string where, DiagnosticBag bag)
    {
        if (node is MapNode map)
        {
            return new Fields(map, where, bag);
        }

        bag.Add(ReadingDiagnostics.Expected($"a map of keys and values for {where}", node.Described, node.Span));
        return null;
    }

    public Node? Node(string key)
    {
        _asked.Add(key);
        return Map[key];
    }

    public Node? RequiredNode(string key)
    {
        var node = Node(key);
        if (node is null)
        {
            _bag.Add(ReadingDiagnostics.MissingKey(key, _where, Map.Span with { EndLine = Map.Span.Line, EndColumn = Map.Span.Column }));
        }

        return node;
    }

    public ScalarNode? Scalar(string key) => AsScalar(Node(key), key);

    public ScalarNode? RequiredScalar(string key) => AsScalar(RequiredNode(key), key);

    public string? Text(string key) => Scalar(key)?.Text;

    public string RequiredText(string key) => RequiredScalar(key)?.Text ?? "";

    public bool Flag(string key)
    {
        if (Scalar(key) is not { } node)
        {
            return false;
        }

        if (YesNoWords.Read(node.Text) is { } yes)
        {
            return yes;
        }

        _bag.Add(ReadingDiagnostics.Expected("`yes` or `no`", node.Described, node.Span));
        return false;
    }

    public DateOnly? Date(string key) => Scalar(key) is { } node ? Dates.Read(node, _bag) : null;

    public IReadOnlyList<Node> List(string key)
    {
        switch (Node(key))
        {
            case null:
                return [];
            case ListNode list:
                return list.Items;
            case var other:
                _bag.Add(ReadingDiagnostics.Expected($"a list for `{key}`", other.Described, other.Span));
                return [];
        }
    }

    public IEnumerable<ScalarNode> Words(string key)
    {
        foreach (var item in List(key))
        {
            if (AsScalar(item, key) is { } word)
            {
                yield return word;
            }
        }
    }

    /// <summary>One of the allowed words, or null (and a diagnostic).</summary>
    public string? Word(string key, string what, IReadOnlyCollection<string> allowed, bool required = false)
    {
        var node = required ? RequiredScalar(key) : Scalar(key);
        if (node is null || allowed.Contains(node.Text))
        {
            return node?.Text;
        }

        _bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(node.Text), what, NearestName.Of(node.Text, allowed), allowed, node.Span));
        return null;
    }

    /// <summary>Reports the keys that nobody asked for.</summary>
    public void Done()
    {
        foreach (var entry in Map.Entries.Where(entry => !_asked.Contains(entry.Key)))
        {
            // Looking for near names takes time that a file full of problems is not worth.
            if (_bag.IsFull(entry.KeySpan.File))
            {
                return;
            }

            _bag.Add(ReadingDiagnostics.UnknownKey(
                Wording.Quote(entry.Key), _where, NearestName.Of(entry.Key, _asked), _asked.Distinct(StringComparer.Ordinal), entry.KeySpan));
        }
    }

    private ScalarNode? AsScalar(Node? node, string key)
    {
        switch (node)
        {
            case null:
                return null;
            case ScalarNode { Text.Length: > 0 } scalar:
                return scalar;
            default:
                _bag.Add(ReadingDiagnostics.Expected($"a value for `{key}`", node.Described, node.Span));
                return null;
        }
    }
}

/// <summary>The words for yes and no; YAML and JSON truth values mean the same.</summary>
internal static class YesNoWords
{
    public static bool? Read(string text) => text switch
    {
        "yes" or "true" => true,
        "no" or "false" => false,
        _ => null,
    };
}

/// <summary>Reads ISO dates.</summary>
internal static class Dates
{
    public static bool TryRead(string text, out DateOnly date) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date);

    public static DateOnly? Read(ScalarNode node, DiagnosticBag bag)
    {
        if (TryRead(node.Text, out var date))
        {
            return date;
        }

        bag.Add(ReadingDiagnostics.BadDate(Wording.Quote(node.Text), node.Span));
        return null;
    }
}

using System.Text;
using System.Text.Json;

namespace Criteria.Core.Reading;

/// <summary>Builds the same tree from JSON.</summary>
internal ref struct JsonTree
{
    private readonly string _file;
    private readonly DiagnosticBag _bag;
    private readonly TreeBudget _budget;
    private readonly byte[] _bytes;
    private readonly List<int> _lineStarts;
    private Utf8JsonReader _reader;
    private int _lastOffset;
    private int _lastCharacters;

    private JsonTree(string file, byte[] bytes, DiagnosticBag bag)
    {
        (_file, _bytes, _bag, _budget) = (file, bytes, bag, new TreeBudget(bag));
        _lineStarts = [0];
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] == (byte)'\n')
            {
                _lineStarts.Add(i + 1);
            }
        }

        // One level more than the bound, so that our own message is given and not the reader's.
        _reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = ReadingBounds.Deepest + 2 });
    }

    public static Node? Read(string file, string text, DiagnosticBag bag)
    {
        var tree = new JsonTree(file, Encoding.UTF8.GetBytes(text), bag);
        try
        {
            tree._reader.Read();
            var root = tree.Value(depth: 0);
            if (root is not null)
            {
                tree._reader.Read();
            }

            return root;
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            var (line, column) = tree.Position(error is JsonException json ? tree.OffsetOf(json) : (int)tree._reader.TokenStartIndex);
            bag.Add(ReadingDiagnostics.JsonSyntax(new SourceSpan(file, line, column, line, column)));
            return null;
        }
    }

    private Node? Value(int depth)
    {
        var span = Span();
        if (!_budget.Spend(depth, _reader.TokenType == JsonTokenType.String ? _reader.ValueSpan.Length : 0, span))
        {
            return null;
        }

        return _reader.TokenType switch
        {
            JsonTokenType.StartArray => List(depth, span),
            JsonTokenType.StartObject => Map(depth, span),
            JsonTokenType.String => new ScalarNode(_reader.GetString()!, Quoted: true, span),
            JsonTokenType.Null => new ScalarNode("", Quoted: false, span),
            _ => new ScalarNode(Encoding.UTF8.GetString(_reader.ValueSpan), Quoted: false, span),
        };
    }

    private ListNode? List(int depth, SourceSpan start)
    {
        var items = new List<Node>();
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (Value(depth + 1) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }

        return new ListNode(items, Join(start, Span()));
    }

    private MapNode? Map(int depth, SourceSpan start)
    {
        var entries = new List<MapEntry>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndObject)
        {
            var keySpan = Span();
            var key = _reader.GetString()!;
            _reader.Read();
            if (!_budget.Spend(depth, key.Length, keySpan) || Value(depth + 1) is not { } value)
            {
                return null;
            }

            if (seen.TryAdd(key, keySpan.Line))
            {
                entries.Add(new MapEntry(key, keySpan, value));
            }
            else
            {
                _bag.Add(ReadingDiagnostics.DuplicateKey(Wording.Quote(key), keySpan, seen[key]));
            }
        }

        return new MapNode(entries, Join(start, Span()));
    }

    private SourceSpan Span()
    {
        var (line, column) = Position((int)_reader.TokenStartIndex);

        // A name is consumed together with its colon; its place ends with its closing quote.
        var end = _reader.TokenType == JsonTokenType.PropertyName ? (int)_reader.TokenStartIndex + _reader.ValueSpan.Length + 2 : (int)_reader.BytesConsumed;
        var (endLine, endColumn) = Position(end);
        return new SourceSpan(_file, line, column, endLine, endColumn);
    }

    // The exception counts bytes of its line; places count characters.
    private int OffsetOf(JsonException error) =>
        _lineStarts[(int)Math.Min(error.LineNumber ?? 0, _lineStarts.Count - 1)] + (int)(error.BytePositionInLine ?? 0);

    private (int Line, int Column) Position(int offset)
    {
        var index = _lineStarts.BinarySearch(offset);
        var line = index >= 0 ? index : ~index - 1;
        var start = _lineStarts[line];
        offset = Math.Min(offset, _bytes.Length);

        // Count on from the last place on this line: one very long line stays linear.
        var (from, characters) = _lastOffset >= start && _lastOffset <= offset ? (_lastOffset, _lastCharacters) : (start, 0);
        (_lastOffset, _lastCharacters) = (offset, characters + Encoding.UTF8.GetCharCount(_bytes, from, offset - from));
        return (line + 1, _lastCharacters + 1);
    }

    private static SourceSpan Join(SourceSpan first, SourceSpan last) => first with { EndLine = last.EndLine, EndColumn = last.EndColumn };
}

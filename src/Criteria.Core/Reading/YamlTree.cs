using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Criteria.Core.Reading;

/// <summary>Builds the tree from YAML events. Anchors, aliases and tags are refused, so nothing can grow out of little text.</summary>
internal sealed class YamlTree
{
    private const int LongestMessage = 160;

    private readonly string _file;
    private readonly DiagnosticBag _bag;
    private readonly TreeBudget _budget;
    private readonly Parser _parser;

    private YamlTree(string file, string text, DiagnosticBag bag)
    {
        (_file, _bag, _budget) = (file, bag, new TreeBudget(bag));
        _parser = new Parser(new StringReader(text));
    }

    public static Node? Read(string file, string text, DiagnosticBag bag)
    {
        var tree = new YamlTree(file, text, bag);
        try
        {
            return tree.Document();
        }
        catch (YamlException error)
        {
            var span = tree.SpanOf(error.Start, error.End);
            bag.Add(ReadingDiagnostics.Syntax(Plain(error), span));
            return null;
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException or FormatException or OverflowException)
        {
            // Some broken texts make the parser fail without a place of its own; where it stood is the best there is.
            var span = tree._parser.Current is { } last ? tree.SpanOf(last) : SourceSpan.StartOf(file);
            bag.Add(ReadingDiagnostics.Syntax("broken YAML after this place", span));
            return null;
        }
    }

    private Node? Document()
    {
        Next();
        while (_parser.Current is StreamStart or DocumentStart)
        {
            Next();
        }

        if (_parser.Current is StreamEnd or null)
        {
            _bag.Add(ReadingDiagnostics.Empty(_file));
            return null;
        }

        var root = Value(depth: 0);
        if (root is null)
        {
            return null;
        }

        while (_parser.Current is DocumentEnd)
        {
            Next();
        }

        if (_parser.Current is not (StreamEnd or null))
        {
            _bag.Add(ReadingDiagnostics.SeveralDocuments(SpanOf(_parser.Current)));
            return null;
        }

        return root;
    }

    private void Next() => _parser.MoveNext();

    // Recursion is bounded by ReadingBounds.Deepest.
    private Node? Value(int depth)
    {
        var current = _parser.Current!;
        var span = SpanOf(current);
        if (!_budget.Spend(depth, current is Scalar text ? text.Value.Length : 0, span))
        {
            return null;
        }

        if (current is AnchorAlias alias)
        {
            _bag.Add(ReadingDiagnostics.Alias(alias.Value.Value, span));
            Next();
            return new ScalarNode("", Quoted: true, span);
        }

        if (current is NodeEvent node)
        {
            RefuseAnchorsAndTags(node, span);
        }

        return current switch
        {
            Scalar scalar => ScalarOf(scalar, span),
            SequenceStart => Sequence(depth, span),
            MappingStart => Mapping(depth, span),
            _ => throw new YamlException(current.Start, current.End, "unexpected content"),
        };
    }

    private void RefuseAnchorsAndTags(NodeEvent node, SourceSpan span)
    {
        if (!node.Anchor.IsEmpty)
        {
            _bag.Add(ReadingDiagnostics.Alias(node.Anchor.Value, span));
        }

        if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
        {
            _bag.Add(ReadingDiagnostics.Tag(node.Tag.Value, span));
        }
    }

    private ScalarNode ScalarOf(Scalar scalar, SourceSpan span)
    {
        Next();
        return new ScalarNode(scalar.Value, scalar.Style != ScalarStyle.Plain, span);
    }

    private ListNode? Sequence(int depth, SourceSpan start)
    {
        Next();
        var items = new List<Node>();
        while (_parser.Current is not SequenceEnd)
        {
            if (Value(depth + 1) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }

        var span = Join(start, SpanOf(_parser.Current));
        Next();
        return new ListNode(items, span);
    }

    private MapNode? Mapping(int depth, SourceSpan start)
    {
        Next();
        var entries = new List<MapEntry>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        while (_parser.Current is not MappingEnd)
        {
            if (Value(depth + 1) is not { } key || Value(depth + 1) is not { } value)
            {
                return null;
            }

            if (key is not ScalarNode name)
            {
                _bag.Add(ReadingDiagnostics.KeyNotText(key.Span));
            }
            else if (!seen.TryAdd(name.Text, name.Span.Line))
            {
                _bag.Add(ReadingDiagnostics.DuplicateKey(Wording.Quote(name.Text), name.Span, seen[name.Text]));
            }
            else
            {
                entries.Add(new MapEntry(name.Text, name.Span, value));
            }
        }

        var span = Join(start, SpanOf(_parser.Current));
        Next();
        return new MapNode(entries, span);
    }

    private SourceSpan SpanOf(ParsingEvent item) => SpanOf(item.Start, item.End);

    private SourceSpan SpanOf(Mark start, Mark end) => new(
        _file, Math.Max(1, (int)start.Line), Math.Max(1, (int)start.Column), Math.Max(1, (int)end.Line), Math.Max(1, (int)end.Column));

    private static SourceSpan Join(SourceSpan first, SourceSpan last) => first with { EndLine = last.EndLine, EndColumn = last.EndColumn };

    private static string Plain(YamlException error)
    {
        var message = error.Message.TrimEnd('.');
        return message.Length == 0 ? "broken YAML" : Wording.Quote(char.ToLowerInvariant(message[0]) + message[1..], LongestMessage);
    }
}

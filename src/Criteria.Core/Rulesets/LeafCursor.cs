using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Walks the words and signs of one comparison, and knows where each stands in the file.</summary>
internal sealed class LeafCursor
{
    private readonly ScalarNode _node;
    private readonly List<(string Text, int Start)> _tokens = [];
    private int _next;

    public LeafCursor(ScalarNode node)
    {
        _node = node;
        var text = node.Text;
        var i = 0;
        while (i < text.Length)
        {
            if (char.IsWhiteSpace(text[i]))
            {
                i++;
                continue;
            }

            var start = i;
            var sign = IsSign(text[i]);
            while (i < text.Length && !char.IsWhiteSpace(text[i]) && IsSign(text[i]) == sign)
            {
                i++;
            }

            _tokens.Add((text[start..i], start));
        }
    }

    public bool AtEnd => _next >= _tokens.Count;

    /// <summary>The next word or sign; empty at the end.</summary>
    public string Peek(int ahead = 0) => _next + ahead < _tokens.Count ? _tokens[_next + ahead].Text : "";

    /// <summary>Takes the next word or sign.</summary>
    public (string Text, SourceSpan Span) Take()
    {
        if (AtEnd)
        {
            return ("", Here());
        }

        var (text, start) = _tokens[_next++];
        return (text, _node.Part(start, text.Length));
    }

    /// <summary>Takes the words if they come next.</summary>
    public bool TakeWords(params string[] words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (Peek(i) != words[i])
            {
                return false;
            }
        }

        _next += words.Length;
        return true;
    }

    /// <summary>Takes everything that is left, as it was written.</summary>
    public (string Text, int Start) Rest()
    {
        if (AtEnd)
        {
            return ("", _node.Text.Length);
        }

        var start = _tokens[_next].Start;
        _next = _tokens.Count;
        return (_node.Text[start..].TrimEnd(), start);
    }

    /// <summary>Everything that is left, without taking it.</summary>
    public string PeekRest() => AtEnd ? "" : _node.Text[_tokens[_next].Start..].TrimEnd();

    /// <summary>The place of a part of the text.</summary>
    public SourceSpan Part(int start, int length) => _node.Part(start, length);

    /// <summary>The place of what comes next.</summary>
    public SourceSpan Here() => AtEnd
        ? _node.Part(_node.Text.Length, 0)
        : _node.Part(_tokens[_next].Start, _tokens[_next].Text.Length);

    public string DescribeNext() => AtEnd ? "the end" : $"`{Wording.Quote(Peek())}`";

    private static bool IsSign(char c) => c is '<' or '>' or '=' or '!';
}

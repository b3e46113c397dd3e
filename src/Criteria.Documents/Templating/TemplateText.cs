using Criteria.Core.Reading;

namespace Criteria.Documents.Templating;

/// <summary>Finds places in the text of a template; the tree of the parser has none.</summary>
/// <remarks>The tree is visited in the order of the text, so the next place of a name is the one meant.</remarks>
internal sealed class TemplateText(string file, string text)
{
    private int _at;

    /// <summary>Moves to the next place of a word and gives it; without one, the place stays where it is.</summary>
    public SourceSpan Next(string word)
    {
        var found = Find(word, _at);
        if (found < 0)
        {
            found = Find(word, 0);
        }

        if (found < 0)
        {
            return At(_at, 1);
        }

        _at = found;
        return At(found, word.Length);
    }

    /// <summary>The place of an offset.</summary>
    public SourceSpan At(int offset, int length)
    {
        var line = 1 + text.AsSpan(0, offset).Count('\n');
        var column = offset - (offset == 0 ? -1 : text.LastIndexOf('\n', offset - 1));
        return new SourceSpan(file, line, column, line, column + length);
    }

    private int Find(string word, int from)
    {
        for (var at = text.IndexOf(word, from, StringComparison.Ordinal); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.Ordinal))
        {
            if (!IsPart(at - 1) && !IsPart(at + word.Length))
            {
                return at;
            }
        }

        return -1;
    }

    private bool IsPart(int at) => at >= 0 && at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '_' or '-');
}

using System.Globalization;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax.Inlines;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Inline Markdown as words in their fonts.</summary>
internal sealed class WordReader(DocumentPage page, Glyphs glyphs, TextStyle style)
{
    private readonly List<TextWord> _words = [];
    private readonly List<Run> _current = [];

    /// <summary>The words of a paragraph, a heading or a cell.</summary>
    public static List<TextWord> Read(ContainerInline? container, DocumentPage page, Glyphs glyphs, TextStyle style)
    {
        var reader = new WordReader(page, glyphs, style);
        reader.Inner(container, style.Face);
        reader.EndWord();
        return reader._words;
    }

    /// <summary>The words of a plain text.</summary>
    public static List<TextWord> Read(string text, DocumentPage page, Glyphs glyphs, TextStyle style)
    {
        var reader = new WordReader(page, glyphs, style);
        reader.Text(text, style.Face);
        reader.EndWord();
        return reader._words;
    }

    private void Inner(ContainerInline? container, Face face)
    {
        foreach (var inline in container ?? [])
        {
            Append(inline, face);
        }
    }

    private void Append(Inline inline, Face face)
    {
        switch (inline)
        {
            case LiteralInline literal:
                Text(literal.Content.ToString(), face);
                break;
            case CodeInline code:
                Text(code.Content, face);
                break;
            case HtmlEntityInline entity:
                Text(entity.Transcoded.ToString(), face);
                break;
            case LineBreakInline line:
                EndWord(line.IsHard);
                break;
            case FootnoteLink { IsBackLink: false } mark:
                Mark(mark.Footnote.Order);
                break;
            case FootnoteLink:
                break;
            case EmphasisInline emphasis:
                Inner(emphasis, emphasis.DelimiterCount > 1 || face == Face.Bold ? Face.Bold : Face.Italic);
                break;
            case LinkInline { IsImage: true } image:
                Text(Inlines.Figure(image, page)?.Alternative ?? Inlines.Text(image, page), Face.Italic);
                break;
            case AutolinkInline link:
                Text(link.Url, face);
                break;
            case ContainerInline inner:
                Inner(inner, face);
                break;
        }
    }

    private void Text(string text, Face face)
    {
        var parts = text.Split(' ');
        for (var i = 0; i < parts.Length; i++)
        {
            var joined = i > 0 && _current.Count > 0 && Units.Joins(parts[i - 1], parts[i]);
            if (i > 0 && !joined)
            {
                EndWord();
            }

            var shown = glyphs.Shown(parts[i]);
            if (shown.Length > 0)
            {
                _current.Add(new Run(joined ? $" {shown}" : shown, face, style.Size, 0));
            }
        }
    }

    // In brackets, so that it is never taken for a power; on the line of the word that it belongs to.
    private void Mark(int number)
    {
        if (_current.Count == 0 && _words.Count > 0 && !_words[^1].EndsLine)
        {
            _current.AddRange(_words[^1].Runs);
            _words.RemoveAt(_words.Count - 1);
        }

        var text = string.Create(CultureInfo.InvariantCulture, $"[{number}]");
        _current.Add(new Run(text, Face.Regular, style.Size * PdfDesign.MarkSize, style.Size * PdfDesign.MarkRise, number));
    }

    private void EndWord(bool endsLine = false)
    {
        if (_current.Count > 0 || endsLine)
        {
            _words.Add(new TextWord([.. _current], endsLine));
            _current.Clear();
        }
    }
}

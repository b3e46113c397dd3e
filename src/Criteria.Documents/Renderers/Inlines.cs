using System.Globalization;
using System.Text;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax.Inlines;

namespace Criteria.Documents.Renderers;

/// <summary>The words of inline Markdown, for formats that have no emphasis.</summary>
internal static class Inlines
{
    /// <summary>The text: a mark as <c>[1]</c>, a hard break as a line end, a figure by what it shows.</summary>
    public static string Text(ContainerInline? container, DocumentPage page)
    {
        var text = new StringBuilder();
        foreach (var inline in container ?? [])
        {
            Append(text, inline, page);
        }

        return text.ToString();
    }

    /// <summary>The figure that an image names, or null.</summary>
    public static DocumentFigure? Figure(LinkInline image, DocumentPage page) => image is { IsImage: true, Url: { } url } && url.StartsWith(MarkdownTree.FigureScheme, StringComparison.Ordinal)
        ? page.Figures.FirstOrDefault(figure => figure.Name == url[MarkdownTree.FigureScheme.Length..])
        : null;

    private static void Append(StringBuilder text, Inline inline, DocumentPage page)
    {
        switch (inline)
        {
            case LiteralInline literal:
                text.Append(literal.Content.AsSpan());
                break;
            case CodeInline code:
                text.Append(code.Content);
                break;
            case HtmlEntityInline entity:
                text.Append(entity.Transcoded.AsSpan());
                break;
            case LineBreakInline line:
                text.Append(line.IsHard ? '\n' : ' ');
                break;
            case FootnoteLink { IsBackLink: false } mark:
                text.Append(CultureInfo.InvariantCulture, $"{(text.Length > 0 && text[^1] != ']' && text[^1] != ' ' ? " " : "")}[{mark.Footnote.Order}]");
                break;
            case LinkInline { IsImage: true } image:
                text.Append(CultureInfo.InvariantCulture, $"[Figure: {Figure(image, page)?.Alternative ?? Text(image, page)}]");
                break;
            case AutolinkInline link:
                text.Append(link.Url);
                break;
            case ContainerInline inner:
                text.Append(Text(inner, page));
                break;
        }
    }
}

using System.Xml;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax.Inlines;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Renderers.Word;

/// <summary>Inline Markdown as runs.</summary>
internal sealed class WordInlines(DocumentPage page)
{
    /// <summary>The runs of a paragraph.</summary>
    public IEnumerable<OpenXmlElement> Runs(ContainerInline? container, bool bold = false, bool italic = false)
    {
        foreach (var inline in container ?? [])
        {
            foreach (var run in Runs(inline, bold, italic))
            {
                yield return run;
            }
        }
    }

    /// <summary>A plain run.</summary>
    public static DocumentFormat.OpenXml.Wordprocessing.Run Run(string text, bool bold = false, bool italic = false)
    {
        var run = new DocumentFormat.OpenXml.Wordprocessing.Run();
        if (bold || italic)
        {
            var properties = new RunProperties();
            properties.Bold = bold ? new Bold() : null;
            properties.Italic = italic ? new Italic() : null;
            run.AddChild(properties);
        }

        run.AddChild(new Text(Clean(text)) { Space = SpaceProcessingModeValues.Preserve });
        return run;
    }

    /// <summary>The text of a mark.</summary>
    public static DocumentFormat.OpenXml.Wordprocessing.Run Mark(OpenXmlElement content) => new(new RunProperties(new RunStyle { Val = WordStyles.Mark }), content);

    private IEnumerable<OpenXmlElement> Runs(Inline inline, bool bold, bool italic) => inline switch
    {
        LiteralInline literal => [Run(literal.Content.ToString(), bold, italic)],
        CodeInline code => [Run(code.Content, bold, italic)],
        HtmlEntityInline entity => [Run(entity.Transcoded.ToString(), bold, italic)],
        LineBreakInline { IsHard: true } => [new DocumentFormat.OpenXml.Wordprocessing.Run(new Break())],
        LineBreakInline => [Run(" ", bold, italic)],
        FootnoteLink { IsBackLink: false } mark => [WordNotes.Mark(mark.Footnote.Order)],
        FootnoteLink => [],
        EmphasisInline emphasis => Runs(emphasis, bold || emphasis.DelimiterCount > 1, italic || emphasis.DelimiterCount == 1),
        LinkInline { IsImage: true } image => [Run(Inlines.Figure(image, page)?.Alternative ?? Inlines.Text(image, page), bold, true)],
        AutolinkInline link => [Run(link.Url, bold, italic)],
        ContainerInline inner => Runs(inner, bold, italic),
        _ => [],
    };

    // XML has no way to write most control characters.
    private static string Clean(string text) => string.Concat(text.Where(sign => XmlConvert.IsXmlChar(sign) || char.IsSurrogate(sign)));
}

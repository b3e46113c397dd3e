using Criteria.Documents.Renderers.Pdf;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Renderers.Word;

/// <summary>The lines on every page of a Word file; its word processor counts the pages.</summary>
internal static class WordRunning
{
    /// <summary>Case, night and state, then the versions of the rules as far as they fit.</summary>
    public static Header Header(DocumentPage page, double width) => new(
        Spread(WordStyles.Header, width,
            [WordInlines.Run($"{page.KeyWord} {page.CaseKey}{(page.Study.Length > 0 ? $", {page.Study}" : "")}", bold: true)],
            [WordInlines.Run(page.StateWords, bold: true)]),
        WordBlocks.Paragraph(WordStyles.Header, [WordInlines.Run(new Running(page, new TextMeter()).Versions(width))],
            new ParagraphBorders(WordStyles.Border<BottomBorder>(PdfDesign.Thin))));

    /// <summary>The title, the page and the number of pages.</summary>
    public static Footer Footer(DocumentPage page, double width) => new(
        Spread(WordStyles.Footer, width, [WordInlines.Run(page.Title)], [WordInlines.Run("Page "), Field("PAGE"), WordInlines.Run(" of "), Field("NUMPAGES")]));

    private static Paragraph Spread(string style, double width, IEnumerable<OpenXmlElement> left, IEnumerable<OpenXmlElement> right) =>
        WordBlocks.Paragraph(style, [.. left, new DocumentFormat.OpenXml.Wordprocessing.Run(new TabChar()), .. right],
            new Tabs(new TabStop { Val = TabStopValues.Right, Position = WordMeasures.Count(width) }));

    private static SimpleField Field(string name) => new(WordInlines.Run("1")) { Instruction = $" {name} " };
}

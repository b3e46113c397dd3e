using System.Globalization;
using System.Xml.Linq;
using Criteria.Documents.Renderers.Pdf;
using Criteria.Documents.Renderers.Word;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Renderers;

/// <summary>A Word file with real styles, lists, table heads and cross-references, for text that is edited further.</summary>
internal sealed class WordRenderer : IRenderer
{
    private const string MainType = "application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml";

    /// <inheritdoc/>
    public string Format => "docx";

    /// <inheritdoc/>
    public string Extension => ".docx";

    /// <inheritdoc/>
    public byte[] Render(DocumentPage page)
    {
        using var stream = new MemoryStream();
        using (var file = WordprocessingDocument.Create(stream, WordprocessingDocumentType.Document))
        {
            // Every id is given: those that the library makes up differ from run to run.
            Write(file.AddNewPart<MainDocumentPart>(MainType, "main"), page);
            Describe(file.AddNewPart<CoreFilePropertiesPart>("core"), page);
        }

        return SteadyZip.Pack(stream.ToArray(), page.Date);
    }

    private static void Write(MainDocumentPart part, DocumentPage page)
    {
        var (paperWidth, paperHeight) = PdfDesign.Size(page.Paper);
        var width = paperWidth - (2 * PdfDesign.SideMargin);
        var height = paperHeight - PdfDesign.TopMargin - PdfDesign.BottomMargin;
        var numbering = new WordNumbering();
        var blocks = new WordBlocks(page, part, numbering, width, height);
        var text = MarkdownTree.Parse(page.Markdown);
        var body = new Body(
        [
            WordBlocks.Paragraph(WordStyles.Heading(1), [WordInlines.Run(page.Title)]),
            .. blocks.Blocks(text, new WordBlocks.Place(WordStyles.Normal, 0)),
            WordBlocks.Paragraph(WordStyles.Rule, []),
            WordBlocks.Paragraph(WordStyles.Footer, [WordInlines.Run($"Rules: {string.Join(", ", page.Rulesets)}. {page.Program}.")]),
        ]);
        part.AddNewPart<HeaderPart>("header").Header = WordRunning.Header(page, width);
        part.AddNewPart<FooterPart>("footer").Footer = WordRunning.Footer(page, width);
        part.AddNewPart<StyleDefinitionsPart>("styles").Styles = WordStyles.All(page.Language);
        part.AddNewPart<NumberingDefinitionsPart>("lists").Numbering = numbering.All();
        part.AddNewPart<DocumentSettingsPart>("settings").Settings = Settings();
        body.AppendChild(Section(paperWidth, paperHeight));
        part.Document = new Document(body);
    }

    private static Settings Settings() => new(
        new Compatibility(new CompatibilitySetting
        {
            Name = CompatSettingNameValues.CompatibilityMode,
            Uri = "http://schemas.microsoft.com/office/word",
            Val = "15",
        }));

    private static SectionProperties Section(double width, double height) => new(
        new HeaderReference { Type = HeaderFooterValues.Default, Id = "header" },
        new FooterReference { Type = HeaderFooterValues.Default, Id = "footer" },
        new PageSize { Width = (uint)WordMeasures.Count(width), Height = (uint)WordMeasures.Count(height) },
        new PageMargin
        {
            Top = WordMeasures.Count(PdfDesign.TopMargin),
            Bottom = WordMeasures.Count(PdfDesign.BottomMargin),
            Left = (uint)WordMeasures.Count(PdfDesign.SideMargin),
            Right = (uint)WordMeasures.Count(PdfDesign.SideMargin),
            Header = (uint)WordMeasures.Count(PdfDesign.HeaderTop),
            Footer = (uint)WordMeasures.Count(PdfDesign.HeaderTop),
            Gutter = 0,
        });

    private static void Describe(CoreFilePropertiesPart part, DocumentPage page)
    {
        XNamespace core = "http://schemas.openxmlformats.org/package/2006/metadata/core-properties";
        XNamespace dc = "http://purl.org/dc/elements/1.1/";
        XNamespace terms = "http://purl.org/dc/terms/";
        XNamespace schema = "http://www.w3.org/2001/XMLSchema-instance";
        var date = page.Date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        var properties = new XElement(core + "coreProperties",
            new XAttribute(XNamespace.Xmlns + "cp", core), new XAttribute(XNamespace.Xmlns + "dc", dc), new XAttribute(XNamespace.Xmlns + "dcterms", terms), new XAttribute(XNamespace.Xmlns + "xsi", schema),
            new XElement(dc + "title", $"{page.Title}, {page.KeyWord.ToLowerInvariant()} {page.CaseKey}, {page.StateWords}"),
            new XElement(dc + "creator", page.Program),
            new XElement(dc + "identifier", page.Id),
            new XElement(dc + "language", page.Language),
            new XElement(terms + "created", new XAttribute(schema + "type", "dcterms:W3CDTF"), date),
            new XElement(terms + "modified", new XAttribute(schema + "type", "dcterms:W3CDTF"), date));
        using var stream = part.GetStream(FileMode.Create);
        properties.Save(stream);
    }
}

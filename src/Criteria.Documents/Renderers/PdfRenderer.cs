using Criteria.Documents.Renderers.Pdf;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Criteria.Documents.Renderers;

/// <summary>A tagged PDF with its own fonts, for printing, faxing and reading aloud.</summary>
internal sealed class PdfRenderer : IRenderer
{
    /// <inheritdoc/>
    public string Format => "pdf";

    /// <inheritdoc/>
    public string Extension => ".pdf";

    /// <inheritdoc/>
    public byte[] Render(DocumentPage page)
    {
        var meter = new TextMeter();
        var (width, height) = PdfDesign.Size(page.Paper);
        var textHeight = height - PdfDesign.TopMargin - PdfDesign.BottomMargin;
        var flow = new Flow();
        new FlowBuilder(page, flow, meter, textHeight).Document(width - (2 * PdfDesign.SideMargin));
        var pages = new Paginator(textHeight).Part(flow.Strips);

        using var document = new PdfDocument();
        document.Options.ColorMode = PdfColorMode.Undefined;
        UAManager.ForDocument(document).SetDocumentLanguage(page.Language);
        FileFacts.Describe(document, page);
        new Painter(document, page, meter).Paint(pages);
        using var stream = new MemoryStream();
        document.Save(stream);
        return FileFacts.Steady(stream.ToArray(), page);
    }
}

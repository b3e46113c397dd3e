using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Draws pages. Everything that is read aloud stands in the structure; the running lines and all rules are marked as decoration.</summary>
internal sealed class Painter(PdfDocument document, DocumentPage page, TextMeter meter)
{
    private readonly StructureBuilder _structure = UAManager.ForDocument(document).StructureBuilder;
    private readonly Running _running = new(page, meter);
    private Links? _links;
    private PdfOutline? _section;

    /// <summary>Draws all pages.</summary>
    public void Paint(IReadOnlyList<IReadOnlyList<Placed>> pages)
    {
        _links = new Links(pages, page.Paper);
        for (var i = 0; i < pages.Count; i++)
        {
            Paint(pages[i], i + 1, pages.Count);
        }
    }

    private void Paint(IReadOnlyList<Placed> strips, int number, int count)
    {
        var sheet = document.AddPage();
        var (width, height) = PdfDesign.Size(page.Paper);
        sheet.Width = XUnit.FromPoint(width);
        sheet.Height = XUnit.FromPoint(height);
        using var graphics = XGraphics.FromPdfPage(sheet);
        _structure.BeginArtifact();
        foreach (var ink in _running.Lines(number, count))
        {
            Draw(graphics, ink, 0, 0);
        }

        _structure.End();
        foreach (var (strip, y, repeated) in strips)
        {
            Paint(graphics, sheet, strip, PdfDesign.TopMargin + y, repeated);
        }

        // What is marked on this page has to end on it.
        _structure.EndMarkedContentsWithId();
    }

    private void Paint(XGraphics graphics, PdfPage sheet, Strip strip, double y, bool repeated)
    {
        if (repeated)
        {
            _structure.BeginArtifact();
            foreach (var ink in strip.Inks.Where(ink => ink is TextInk or RuleInk))
            {
                Draw(graphics, ink, PdfDesign.SideMargin, y);
            }

            _structure.End();
            return;
        }

        foreach (var ink in strip.Opening.Concat(strip.Inks).Concat(strip.Closing))
        {
            Read(graphics, sheet, ink, y);
        }
    }

    private void Read(XGraphics graphics, PdfPage sheet, Ink ink, double y)
    {
        switch (ink)
        {
            case OpenInk open:
                Open(open);
                break;
            case CloseInk:
                _structure.End();
                break;
            case OutlineInk { Level: <= 2 } outline:
                _section = document.Outlines.Add(outline.Text, sheet, true);
                break;
            case OutlineInk outline:
                (_section?.Outlines ?? document.Outlines).Add(outline.Text, sheet, true);
                break;
            case TextInk { Run.Note: > 0 } mark when _links!.To(mark, y, meter) is { } link:
                _structure.BeginElement(link, Links.Spoken(mark.Run.Note));
                Draw(graphics, ink, PdfDesign.SideMargin, y);
                _structure.End();
                break;
            case AnchorInk:
                break;
            case PictureInk picture:
                Draw(graphics, picture, y);
                break;
            case RuleInk:
                _structure.BeginArtifact();
                Draw(graphics, ink, PdfDesign.SideMargin, y);
                _structure.End();
                break;
            default:
                Draw(graphics, ink, PdfDesign.SideMargin, y);
                break;
        }
    }

    private void Open(OpenInk open)
    {
        if (open.Tag is "L" or "LI" or "LBody" or "Table" or "THead" or "TBody" or "TR" or "BlockQuote")
        {
            _structure.BeginGroupingElement(open.Tag);
        }
        else
        {
            _structure.BeginBlockLevelElement(open.Tag);
        }

        if (open.Scope is { } scope)
        {
            _structure.CurrentStructureElement.TableAttributes.Elements.SetName("/Scope", $"/{scope}");
        }
    }

    private void Draw(XGraphics graphics, PictureInk picture, double y)
    {
        var box = new XRect(PdfDesign.SideMargin + picture.X, y, picture.Width, picture.Height);
        _structure.BeginElement(PdfIllustrationElementTag.Figure, picture.Figure.Alternative, box);
        using var stream = new MemoryStream([.. picture.Figure.Png]);
        using var image = XImage.FromStream(stream);
        graphics.DrawImage(image, box);
        _structure.End();
    }

    private void Draw(XGraphics graphics, Ink ink, double x, double y)
    {
        switch (ink)
        {
            case TextInk text:
                graphics.DrawString(text.Run.Text, meter.Font(text.Run.Face, text.Run.Size), XBrushes.Black, x + text.X, y + text.BaseLine);
                break;
            case RuleInk rule:
                graphics.DrawLine(new XPen(XColors.Black, rule.Thickness), x + rule.X, y + rule.Y, x + rule.X + rule.Length, y + rule.Y);
                break;
        }
    }
}

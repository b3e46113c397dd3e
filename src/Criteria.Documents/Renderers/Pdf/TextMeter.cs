using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>The fonts of one document and the width of text set in them.</summary>
internal sealed class TextMeter
{
    private const double Reference = 100;
    private readonly Dictionary<(Face Face, double Size), XFont> _fonts = [];
    private readonly Dictionary<(Face Face, Rune Rune), double> _widths = [];
    private readonly XGraphics _graphics;

    /// <summary>A meter with no text measured yet.</summary>
    public TextMeter()
    {
        EmbeddedFonts.Register();
        _graphics = XGraphics.CreateMeasureContext(new XSize(1, 1), XGraphicsUnit.Point, XPageDirection.Downwards);
    }

    /// <summary>The font of a cut in a size.</summary>
    public XFont Font(Face face, double size)
    {
        if (!_fonts.TryGetValue((face, size), out var font))
        {
            var style = face switch { Face.Bold => XFontStyleEx.Bold, Face.Italic => XFontStyleEx.Italic, _ => XFontStyleEx.Regular };
            font = new XFont(EmbeddedFonts.Family, size, style, new XPdfFontOptions(PdfSharp.Pdf.PdfFontEncoding.Unicode));
            _fonts.Add((face, size), font);
        }

        return font;
    }

    /// <summary>The width in points. Nothing is kerned, so the widths of parts add up.</summary>
    public double Width(string text, Face face, double size)
    {
        var sum = 0d;
        foreach (var rune in text.EnumerateRunes())
        {
            sum += Width(rune, face);
        }

        return sum * size / Reference;
    }

    /// <summary>Whether the font has the character.</summary>
    public bool Has(Rune rune) => GlyphHelper.GlyphIndexFromCodePoint(rune.Value, Font(Face.Regular, Reference)) != 0;

    private double Width(Rune rune, Face face)
    {
        if (!_widths.TryGetValue((face, rune), out var width))
        {
            width = _graphics.MeasureString(rune.ToString(), Font(face, Reference)).Width;
            _widths.Add((face, rune), width);
        }

        return width;
    }
}

using System.Buffers.Binary;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>The size at which a figure's picture is printed.</summary>
internal static class Pictures
{
    private const double PointsOfInch = 72;

    // The width stands behind the signature of eight bytes and the length and name of the first chunk.
    private const int WidthAt = 16;

    /// <summary>As wide as the text where that is sharp enough, and no taller than allowed.</summary>
    public static (double Width, double Height) SizeOf(DocumentFigure figure, double mostWide, double mostTall)
    {
        var (columns, rows) = Pixels(figure);
        var width = Math.Min(mostWide, columns * PointsOfInch / PdfDesign.FigureDensity);
        var height = width * rows / columns;
        return height <= mostTall ? (width, height) : (width * mostTall / height, mostTall);
    }

    /// <summary>The pixels across and down, as the picture says.</summary>
    public static (int Columns, int Rows) Pixels(DocumentFigure figure)
    {
        var header = figure.Png.AsSpan(WidthAt, 2 * sizeof(int));
        return (BinaryPrimitives.ReadInt32BigEndian(header), BinaryPrimitives.ReadInt32BigEndian(header[sizeof(int)..]));
    }
}

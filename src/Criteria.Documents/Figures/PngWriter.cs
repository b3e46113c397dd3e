using System.Collections.Immutable;
using SkiaSharp;

namespace Criteria.Documents.Figures;

/// <summary>Draws the same shapes as PNG, for formats and programs that cannot show SVG.</summary>
internal static class PngWriter
{
    /// <summary>The length of a dash and of the gap behind it.</summary>
    public const int Dash = 3;

    // So many dots for one unit of the drawing: about 300 to the inch where the figure fills the width of a page.
    private const int Dots = 3;

    /// <summary>The drawing as PNG.</summary>
    public static ImmutableArray<byte> Write(Drawing drawing)
    {
        // Shades of grey only: what a fax or a black printer shows is what is seen here.
        using var bitmap = new SKBitmap(new SKImageInfo((int)(drawing.Width * Dots), (int)(drawing.Height * Dots), SKColorType.Gray8, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale(Dots);
            foreach (var shape in drawing.Shapes)
            {
                Draw(canvas, shape);
            }
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return [.. data.ToArray()];
    }

    private static void Draw(SKCanvas canvas, Shape shape)
    {
        using var paint = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        switch (shape)
        {
            case Stroke line:
                paint.StrokeWidth = (float)line.Thickness;
                paint.IsStroke = true;
                paint.PathEffect = line.Dashed ? SKPathEffect.CreateDash([Dash, Dash], 0) : null;
                canvas.DrawLine((float)line.FromX, (float)line.FromY, (float)line.ToX, (float)line.ToY, paint);
                break;
            case Solid area:
                using (var path = new SKPath())
                {
                    path.AddPoly([.. area.Corners.Select(corner => new SKPoint((float)corner.X, (float)corner.Y))]);
                    canvas.DrawPath(path, paint);
                }

                break;
            case Label label:
                using (var font = new SKFont(FigureFont.Of(label.Bold), (float)label.Size) { Subpixel = true, Hinting = SKFontHinting.None })
                {
                    canvas.DrawText(label.Text, (float)label.X, (float)label.Y, Aligned(label.Align), font, paint);
                }

                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(shape));
        }
    }

    private static SKTextAlign Aligned(Align align) => align switch
    {
        Align.Middle => SKTextAlign.Center,
        Align.End => SKTextAlign.Right,
        _ => SKTextAlign.Left,
    };
}

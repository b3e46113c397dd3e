using System.Globalization;
using System.Security;
using System.Text;

namespace Criteria.Documents.Figures;

/// <summary>Writes a drawing as SVG: text for a page, with title and description for those who do not see it.</summary>
internal static class SvgWriter
{
    // Families that are there on the usual systems; what is asked of the text's width is a generous estimate.
    private const string Families = "Open Sans, Verdana, Arial, sans-serif";

    /// <summary>The drawing; <paramref name="id"/> sets its ids apart from those of other figures on the same page.</summary>
    public static string Write(Drawing drawing, string id, string title, string description)
    {
        var text = new StringBuilder();
        var size = $"{Number(drawing.Width)} {Number(drawing.Height)}";
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {size}\" width=\"{Number(drawing.Width)}\" height=\"{Number(drawing.Height)}\" ");
        text.Append(CultureInfo.InvariantCulture, $"role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" font-family=\"{Families}\" fill=\"#000\" stroke-linecap=\"butt\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">{Escape(title)}</title>\n<desc id=\"{id}-desc\">{Escape(description)}</desc>\n");
        text.Append(CultureInfo.InvariantCulture, $"<rect width=\"{Number(drawing.Width)}\" height=\"{Number(drawing.Height)}\" fill=\"#fff\"/>\n");
        foreach (var shape in drawing.Shapes)
        {
            text.Append(Of(shape)).Append('\n');
        }

        return text.Append("</svg>\n").ToString();
    }

    private static string Of(Shape shape) => shape switch
    {
        Stroke line => $"<line x1=\"{Number(line.FromX)}\" y1=\"{Number(line.FromY)}\" x2=\"{Number(line.ToX)}\" y2=\"{Number(line.ToY)}\" stroke=\"#000\" "
            + $"stroke-width=\"{Number(line.Thickness)}\"{(line.Dashed ? $" stroke-dasharray=\"{PngWriter.Dash} {PngWriter.Dash}\"" : "")}/>",
        Solid area => $"<polygon points=\"{string.Join(' ', area.Corners.Select(corner => $"{Number(corner.X)},{Number(corner.Y)}"))}\"/>",
        Label label => $"<text x=\"{Number(label.X)}\" y=\"{Number(label.Y)}\" font-size=\"{Number(label.Size)}\"{Anchor(label.Align)}"
            + $"{(label.Bold ? " font-weight=\"bold\"" : "")}>{Escape(label.Text)}</text>",
        _ => throw new ArgumentOutOfRangeException(nameof(shape)),
    };

    private static string Anchor(Align align) => align switch
    {
        Align.Middle => " text-anchor=\"middle\"",
        Align.End => " text-anchor=\"end\"",
        _ => "",
    };

    private static string Number(double number) => Math.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escape(string text) => SecurityElement.Escape(text);
}

namespace Criteria.Documents.Figures;

/// <summary>The width of a text, estimated on the generous side: whoever shows the SVG may have another font.</summary>
internal static class TextWidth
{
    // In hundredths of the size of the font: what a letter of a wide family takes on average.
    private const double Regular = 60;
    private const double Bold = 70;

    /// <summary>The width in the drawing's units.</summary>
    public static double Of(string text, double size, bool bold) => text.Length * size * (bold ? Bold : Regular) / 100;

    /// <summary>The text in lines that are no wider than that, broken between words; none of an empty text.</summary>
    public static IEnumerable<string> Lines(string text, double size, bool bold, double width)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && Of($"{line} {word}", size, bold) > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}

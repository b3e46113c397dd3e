namespace Criteria.Documents.Renderers.Pdf;

/// <summary>The cuts of the embedded font.</summary>
internal enum Face
{
    /// <summary>Running text.</summary>
    Regular = 0,

    /// <summary>Headings and strong words.</summary>
    Bold,

    /// <summary>Stressed words.</summary>
    Italic,
}

/// <summary>How a piece of text is set.</summary>
/// <param name="Face">The cut of the font.</param>
/// <param name="Size">The size of the font in points.</param>
/// <param name="Leading">From one base line to the next, in points.</param>
/// <param name="Before">The space above the first line, in points; none at the top of a page.</param>
internal readonly record struct TextStyle(Face Face, double Size, double Leading, double Before)
{
    /// <summary>From the top of a line to its base line.</summary>
    public double BaseLine => (Leading / 2) + (Size * PdfDesign.HalfCapital);
}

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>A part of the text as wide as the page that no page break goes through: a line, a table row, a figure.</summary>
internal sealed class Strip
{
    /// <summary>What is drawn, in reading order.</summary>
    public List<Ink> Inks { get; init; } = [];

    /// <summary>What comes before it in reading order: elements that begin here, the label of a list item.</summary>
    public List<Ink> Opening { get; init; } = [];

    /// <summary>The elements that end here.</summary>
    public List<Ink> Closing { get; init; } = [];

    /// <summary>The height in points.</summary>
    public required double Height { get; init; }

    /// <summary>Space above it, but not at the top of a page.</summary>
    public double Before { get; set; }

    /// <summary>Whether the next strip has to stand on the same page.</summary>
    public bool KeepWithNext { get; set; }

    /// <summary>In a table: the row of column heads, drawn again when this strip begins a page.</summary>
    public Strip? Head { get; init; }

    /// <summary>For a strip too tall to be moved whole: parts it so that the first part has at most this height; null when that cannot be done.</summary>
    public Func<double, (Strip First, Strip Second)?>? Split { get; init; }
}

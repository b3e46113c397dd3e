namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Every measure of the page, in points (72 to the inch). Body text stays legible after a fax; nothing is said by colour.</summary>
internal static class PdfDesign
{
    /// <summary>Left and right of the text.</summary>
    public const double SideMargin = 66;

    /// <summary>From the upper edge of the paper to the running header.</summary>
    public const double HeaderTop = 34;

    /// <summary>From the upper edge of the paper to the text.</summary>
    public const double TopMargin = 80;

    /// <summary>From the text to the lower edge of the paper.</summary>
    public const double BottomMargin = 66;

    /// <summary>From the base line of the running footer to the lower edge of the paper.</summary>
    public const double FooterBottom = 36;

    /// <summary>Space between items of a list and their labels.</summary>
    public const double LabelGap = 6;

    /// <summary>Least space for a label of a list.</summary>
    public const double LabelLeast = 14;

    /// <summary>Indent of a quotation on either side.</summary>
    public const double QuoteIndent = 20;

    /// <summary>Space beside the text of a table cell.</summary>
    public const double CellSide = 5;

    /// <summary>Space above and below the text of a table cell.</summary>
    public const double CellTop = 3.5;

    /// <summary>A line that parts two rows.</summary>
    public const double Thin = 0.5;

    /// <summary>A line that closes a table or parts the title from the text.</summary>
    public const double Thick = 1.2;

    /// <summary>Space above a table or a figure, and around a line across the page.</summary>
    public const double AroundRule = 8;

    /// <summary>Space below a table or a figure.</summary>
    public const double Below = 12;

    /// <summary>The part of the text height that one table row, or one figure, may fill.</summary>
    public const double WholeRow = 0.4;

    /// <summary>A table that is at most this part of the text height stays on one page.</summary>
    public const double WholeTable = 0.25;

    /// <summary>Least points of a figure's picture to the inch: fewer look coarse.</summary>
    public const double FigureDensity = 144;

    /// <summary>A table that is at least this part of the text width is widened to all of it.</summary>
    public const double Widened = 0.6;

    /// <summary>Half the height of a capital letter, as a part of the font's size: capitals stand in the middle of their line.</summary>
    public const double HalfCapital = 0.36;

    /// <summary>Size of a mark, as a part of the text that it stands in.</summary>
    public const double MarkSize = 0.72;

    /// <summary>How high a mark is raised, as a part of the text that it stands in.</summary>
    public const double MarkRise = 0.3;

    /// <summary>Running text.</summary>
    public static readonly TextStyle Body = new(Face.Regular, 10.5, 15, 6);

    /// <summary>A list item.</summary>
    public static readonly TextStyle Item = new(Face.Regular, 10.5, 15, 3);

    /// <summary>A table cell.</summary>
    public static readonly TextStyle Cell = new(Face.Regular, 10, 13.5, 0);

    /// <summary>The head of a table column.</summary>
    public static readonly TextStyle Head = new(Face.Bold, 10, 13.5, 0);

    /// <summary>The reasons at the end.</summary>
    public static readonly TextStyle Note = new(Face.Regular, 10, 14, 6);

    /// <summary>A list item in the reasons at the end.</summary>
    public static readonly TextStyle NoteItem = new(Face.Regular, 10, 14, 1.5);

    /// <summary>The title.</summary>
    public static readonly TextStyle Title = new(Face.Bold, 18, 24, 0);

    /// <summary>Running header and footer, and the versions at the end.</summary>
    public static readonly TextStyle Small = new(Face.Regular, 9, 12.5, 10);

    /// <summary>The running header's first line.</summary>
    public static readonly TextStyle SmallBold = new(Face.Bold, 9, 12.5, 0);

    private static readonly TextStyle[] Headings = [new(Face.Bold, 13.5, 18, 18), new(Face.Bold, 11.5, 16, 12), new(Face.Bold, 10.5, 15, 9)];

    /// <summary>A heading of the second level or below.</summary>
    public static TextStyle Heading(int level) => Headings[Math.Clamp(level - 2, 0, Headings.Length - 1)];

    /// <summary>The width and height of a paper.</summary>
    public static (double Width, double Height) Size(Paper paper) => paper == Paper.A4 ? (595.28, 841.89) : (612, 792);
}

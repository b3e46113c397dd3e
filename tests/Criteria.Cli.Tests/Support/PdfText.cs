using System.Globalization;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Criteria.Cli.Tests.Support;

/// <summary>A PDF as another reader sees it: lines of text, page by page.</summary>
internal sealed class PdfText
{
    // The text area, from the edges of the paper; the running header and footer stand outside of it.
    private const double Above = 60;
    private const double Below = 75;
    private const double CellGap = 2;

    private PdfText(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        var pages = document.GetPages().ToArray();
        Pages = [.. pages.Select(page => string.Join('\n', LinesOf(page.Letters)))];
        Bodies = [.. pages.Select(page => LinesOf(page.Letters.Where(letter => IsInside(letter, page))))];
        Headings = [.. pages.Select(page => LinesOf(page.Letters.Where(letter => IsInside(letter, page) && letter.FontName?.Contains("Bold", StringComparison.Ordinal) == true)))];
        Feet = [.. pages.Select(page => LinesOf(page.Letters.Where(letter => letter.StartBaseLine.Y <= Above)))];
        Off = [.. pages.SelectMany(page => page.Letters.Where(letter => letter.StartBaseLine.X < 0 || letter.EndBaseLine.X > page.Width || letter.StartBaseLine.Y < 0 || letter.StartBaseLine.Y > page.Height)).Select(letter => letter.Value)];
    }

    /// <summary>The whole text of each page, with header and footer.</summary>
    public IReadOnlyList<string> Pages { get; }

    /// <summary>The lines of each page between header and footer, from the top.</summary>
    public IReadOnlyList<string[]> Bodies { get; }

    /// <summary>What of these lines is set in bold.</summary>
    public IReadOnlyList<string[]> Headings { get; }

    /// <summary>The lines of the footer of each page.</summary>
    public IReadOnlyList<string[]> Feet { get; }

    /// <summary>Letters that stand outside of the paper.</summary>
    public IReadOnlyList<string> Off { get; }

    public static PdfText Of(byte[] file) => new(file);

    /// <summary>The text with a line before each page that says how many there are, for a comparison that a person can read.</summary>
    public override string ToString() => string.Join("\n", Pages.Select((page, at) => string.Create(CultureInfo.InvariantCulture, $"== page {at + 1} of {Pages.Count}\n{page}")));

    private static bool IsInside(Letter letter, Page page) => letter.StartBaseLine.Y > Above && letter.StartBaseLine.Y < page.Height - Below;

    private static string[] LinesOf(IEnumerable<Letter> letters) => [.. letters.GroupBy(letter => Math.Round(letter.StartBaseLine.Y)).OrderByDescending(line => line.Key)
        .Select(line => Spaced([.. line])).Where(line => line.Length > 0)];

    // Cells of a table stand apart without a space between them.
    private static string Spaced(Letter[] line) => string.Concat(line.Select((letter, at) =>
        at > 0 && Math.Abs(letter.StartBaseLine.X - line[at - 1].EndBaseLine.X) > CellGap ? $" {letter.Value}" : letter.Value)).Trim();
}

using System.Globalization;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>The lines on every page: case, night and state, then the versions of the rules as far as they fit; at the foot the title and the page.</summary>
internal sealed class Running(DocumentPage page, TextMeter meter)
{
    private const string Cut = ", \u2026";
    private readonly Glyphs _glyphs = new(meter);

    /// <summary>The lines of one page, placed on the paper.</summary>
    public IEnumerable<Ink> Lines(int number, int count)
    {
        var (width, height) = PdfDesign.Size(page.Paper);
        var right = width - PdfDesign.SideMargin;
        var small = PdfDesign.Small;
        var bold = PdfDesign.SmallBold;
        var first = PdfDesign.HeaderTop + small.BaseLine;
        var foot = height - PdfDesign.FooterBottom;
        var state = _glyphs.Shown(page.StateWords);
        var stateLeft = right - Width(state, bold);
        var subject = _glyphs.Shown($"{page.KeyWord} {page.CaseKey}{(page.Study.Length > 0 ? $", {page.Study}" : "")}");
        yield return Text(Fitted(subject, stateLeft - PdfDesign.SideMargin - PdfDesign.LabelGap, bold), bold, PdfDesign.SideMargin, first);
        yield return Text(state, bold, stateLeft, first);
        yield return Text(Versions(right - PdfDesign.SideMargin), small, PdfDesign.SideMargin, first + small.Leading);
        yield return new RuleInk(PdfDesign.SideMargin, PdfDesign.HeaderTop + (2 * small.Leading) + 2, right - PdfDesign.SideMargin, PdfDesign.Thin);

        var numbers = string.Create(CultureInfo.InvariantCulture, $"Page {number} of {count}");
        var numbersLeft = right - Width(numbers, small);
        yield return Text(Fitted(_glyphs.Shown(page.Title), numbersLeft - PdfDesign.SideMargin - PdfDesign.LabelGap, small), small, PdfDesign.SideMargin, foot);
        yield return Text(numbers, small, numbersLeft, foot);
    }

    /// <summary>The versions of the rules that fit on one line: whole names only. The full list ends the document.</summary>
    public string Versions(double room)
    {
        for (var shown = page.Rulesets.Length; shown > 0; shown--)
        {
            var text = _glyphs.Shown($"Rules: {string.Join(", ", page.Rulesets.Take(shown))}{(shown < page.Rulesets.Length ? Cut : "")}");
            if (shown == 1 || Width(text, PdfDesign.Small) <= room)
            {
                return Fitted(text, room, PdfDesign.Small);
            }
        }

        return "";
    }

    private string Fitted(string text, double room, TextStyle style)
    {
        var shown = text;
        for (var length = text.Length - 1; length > 0 && Width(shown, style) > room; length--)
        {
            if (!char.IsHighSurrogate(text[length - 1]))
            {
                shown = $"{text[..length].TrimEnd()}\u2026";
            }
        }

        return shown;
    }

    private double Width(string text, TextStyle style) => meter.Width(text, style.Face, style.Size);

    private static TextInk Text(string text, TextStyle style, double x, double baseLine) => new(new Run(text, style.Face, style.Size, 0), x, baseLine);
}

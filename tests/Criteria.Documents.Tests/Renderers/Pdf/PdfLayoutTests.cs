using Criteria.Documents.Renderers.Pdf;
using UglyToad.PdfPig.Content;

namespace Criteria.Documents.Tests.Renderers.Pdf;

/// <summary>Where pages break, and that nothing leaves the paper.</summary>
public sealed class PdfLayoutTests
{
    private const string Table = "| Requirement | What to ask |\n|:--|:--|\n";

    [Fact]
    public void Pdf_OfALongTable_RepeatsItsHeadsAndPartsNoRow()
    {
        var rows = Enumerable.Range(1, 80).Select(i => $"| Row{i}a | Start{i}s {string.Concat(Enumerable.Repeat("long text ", 14))} End{i}e |\n");

        var file = ReadBack.Of(Samples.Page(Table + string.Concat(rows)));

        file.Pages.Count.ShouldBeGreaterThan(4);
        foreach (var page in file.Pages)
        {
            Count(ReadBack.BodyOf(page), "RequirementWhattoask").ShouldBe(1);
        }

        for (var i = 1; i <= 80; i++)
        {
            var holding = file.Pages.Where(page => ReadBack.BodyOf(page).Contains($"Row{i}a", StringComparison.Ordinal)).ToArray();
            holding.Length.ShouldBe(1);
            ReadBack.BodyOf(holding[0]).ShouldContain($"Start{i}s");
            ReadBack.BodyOf(holding[0]).ShouldContain($"End{i}e");
        }
    }

    [Fact]
    public void Pdf_OfARowTallerThanAPage_GoesOnUnderTheHeads()
    {
        var words = Enumerable.Range(1, 2000).Select(i => $"word{i}x").ToArray();

        var file = ReadBack.Of(Samples.Page($"{Table}| tall | {string.Join(' ', words)} |\n| after | end |\n"));

        file.Pages.Count.ShouldBeGreaterThan(2);
        file.Pages.Count(page => ReadBack.BodyOf(page).Contains("word", StringComparison.Ordinal)).ShouldBe(Count(file.Body, "RequirementWhattoask"));
        file.Body.Replace("RequirementWhattoask", "", StringComparison.Ordinal).ShouldContain($"tall{string.Concat(words)}afterend");
        file.Pages.ShouldAllBe(page => IsOnThePaper(page));
    }

    [Theory]
    [InlineData("WORD next")]
    [InlineData("- WORD next")]
    [InlineData("> WORD next")]
    [InlineData("| a | b | c |\n|--|--|--|\n| WORD | next | WORD |\n")]
    [InlineData("## WORD\n\nnext")]
    public void Pdf_OfAWordLongerThanTheLine_CutsItAndLosesNothing(string markdown)
    {
        var word = string.Concat(Enumerable.Range(0, 300).Select(i => (char)('a' + (i % 26))));

        var file = ReadBack.Of(Samples.Page(markdown.Replace("WORD", word, StringComparison.Ordinal)));

        file.Body.ShouldContain(word);
        file.Body.ShouldContain("next");
        file.Pages.ShouldAllBe(page => IsOnThePaper(page));
    }

    // Whatever stands above, and however little stands below.
    [Theory]
    [InlineData("## HeadHere\n\nBelow it.")]
    [InlineData("## HeadHere\n\n### Inner\n\nBelow it.")]
    [InlineData("## HeadHere\n\n| a | b |\n|--|--|\n| one | two |\n| three | four |\n")]
    [InlineData("## HeadHere\n\n- one\n- two\n- three")]
    [InlineData("## HeadHere\n\n## Next\n\nBelow it.")]
    [InlineData("## HeadHere\n\n![x](figure:severity)")]
    [InlineData("## HeadHere")]
    public void Pdf_AHeading_IsNeverTheLastLineOfAPage(string section)
    {
        var broke = false;
        for (var lines = 24; lines <= 40; lines++)
        {
            var above = string.Concat(Enumerable.Range(1, lines).Select(i => $"Line {i}.\\\n")) + "Last line.\n\n";

            var file = ReadBack.Of(Samples.Page(above + section).WithPicture());

            broke |= file.Pages.Count > 1 && ReadBack.BodyOf(file.Pages[1]).StartsWith("HeadHere", StringComparison.Ordinal);
            foreach (var page in file.Pages)
            {
                Lowest(page).ShouldNotBe("HeadHere", $"after {lines} lines");
                Lowest(page).ShouldNotBe("Inner", $"after {lines} lines");
                Lowest(page).ShouldNotBe("Next", $"after {lines} lines");
            }
        }

        broke.ShouldBeTrue();
    }

    [Fact]
    public void Pdf_AParagraph_LeavesNoSingleLineOnEitherPage()
    {
        for (var lines = 24; lines <= 40; lines++)
        {
            var above = string.Concat(Enumerable.Range(1, lines).Select(i => $"Line {i}.\\\n")) + "Last line.\n\n";

            var file = ReadBack.Of(Samples.Page($"{above}P1\\\nP2\\\nP3\\\nP4\\\nP5"));

            foreach (var body in file.Pages.Select(ReadBack.BodyOf))
            {
                (Enumerable.Range(1, 5).Count(i => body.Contains($"P{i}", StringComparison.Ordinal)) is 1).ShouldBeFalse();
            }
        }
    }

    [Theory]
    [InlineData("6 h 40 min", "h", "min")]
    [InlineData("95 %", "%")]
    [InlineData("14.6 /h,", "/h,")]
    [InlineData(">= 15 /h.", "15", "/h.")]
    public void Pdf_ANumber_StaysWithItsUnit(string quantity, params string[] units)
    {
        for (var words = 8; words < 30; words++)
        {
            var page = ReadBack.Of(Samples.Page($"{string.Concat(Enumerable.Repeat("text ", words))}{quantity} more")).Pages[0];

            units.ShouldNotContain(Lines(page).Select(line => line.Split(' ')[0]).FirstOrDefault(first => units.Contains(first)));
        }
    }

    [Fact]
    public void ColumnWidths_OfDemandsThatFit_AreWhatIsAskedFor() => ColumnWidths.Share([new(20, 50), new(20, 70)], 400).ShouldBe([50, 70], 0.1);

    [Theory]
    [InlineData(100)]
    [InlineData(200)]
    [InlineData(500)]
    public void ColumnWidths_OfDemandsThatDoNotFit_FillTheWidth(double width)
    {
        ColumnDemand[] demands = [new(30, 40), new(60, 900), new(50, 300), new(20, 20)];

        var widths = ColumnWidths.Share(demands, width);

        widths.Sum().ShouldBe(width, 0.1);
        widths.ShouldAllBe(share => share > 0);
        if (width >= demands.Sum(demand => demand.Least))
        {
            widths.Zip(demands).ShouldAllBe(pair => pair.First >= pair.Second.Least);
            widths[0].ShouldBeGreaterThanOrEqualTo(width >= 500 ? 40 : 30);
        }
    }

    private static bool IsOnThePaper(Page page) => page.Letters.All(letter => letter.StartBaseLine.X >= PdfDesign.SideMargin - 1
        && letter.EndBaseLine.X <= page.Width - PdfDesign.SideMargin + 4 && letter.StartBaseLine.Y > 30 && letter.StartBaseLine.Y < page.Height - 30);

    private static string Lowest(Page page) => Lines(page).Select(Samples.Squeezed).LastOrDefault("");

    // Pictures count as lines: what stands under a heading may be one.
    private static IEnumerable<string> Lines(Page page) => ReadBack.Inside(page).GroupBy(letter => Math.Round(letter.StartBaseLine.Y)).Select(line => (Y: line.Key, Text: string.Concat(line.Select(letter => letter.Value))))
        .Concat(page.GetImages().Select(image => (Y: Math.Round(image.BoundingBox.Bottom), Text: "picture"))).OrderByDescending(line => line.Y).Select(line => line.Text);

    private static int Count(string text, string part) => (text.Length - text.Replace(part, "", StringComparison.Ordinal).Length) / part.Length;
}

using System.Text.RegularExpressions;

namespace Criteria.Documents.Tests.Renderers.Pdf;

/// <summary>What the file says of itself and to reading aids.</summary>
public sealed class PdfFileTests
{
    private static readonly DocumentPage Page = Samples.Page(Samples.Everything).WithPicture();

    [Fact]
    public void Pdf_OfADocument_IsTaggedWithLanguageAndTitle()
    {
        var file = ReadBack.Of(Page with { Language = "de" });

        file.Raw.ShouldContain("/Lang(de)");
        file.Raw.ShouldContain("/Marked true");
        file.Raw.ShouldContain("/DisplayDocTitle true");
        file.Title.ShouldBe("Title, case T-1, DRAFT, not signed");
    }

    [Theory]
    [InlineData("H1", 1)]
    [InlineData("H2", 2)]
    [InlineData("H3", 1)]
    [InlineData("Table", 1)]
    [InlineData("TR", 3)]
    [InlineData("TH", 4)]
    [InlineData("TD", 2)]
    [InlineData("L", 5)]
    [InlineData("LI", 9)]
    [InlineData("BlockQuote", 1)]
    [InlineData("Figure", 1)]
    public void Pdf_Structure_HasTheElementsOfTheText(string tag, int count) => Regex.Count(ReadBack.Of(Page).Raw, $"/S/{tag}\\b").ShouldBe(count);

    [Fact]
    public void Pdf_HeadCells_SayWhatTheyName()
    {
        var raw = ReadBack.Of(Page).Raw;

        Regex.Count(raw, "/Scope/Column").ShouldBe(2);
        Regex.Count(raw, "/Scope/Row").ShouldBe(2);
    }

    [Fact]
    public void Pdf_Figure_HasItsPictureAndItsAlternative()
    {
        var file = ReadBack.Of(Page);

        file.Pages.Sum(page => page.GetImages().Count()).ShouldBe(1);
        file.Raw.ShouldContain("/Alt(Mild, 10.8/h.)");
    }

    [Fact]
    public void Pdf_Headings_AreListedBesideThePages()
    {
        using var document = UglyToad.PdfPig.PdfDocument.Open(ReadBack.Of(Page).File);

        document.TryGetBookmarks(out var bookmarks).ShouldBeTrue();
        bookmarks!.GetNodes().Select(node => $"{node.Level} {node.Title}").ShouldBe(["0 Section", "1 Part", "0 Why: the reasons behind the marks"]);
    }

    [Fact]
    public void Pdf_Marks_LeadToTheirReasons()
    {
        var lines = string.Concat(Enumerable.Range(1, 60).Select(i => $"Line {i}.\n\n"));
        var file = ReadBack.Of(Samples.Page($"{lines}Marked.[^1] Marked.[^2] Marked.[^1]\n\n## Why\n\n[^1]: One.\n\n    {lines.Replace("\n\n", "\n\n    ", StringComparison.Ordinal)}\n[^2]: Two.\n"));

        using var document = UglyToad.PdfPig.PdfDocument.Open(file.File);
        var links = document.GetPages().SelectMany(page => page.GetAnnotations()).Select(mark => (mark.Content, ((UglyToad.PdfPig.Actions.GoToAction)mark.Action!).Destination.PageNumber)).ToArray();

        var pages = new[] { "[1]One.", "[2]Two." }.Select(reason => file.Pages.Single(page => ReadBack.BodyOf(page).Contains(reason, StringComparison.Ordinal)).Number).ToArray();
        links.ShouldBe([("reason 1", pages[0]), ("reason 2", pages[1]), ("reason 1", pages[0])]);
        pages[1].ShouldBeGreaterThan(pages[0]);
        Regex.Count(file.Raw, "/S/Link").ShouldBe(3);
    }

    [Fact]
    public void Pdf_DatesAndIds_ComeFromTheDocument()
    {
        var id = "00112233445566778899aabbccddeeff";

        var file = ReadBack.Of(Page with { Id = id });

        file.Created.ShouldStartWith("D:20260618000000");
        file.Changed.ShouldStartWith("D:20260618000000");
        Regex.Count(file.Raw, "00112233-4455-6677-8899-aabbccddeeff").ShouldBe(2);
        file.Raw.ShouldContain($"/ID[<{id.ToUpperInvariant()}><{id.ToUpperInvariant()}>]");
    }

    // Not every difference shows at once: ids are drawn anew for each file.
    [Fact]
    public void Pdf_SetThrice_HasTheSameBytes()
    {
        var first = ReadBack.Of(Page).File;

        ReadBack.Of(Page).File.ShouldBe(first);
        ReadBack.Of(Page).File.ShouldBe(first);
        ReadBack.Of(Page with { Id = new string('1', 32) }).File.ShouldNotBe(first);
    }

    [Fact]
    public void Pdf_SetByManyAtOnce_HasTheSameBytes()
    {
        var alone = ReadBack.Of(Page).File;

        var together = Enumerable.Range(0, 16).AsParallel().WithDegreeOfParallelism(8).Select(_ => ReadBack.Of(Page).File).ToArray();

        together.ShouldAllBe(file => file.SequenceEqual(alone));
    }
}

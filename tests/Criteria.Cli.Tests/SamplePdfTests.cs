using System.Globalization;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>The PDFs in <c>docs/samples</c> read as those that the program writes. The bytes may differ, from one runtime to the next.</summary>
public sealed class SamplePdfTests
{
    public static TheoryData<string> Documents => SampleTests.Documents;

    [Theory]
    [MemberData(nameof(Documents))]
    public void SamplePdf_OfEveryDocument_HasTheTextAndThePagesThatTheProgramWrites(string document)
    {
        var written = Write(document, "letter");
        var path = Repository.Path("docs", "samples", $"{document}.pdf");
        var stored = File.Exists(path) ? PdfText.Of(File.ReadAllBytes(path)).ToString() : "";
        var text = PdfText.Of(written).ToString();
        // A file that reads the same is left alone: the history of the repository would keep each copy.
        if (Environment.GetEnvironmentVariable("CRITERIA_ACCEPT") == "1" && text != stored)
        {
            File.WriteAllBytes(path, written);
            return;
        }

        text.ShouldBe(stored, $"docs/samples/{document}.pdf differs");
    }

    [Fact]
    public void SamplePdfs_OnBothPapers_HaveThePagesOfTheList()
    {
        var lines = SampleTests.Names.Select(name => string.Create(CultureInfo.InvariantCulture, $"{name,-26}{PdfText.Of(Write(name, "letter")).Pages.Count,6}{PdfText.Of(Write(name, "a4")).Pages.Count,6}"));

        Repository.ShouldBeApproved($"{"document",-26}{"letter",6}{"a4",6}\n{string.Join('\n', lines)}\n", "docs", "samples", "pages.txt");
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void SamplePdf_OnTheOtherPaper_HasTheSameWords(string document)
    {
        var letter = Words(Write(document, "letter"));
        var a4 = Words(Write(document, "a4"));

        letter.Count.ShouldBeGreaterThan(50);
        letter.Except(a4).Concat(a4.Except(letter)).ShouldBeEmpty();
    }

    // A heading, or the head of a table, alone at the foot of a page would belong to nothing.
    [Theory]
    [MemberData(nameof(Documents))]
    public void SamplePdf_OnBothPapers_IsLaidOutWhole(string document)
    {
        foreach (var pdf in new[] { "letter", "a4" }.Select(paper => PdfText.Of(Write(document, paper))))
        {
            pdf.Off.ShouldBeEmpty();
            for (var page = 0; page < pdf.Pages.Count; page++)
            {
                pdf.Bodies[page].ShouldNotBeEmpty();
                pdf.Headings[page].ShouldNotContain(pdf.Bodies[page][^1]);
                pdf.Feet[page].ShouldHaveSingleItem().ShouldEndWith(string.Create(CultureInfo.InvariantCulture, $"Page {page + 1} of {pdf.Pages.Count}"));
            }
        }
    }

    [Fact]
    public void RequestSheet_OfACaseThatLacksMuch_IsOnePageOnBothPapers()
    {
        using var folder = new TemporaryFolder();
        var sample = File.ReadAllText(Repository.Path("docs", "samples", "case.yaml"));
        var identity = sample[sample.IndexOf("\nidentity:", StringComparison.Ordinal)..sample.IndexOf("\ndenial:", StringComparison.Ordinal)];
        var path = folder.Write("case.yaml", File.ReadAllText(Command.Example("missing-facts")) + identity);

        foreach (var paper in new[] { "letter", "a4" })
        {
            var to = Path.Combine(folder.Path, paper);
            Command.Run("write", path, "--document", "request-sheet", "--to", "orderer", "--format", "pdf", "--paper", paper, "--out", to).Code.ShouldBe(0);
            PdfText.Of(File.ReadAllBytes(Directory.GetFiles(to).ShouldHaveSingleItem())).Pages.Count.ShouldBe(1, paper);
        }
    }

    private static HashSet<string> Words(byte[] file) => [.. PdfText.Of(file).Bodies.SelectMany(lines => lines).SelectMany(line => line.Split(' ')).Where(word => word.Length > 0)];

    private static byte[] Write(string document, string paper)
    {
        using var folder = new TemporaryFolder();

        var result = SampleTests.Write(document, "--format", "pdf", "--paper", paper, "--out", folder.Path);

        result.Code.ShouldBe(0, result.Error);
        return File.ReadAllBytes(Directory.GetFiles(folder.Path).ShouldHaveSingleItem());
    }
}

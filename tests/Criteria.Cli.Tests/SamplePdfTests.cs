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

    private static HashSet<string> Words(byte[] file) => [.. PdfText.Of(file).Bodies.SelectMany(lines => lines).SelectMany(line => line.Split(' ')).Where(word => word.Length > 0)];

    private static byte[] Write(string document, string paper)
    {
        using var folder = new TemporaryFolder();

        var result = SampleTests.Write(document, "--format", "pdf", "--paper", paper, "--out", folder.Path);

        result.Code.ShouldBe(0, result.Error);
        return File.ReadAllBytes(Directory.GetFiles(folder.Path).ShouldHaveSingleItem());
    }
}

using System.IO.Compression;
using Criteria.Documents.Renderers;
using Criteria.Documents.Tests.Support;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Tests.Renderers.Word;

public sealed class WordTests
{
    private static readonly DocumentPage Page = Samples.Page(Samples.Everything).WithPicture();

    public static TheoryData<string, string> All => Samples.Examples;

    [Fact]
    public void Word_OfEveryKindOfBlock_IsValidAndReadInOrder() => Open(Page with { Figures = Samples.Page("").Figures }, body =>
        Samples.Squeezed(body.InnerText).ShouldBe(Samples.Squeezed("""
            Title First stressed and strong words.[1] More of them.[2] Section Part one ≥ 5 ½ µ² inner two third fourth Quoted – words.
            Left Right cell one[1] 12.5 cell two 7 [Figure: Mild, 10.8/h.] Last. Why: the reasons behind the marks
            Rule one (a.b). Met. Fact of one. Source of one. Rule two (c.d). Not met. Rules: severity 2026.1. Criteria 0.1.0.
            """)));

    [Theory]
    [MemberData(nameof(All))]
    public void Word_OfEveryExample_IsValidAndHoldsEveryParagraphCellAndReason(string example, string document)
    {
        var page = Written.Document(Written.ExampleText(example), document).Page!;
        var texts = Samples.Texts(page).Where(text => !text.Contains("Figure:", StringComparison.Ordinal)).ToArray();

        texts.Length.ShouldBeGreaterThan(5);
        Open(page, body =>
        {
            var all = Samples.Squeezed(body.InnerText);
            var from = 0;
            foreach (var text in texts)
            {
                var at = all.IndexOf(text, from, StringComparison.Ordinal);
                at.ShouldBeGreaterThanOrEqualTo(0, text);
                from = at + text.Length;
            }
        });
    }

    [Fact]
    public void Word_Marks_ReferToReasons() => Open(Page, body =>
    {
        var names = body.Descendants<BookmarkStart>().Select(mark => mark.Name!.Value).ToArray();

        names.ShouldBe(["why_1", "why_2"]);
        body.Descendants<SimpleField>().Select(field => field.Instruction!.Value!.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1]).ShouldBe(["why_1", "why_2", "why_1"]);
    });

    [Fact]
    public void Word_Headings_HaveTheirStyles() => Open(Page, body =>
        body.Elements<Paragraph>().Select(paragraph => paragraph.ParagraphProperties?.ParagraphStyleId?.Val?.Value).Where(style => style!.StartsWith("Heading", StringComparison.Ordinal))
            .ShouldBe(["Heading1", "Heading2", "Heading3", "Heading2"]));

    [Fact]
    public void Word_EveryStyleAndListThatIsUsed_IsDefined()
    {
        using var file = WordprocessingDocument.Open(new MemoryStream(new WordRenderer().Render(Page)), false);
        var main = file.MainDocumentPart!;
        var styles = main.StyleDefinitionsPart!.Styles!.Elements<Style>().Select(style => style.StyleId!.Value!).ToHashSet(StringComparer.Ordinal);
        var lists = main.NumberingDefinitionsPart!.Numbering!.Elements<NumberingInstance>().Select(list => list.NumberID!.Value).ToHashSet();

        var root = main.Document!;
        root.Descendants<ParagraphStyleId>().Select(style => style.Val!.Value!).Concat(root.Descendants<RunStyle>().Select(style => style.Val!.Value!))
            .Concat(root.Descendants<TableStyle>().Select(style => style.Val!.Value!)).ShouldAllBe(style => styles.Contains(style));
        root.Descendants<NumberingId>().Select(list => list.Val!.Value).Distinct().Count().ShouldBe(3);
        root.Descendants<NumberingId>().ShouldAllBe(list => lists.Contains(list.Val!.Value));
        main.NumberingDefinitionsPart.Numbering.Descendants<StartOverrideNumberingValue>().Single().Val!.Value.ShouldBe(3);
    }

    [Fact]
    public void Word_TableHeads_AreRepeatedAndRowsNotParted() => Open(Page, body =>
    {
        var rows = body.Descendants<TableRow>().ToArray();

        rows.Select(row => row.Descendants<TableHeader>().Any()).ShouldBe([true, false, false]);
        rows.ShouldAllBe(row => row.Descendants<CantSplit>().Any());
        rows[1].Descendants<Justification>().Single().Val!.Value.ShouldBe(JustificationValues.Right);
    });

    [Fact]
    public void Word_Figure_HasItsAlternative() => Open(Page, body =>
        body.Descendants<DocumentFormat.OpenXml.Drawing.Wordprocessing.DocProperties>().Single().Description!.Value.ShouldBe("Mild, 10.8/h."));

    [Theory]
    [InlineData(Paper.Letter, 12240u, 15840u)]
    [InlineData(Paper.A4, 11906u, 16838u)]
    public void Word_Paper_IsTheOneAskedFor(Paper paper, uint width, uint height) => Open(Page with { Paper = paper }, body =>
    {
        var size = body.Descendants<PageSize>().Single();
        size.Width!.Value.ShouldBe(width);
        size.Height!.Value.ShouldBe(height);
    });

    [Fact]
    public void Word_RunningLines_HaveCaseStateVersionsAndPages()
    {
        using var file = WordprocessingDocument.Open(new MemoryStream(new WordRenderer().Render(Page with { Language = "de" })), false);
        var main = file.MainDocumentPart!;

        main.HeaderParts.Single().Header!.InnerText.ShouldBe("Case T-1, night of 3 June 2026DRAFT, not signedRules: severity 2026.1");
        main.FooterParts.Single().Footer!.Descendants<SimpleField>().Select(field => field.Instruction!.Value!.Trim()).ShouldBe(["PAGE", "NUMPAGES"]);
        main.StyleDefinitionsPart!.Styles!.Descendants<Languages>().Single().Val!.Value.ShouldBe("de");
    }

    [Fact]
    public void Word_DatesAndIds_ComeFromTheDocument()
    {
        var bytes = new WordRenderer().Render(Page);

        new WordRenderer().Render(Page).ShouldBe(bytes);
        using var zip = new ZipArchive(new MemoryStream(bytes));
        zip.Entries[0].FullName.ShouldBe("[Content_Types].xml");
        zip.Entries.ShouldAllBe(entry => entry.LastWriteTime.DateTime == new DateTime(2026, 6, 18));
        using var file = WordprocessingDocument.Open(new MemoryStream(bytes), false);
        file.PackageProperties.Created!.Value.ToUniversalTime().ShouldBe(new DateTime(2026, 6, 18, 0, 0, 0, DateTimeKind.Utc));
        file.PackageProperties.Modified.ShouldBe(file.PackageProperties.Created);
        file.PackageProperties.Title.ShouldBe("Title, case T-1, DRAFT, not signed");
        file.PackageProperties.Identifier.ShouldBe(new string('0', 32));
    }

    [Fact]
    public void Word_ControlCharacters_AreLeftOut() => Open(Samples.Page("a\u0001b\u001Fc ok"), body => body.InnerText.ShouldContain("abc ok"));

    private static void Open(DocumentPage page, Action<Body> check)
    {
        using var file = WordprocessingDocument.Open(new MemoryStream(new WordRenderer().Render(page)), false);
        new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(file).Select(problem => $"{problem.Part?.Uri} {problem.Path?.XPath}: {problem.Description}").ShouldBeEmpty();
        check(file.MainDocumentPart!.Document!.Body!);
    }
}

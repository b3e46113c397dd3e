using System.Globalization;
using System.Text.RegularExpressions;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests.Renderers.Pdf;

/// <summary>What is in the text is in the file, once and in order.</summary>
public sealed partial class PdfContentTests
{
    public static TheoryData<string, string> All => Samples.Examples;

    [Fact]
    public void Pdf_OfEveryKindOfBlock_IsReadInOrder()
    {
        var file = ReadBack.Of(Samples.Page(Samples.Everything));

        file.Body.ShouldBe(Samples.Squeezed("""
            Title First stressed and strong words.[1] More of them.[2] Section Part • one ≥ 5 ½ µ² – inner • two 3. third 4. fourth Quoted – words.
            Left Right cell one[1] 12.5 cell two 7 [Figure: Mild, 10.8/h.] Last. Why: the reasons behind the marks
            [1] Rule one (a.b). Met. • Fact of one. • Source of one. [2] Rule two (c.d). Not met. Rules: severity 2026.1. Criteria 0.1.0.
            """));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Pdf_OfEveryExample_HoldsEveryParagraphCellAndReason(string example, string document)
    {
        var page = Written.Document(Written.ExampleText(example), document).Page!;
        var texts = Samples.Texts(page);

        var body = ReadBack.Of(page).Body;

        texts.Count.ShouldBeGreaterThan(5);
        var from = 0;
        foreach (var text in texts.Where(text => !text.Contains("Figure:", StringComparison.Ordinal)))
        {
            var at = body.IndexOf(text, from, StringComparison.Ordinal);
            at.ShouldBeGreaterThanOrEqualTo(0, $"{text} after {body[Math.Max(0, from - 40)..from]}");
            from = at + text.Length;
        }
    }

    [Theory]
    [InlineData(Paper.Letter, 612, 792)]
    [InlineData(Paper.A4, 595.28, 841.89)]
    public void Pdf_EveryPage_HasThePaperTheCaseTheStateAndItsNumber(Paper paper, double width, double height)
    {
        var page = Samples.Page(string.Concat(Enumerable.Range(1, 125).Select(i => $"Paragraph {i}.\n\n"))) with { Paper = paper };

        var file = ReadBack.Of(page);

        file.Pages.Count.ShouldBe(paper == Paper.Letter ? 5 : 4);
        foreach (var (sheet, i) in file.Pages.Select((sheet, i) => (sheet, i)))
        {
            sheet.Width.ShouldBe(width, 0.01);
            sheet.Height.ShouldBe(height, 0.01);
            ReadBack.AllOf(sheet).ShouldStartWith("Case T-1, night of 3 June 2026DRAFT, not signedRules: severity 2026.1Title");
            ReadBack.AllOf(sheet).ShouldContain(string.Create(CultureInfo.InvariantCulture, $"Page {i + 1} of {file.Pages.Count}"));
        }
    }

    [Fact]
    public void Pdf_ManyRulesets_AreCutInTheHeaderAndWholeAtTheEnd()
    {
        var rulesets = Enumerable.Range(1, 40).Select(i => $"ruleset-number-{i} 2026.{i}").ToArray();

        var file = ReadBack.Of(Samples.Page("Text.") with { Rulesets = [.. rulesets] });

        CutVersions().IsMatch(ReadBack.AllOf(file.Pages[0])).ShouldBeTrue();
        file.Body.ShouldEndWith(Samples.Squeezed($"Rules: {string.Join(", ", rulesets)}. Criteria 0.1.0."));
    }

    [Fact]
    public void Pdf_CharactersTheFontLacks_AreWrittenAnotherWay() =>
        ReadBack.Of(Samples.Page("A → B, SpO₂, a\u2011b, \u898B, ≥ Ω Ж ő.")).Body.ShouldContain("A->B,SpO2,a-b,[U+898B],≥ΩЖő.");

    [Fact]
    public void Pdf_AllFonts_AreEmbeddedSubsets()
    {
        var file = ReadBack.Of(Samples.Page(Samples.Everything));

        var descriptors = Descriptor().Matches(file.Raw).Select(match => match.Value).ToArray();
        descriptors.Length.ShouldBe(3);
        descriptors.ShouldAllBe(descriptor => descriptor.Contains("/FontFile2 ", StringComparison.Ordinal));
        file.Pages.SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct().ShouldAllBe(name => Subset().IsMatch(name!));
    }

    [Fact]
    public void Pdf_Text_IsBlackAndLargeEnoughForAFax()
    {
        var letters = ReadBack.Of(Samples.Page(Samples.Everything)).Pages.SelectMany(page => page.Letters).ToArray();

        letters.ShouldAllBe(letter => letter.Color.ToRGBValues().Equals(ValueTuple.Create(0d, 0d, 0d)));
        letters.Where(letter => !letter.Value.All(sign => char.IsAsciiDigit(sign) || sign is '[' or ']')).Min(letter => letter.PointSize).ShouldBeGreaterThanOrEqualTo(9);
    }

    [GeneratedRegex(@"Rules: (ruleset-number-\d+ 2026\.\d+, ){2,}…Title")]
    private static partial Regex CutVersions();

    [GeneratedRegex("<</Type/FontDescriptor[^>]*>>")]
    private static partial Regex Descriptor();

    [GeneratedRegex(@"^[A-Z]{6}\+Open.?Sans")]
    private static partial Regex Subset();
}

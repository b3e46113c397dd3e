using System.Text;
using Criteria.Documents.Renderers;
using Criteria.Documents.Templating;
using Criteria.Documents.Tests.Support;
using CsCheck;

namespace Criteria.Documents.Tests.Renderers;

public sealed class PlainTextTests
{
    private const int Width = 80;

    public static TheoryData<string, string> All
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var example in Written.Examples)
            {
                all.Add(example, "impression");
                all.Add(example, "checklist");
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Text_OfEveryExampleInSevenBits_FitsAnyChartBox(string example, string document)
    {
        var written = Written.Document(Written.ExampleText(example), document);
        if (written.Page is null)
        {
            // Without a payer there is no checklist, and that is said.
            written.Problems.ShouldHaveSingleItem().Code.ShouldBe("CW0008");
            return;
        }

        var lines = Written.Text(written, ascii: true).Split('\n');

        lines.ShouldAllBe(line => line.Length <= Width);
        lines.ShouldAllBe(line => line.All(letter => letter >= ' ' && letter <= '~'));
        lines[0].ShouldStartWith($"CASE {written.Page.CaseKey} ");
        lines[0].ShouldEndWith("DRAFT, not signed");
        string.Join(' ', lines.Take(3)).ShouldContain(written.Page.Study.Split(' ')[^1]);
    }

    [Theory]
    [InlineData("\u00B5g, \u2265 4 %, 3\u20135, m\u00B2, 100 \u00B0C", "ug, >= 4 %, 3-5, m2, 100  degC")]
    [InlineData("M\u00FCller \u2014 \u201Cna\u00EFve\u201D", "Mueller -- \"naive\"")]
    [InlineData("\u4E2D \U0001F600", "{U+4E2D} {U+1F600}")]
    [InlineData("a\u0007b", "a{U+0007}b")]
    public void Ascii_SpellsWhatItCannotPrint(string text, string ascii) => SevenBits.Of(text).ShouldBe(ascii);

    [Fact]
    public void Ascii_OfAnyText_DropsNoLetter() => Gen.String[0, 60].Sample(text =>
    {
        var runes = text.EnumerateRunes().ToArray();

        var ascii = SevenBits.Of(text);

        ascii.ShouldAllBe(letter => letter == '\n' || (letter >= ' ' && letter <= '~'));
        ascii.ShouldBe(string.Concat(runes.Select(rune => SevenBits.Of(rune.ToString()))));
        runes.ShouldAllBe(rune => SevenBits.Of(rune.ToString()).Length > 0);
    });

    // Words of any length, in paragraphs, items and cells: all of them come out, in their order, within the width.
    [Fact]
    public void Text_OfAnyWords_LosesNoneAndKeepsTheWidth()
    {
        var words = Gen.String[Gen.Char["abcXYZ019.,%*[]|<>_#&`~^\\"], 1, 100].Array[1, 12];
        Gen.Select(words, words, words).Sample((paragraph, item, cell) =>
        {
            string Safe(string[] text) => MarkdownEncoder.Instance.Encode(string.Join(' ', text));
            var page = Page($"p {Safe(paragraph)}\n\n- i {Safe(item)}\n\n| a | b |\n|---|---|\n| {Safe(cell)} | end |\n");

            var text = Encoding.UTF8.GetString(new PlainTextRenderer(ascii: true).Render(page));

            text.Split('\n').ShouldAllBe(line => line.Length <= Width);
            var letters = string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
            letters.ShouldContain(string.Concat(paragraph));
            letters.ShouldContain(string.Concat(item));
            string.Concat(letters.Order()).Length.ShouldBeGreaterThanOrEqualTo(string.Concat(cell).Length);
            foreach (var letter in string.Concat(cell).Distinct())
            {
                letters.Count(other => other == letter).ShouldBeGreaterThanOrEqualTo(string.Concat(cell).Count(other => other == letter));
            }
        });
    }

    internal static DocumentPage Page(string markdown) => new()
    {
        Name = "impression",
        Title = "Title",
        CaseKey = "T-1",
        Study = "night of 3 June 2026",
        Rulesets = ["severity 2026.1"],
        State = DocumentState.Draft,
        StateWords = "DRAFT, not signed",
        Markdown = markdown,
        Date = new DateOnly(2026, 6, 18),
        Id = new string('0', 32),
        Program = "Criteria 0.1.0",
    };
}

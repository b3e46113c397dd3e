using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Documents.Renderers;
using Criteria.Documents.Tests.Renderers.Pdf;
using Criteria.Documents.Tests.Support;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using Markdig.Syntax;

namespace Criteria.Documents.Tests;

/// <summary>Text of a case that tries to be something else stays text: every document has the shape that it has with plain words in its place.</summary>
public sealed partial class InjectionTests
{
    private const string Harmless = "Plain words";

    // What is reviewed and released, so that all text of a case is printed.
    private static readonly string[] Shapes = ["impression", "referrer-letter", "appeal-letter", "patient-page", "packet-index"];

    public static TheoryData<string> Corpus =>
    [
        "<script>alert(1)</script>", "</title><h1>x</h1>", "\" onmouseover=\"alert(1)", "<img src=x onerror=alert(1)>", "<!-- x -->", "]]>", "&lt;b&gt; &#60;b&#62;", "<![CDATA[x]]>", "<?xml x?>",
        "javascript:alert(1)", "http://example.invalid", "<http://example.invalid>", "[a](http://example.invalid)", "![a](figure:severity)", "[a]: http://example.invalid", "[^1]", "[^1]: note",
        "# heading", "- item", "+ item", "* item", "1. item", "1) item", "> quote", "---", "***", "===", "- - -", "    code", "\tcode", "```", "~~~", "`code`", "*a* **b** __c__ ~~d~~", "| a | b |", "|---|", "a\\", "\\",
        "two\nlines", "two\n\nparagraphs", "two\r\n# lines", "{{ case_key }}", "{% rests_on \"x\" %}", "${x} {0} %s %n",
        "=cmd|' /C calc'!A0", "+1+1", "-1+1", "@SUM(1)", "\u202Etxt.exe\u202C", "\u2066a\u2069", "a\u200Bb", "\uFEFFa", "a\u2028b\u2029c", "a\u0085b", "a\u0000b\u0007c\u001B[31md", "a\u007Fb", "a\U000E0041\U000E0042b",
        "Zoe\u0308 \u4E2D\u6587 \u0645\u06CC\u200C\u062E\u0648\u0627\u0647\u0645 \U0001F600", "a\uFFFEb\uFFFFc\uFDD0d",
        "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    ];

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Text_ThatTriesToBeMore_ChangesNoShape(string text)
    {
        foreach (var document in Shapes)
        {
            var (page, plain) = (Page(text, document), Page(Harmless, document));

            FirstDifference(Blocks(page), Blocks(plain)).ShouldBeNull(document);
            FirstDifference(Tags(page), Tags(plain)).ShouldBeNull(document);
        }
    }

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Text_ThatTriesToBeMore_LeavesNoHiddenSignInAnyFormat(string text)
    {
        foreach (var page in Shapes.Select(document => Page(text, document)))
        {
            foreach (var format in new[] { "text", "markdown", "html" })
            {
                Hidden(Encoding.UTF8.GetString(DocumentFormats.Render(page, format).Span)).ShouldBeEmpty($"{page.Name}, {format}");
            }

            var ascii = Encoding.UTF8.GetString(DocumentFormats.Render(page, "text", ascii: true).Span);
            ascii.ShouldAllBe(letter => letter == '\n' || (letter >= ' ' && letter <= '~'));
            ascii.Split('\n').ShouldAllBe(line => line.Length <= 80);
        }
    }

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Text_ThatTriesToBeMore_LeavesFilesThatOtherReadersOpen(string text)
    {
        var page = Page(text, "referrer-letter");

        using var stream = new MemoryStream(DocumentFormats.Render(page, "docx").ToArray());
        using (var word = WordprocessingDocument.Open(stream, isEditable: false))
        {
            new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(word).Select(error => error.Description).ShouldBeEmpty();
            word.MainDocumentPart!.HyperlinkRelationships.ShouldBeEmpty();
        }

        var pdf = ReadBack.Of(page);
        pdf.Pages.Count.ShouldBeGreaterThan(0);
        Regex.IsMatch(pdf.Raw, "/URI|/JavaScript|/Launch").ShouldBeFalse();
    }

    [Fact]
    public void Text_OfTheCorpus_StandsInTheDocuments() =>
        Text(Page("=cmd|' /C calc'!A0", "referrer-letter")).ShouldContain("=cmd|' /C calc'!A0");

    private static string Text(DocumentPage page) => Encoding.UTF8.GetString(DocumentFormats.Render(page, "text").Span);

    private static DocumentPage Page(string text, string document)
    {
        var subject = WithText(Written.CaseOf(Sample), text);
        var draft = Written.Document(subject, document, To(document));
        draft.Problems.ShouldBeEmpty(document);
        return Written.Document(Signed(subject, document, draft.TextDigest), document, To(document)).Page!;
    }

    private static string? To(string document) => document switch { "referrer-letter" => "orderer", "appeal-letter" => "payer", "patient-page" => null, _ => null };

    // Every text of the case and its records, and every origin.
    private static Core.Cases.Case WithText(Core.Cases.Case subject, string text)
    {
        Fact Put(Fact fact) => fact.Value is TextValue ? fact with { Value = new TextValue(text) }
            : fact.Origin.Kind == OriginKind.Document ? fact with { Origin = new Provenance(OriginKind.Document, text) }
            : fact;
        var vocabulary = subject.Facts.Vocabulary;
        var texts = vocabulary.Facts.Where(fact => fact is { Kind: FactKind.Text, Scope: FactScope.Case } && fact.At != "denial.criterion").Select(fact => Fact.Known(fact, new TextValue(text), Provenance.Entered));
        var facts = subject.Facts.With([.. subject.Facts.Entered.Where(fact => fact.Definition.At != "denial.criterion").Select(Put), .. texts]);
        foreach (var list in subject.Facts.Records)
        {
            facts = facts.With(list with { Items = [.. list.Items.Select(record => record with { Attributes = [.. record.Attributes.Select(fact => fact.Definition.At is "overrides.of" or "sign_offs.text_digest" ? fact : Put(fact))] })] });
        }

        return new Core.Cases.Case("K-1", subject.AssessedOn, facts, [.. subject.Nights.Select(night => new Night(night.Label, facts.With(night.Facts.Entered.Where(fact => fact.Definition.Scope == FactScope.Night).Select(Put))))]);
    }

    private static Core.Cases.Case Signed(Core.Cases.Case subject, string document, string digest)
    {
        var vocabulary = subject.Facts.Vocabulary;
        var (signOffs, addenda) = (vocabulary.Record("sign_offs")!, vocabulary.Record("addenda")!);
        var text = subject.Facts["identity.patient_name"].Text;
        CaseRecord Record(RecordDefinition list, params (string Name, FactValue Value)[] values) => new("x", document,
            [.. list.Attributes.Select(attribute => values.FirstOrDefault(value => attribute.At == $"{list.At}.{value.Name}") is { Value: { } value } ? Fact.Known(attribute, value, Provenance.Entered) : Fact.Absent(attribute))]);
        var on = new DateValue(new DateOnly(2026, 6, 20));
        var signed = subject.Facts
            .With(new RecordList(signOffs, [Record(signOffs, ("reviewed_by", new TextValue(text)), ("reviewed_on", on), ("text_digest", new TextValue(digest)), ("released_by", new TextValue(text)), ("released_on", on))], null))
            .With(new RecordList(addenda, [Record(addenda, ("text", new TextValue(text)), ("by", new TextValue(text)), ("on", on))], null));
        return subject with { Facts = signed };
    }

    private static readonly string Sample = File.ReadAllText(Path.Combine(Written.RepositoryRoot, "docs", "samples", "case.yaml"));

    private static string[] Blocks(DocumentPage page) => [.. MarkdownTree.Parse(page.Markdown).Descendants().Where(one => one is Block or Markdig.Syntax.Inlines.LinkInline or Markdig.Syntax.Inlines.EmphasisInline or Markdig.Syntax.Inlines.CodeInline).Select(one => one.GetType().Name)];

    private static string? FirstDifference(string[] found, string[] expected) => found.Append("the end").Zip(expected.Append("the end"))
        .Where(pair => pair.First != pair.Second && !pair.First.StartsWith("<meta name=\"dcterms.identifier\"", StringComparison.Ordinal))
        .Select(pair => $"{pair.First} in the place of {pair.Second}").FirstOrDefault();

    private static string[] Tags(DocumentPage page) => [.. Tag().Matches(Encoding.UTF8.GetString(DocumentFormats.Render(page, "html").Span)).Select(match => match.Value)];

    // Direction marks, separators and controls; the joiners of scripts that need them may stay.
    private static IEnumerable<string> Hidden(string text) => text.EnumerateRunes()
        .Where(rune => rune.Value is not ('\n' or 0x200C or 0x200D) && Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
        .Select(rune => rune.Value.ToString("X4", CultureInfo.InvariantCulture)).Distinct();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}

using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>Documents of the case are told by what they are and their date, and every date is written out.</summary>
public sealed class ProseTests
{
    private static readonly Prose Prose = new(Written.CaseOf("""
        case: HT-1
        assessed_on: 2026-06-18
        documents:
          - { id: visit-note, kind: clinical evaluation, date: 2026-05-20, author: physician }
          - { id: second_note, kind: clinical evaluation, date: 2026-05-20 }
          - { id: report, kind: sleep test report, date: 2026-06-08 }
          - { id: my-order, kind: order }
        """));

    [Theory]
    [InlineData("Shown by report (sleep test report of 2026-06-08, physician, signed 2026-06-09).", "Shown by sleep test report of 8 June 2026 (physician, signed 9 June 2026).")]
    [InlineData("Report (sleep test report of 2026-06-08) does not fit: no.", "Sleep test report of 8 June 2026 does not fit: no.")]
    [InlineData("REI: 10.8/h (report p.2)", "REI: 10.8/h (sleep test report of 8 June 2026, p.2)")]
    [InlineData("Not known of report: form of the signature.", "Not known of the sleep test report of 8 June 2026: form of the signature.")]
    [InlineData("names the patient of my-order, date of the claim.", "names the patient of the order, date of the claim.")]
    [InlineData("My-order (order) does not yet say", "Order does not yet say")]
    public void Document_OfTheCase_IsNamedByWhatItIs(string trace, string told) => Prose.Of(trace).ShouldBe(told);

    [Fact]
    public void Document_ThatAnotherOneOfTheSameDayCouldBe_KeepsItsName() =>
        Prose.Of(@"visit-note p.1; second\_note p.2").ShouldBe(@"clinical evaluation of 20 May 2026 (visit-note), p.1; clinical evaluation of 20 May 2026 (second\_note), p.2");

    [Theory]
    [InlineData("Please send the signed report of the sleep test.")]
    [InlineData("The report, the order and the note.")]
    [InlineData("other-report p.2 and 12026-06-08 and 2026-13-40")]
    [InlineData("https://policy.example/2026-06-08/text?from=2026-06-09")]
    public void Words_ThatNameNoDocument_StayAsTheyAre(string text) => Prose.Of(text).ShouldBe(text);

    [Theory]
    [InlineData("appeal-letter")]
    [InlineData("checklist")]
    [InlineData("impression")]
    [InlineData("interpretation-report")]
    public void Documents_OfEveryExample_HaveDatesInOneStyle(string document)
    {
        foreach (var example in Written.Examples)
        {
            if (Written.Document(Written.ExampleText(example), document).Page is { } page)
            {
                page.Markdown.ShouldNotMatch(@"(?<![\w-])20\d\d-\d\d-\d\d(?![\w-])", example);
            }
        }
    }
}

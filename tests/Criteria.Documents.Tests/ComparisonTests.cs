using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>A night is set against an earlier study only where rule, denominator and recorder allow; which of them forbids it is said.</summary>
public sealed class ComparisonTests
{
    private const string Rule = "What forbids it: the hypopnea rule.";
    private const string Denominator = "What forbids it: the denominator, sleep against monitoring.";
    private const string Recorder = "What forbids it: the kind of recorder, ";

    [Theory]
    [InlineData("impression")]
    [InlineData("interpretation-report")]
    public void Comparison_WithTheSameRuleDenominatorAndRecorder_SaysWhichWay(string document)
    {
        var section = Section(document, "done: yes, date: 2022-03-14, index: REI by 4 %, per_hour: 7.9 /h, recorder: type III");

        section.ShouldContain("Earlier study without therapy of 14 March 2022: 7.9/h, REI by 4 %, recorder type III.");
        section.ShouldContain("the index by the same rule is above that of the earlier study.");
        section.ShouldContain("hypopnea rule, denominator and kind of recorder are those of the earlier study.");
        section.ShouldNotContain("What forbids it");
    }

    [Theory]
    [InlineData("AHI by 3 % or arousal", "type I", Rule, Denominator, Recorder)]
    [InlineData("AHI by 4 %", "type III", Denominator)]
    [InlineData("REI by 4 %", "PAT set", Recorder)]
    public void Comparison_ThatIsForbidden_NamesEachOfTheThreeThatForbidsIt(string index, string recorder, params string[] forbidden)
    {
        var section = Section("impression", $"done: yes, index: {index}, per_hour: 7.9 /h, recorder: {recorder}");

        section.ShouldContain("the night cannot be set against the earlier study.");
        foreach (var sentence in new[] { Rule, Denominator, Recorder })
        {
            section.Contains(sentence, StringComparison.Ordinal).ShouldBe(forbidden.Contains(sentence), sentence);
        }

        section.ShouldNotContain("by the same rule is");
    }

    [Theory]
    [InlineData("done: yes, index: REI by 4 %, per_hour: 7.9 /h", "cannot be told yet. Missing: recorder of the earlier study.")]
    [InlineData("done: no", "There is no earlier study without therapy.")]
    [InlineData("date: unknown", "No earlier study without therapy is in the case.")]
    public void Comparison_WithoutAnEarlierStudyOrItsParts_SaysSo(string study, string sentence)
    {
        var section = Section("impression", study);

        section.ShouldContain(sentence);
        section.ShouldNotContain("by the same rule is");
    }

    [Fact]
    public void Response_OnTherapy_AnswersEachDefinitionOfSuccessByItself()
    {
        var text = Written.ExampleText("oral-appliance-mild")
            .Replace("\ntherapy:\n", "\nfollow_up: { treated_rate: 4.1 /h, treated_index: REI by 4 %, treated_recorder: type III, similar_supine_share: yes }\ntherapy:\n  - { id: oa, kind: oral appliance, start: 2026-04-20, outcome: continued }\n", StringComparison.Ordinal);

        var impression = Written.Text(text, "impression", "markdown");

        impression.ShouldContain("On therapy 4.1/h, before it 10.8/h, measured alike.");
        impression.ShouldContain("Response, a fall of the index by half or more: met.");
        impression.ShouldContain("Success, an index below 10 after a fall by more than half: met.");
        impression.ShouldContain("Success by another group, an index below 10 after a fall by at least half: met.");
        impression.ShouldContain("Resolution, an index below 5 on therapy: met.");
    }

    [Theory]
    [InlineData("impression")]
    [InlineData("interpretation-report")]
    public void Nights_WithDifferentGrades_AreSaidToDifferAtTheTop(string document)
    {
        var text = Written.Text(Written.ExampleText("two-nights"), document, "markdown");

        text.IndexOf("The nights differ. Grade by REI, 4 % rule: mild (10.8/h), night of 11 March 2026; moderate (17.9/h), night of 12 March 2026.", StringComparison.Ordinal)
            .ShouldBeInRange(0, text.IndexOf("Adequacy", StringComparison.Ordinal));
    }

    // The section without its marks, on one line.
    private static string Section(string document, string study)
    {
        var text = Written.Text(Written.ExampleText("oral-appliance-mild") + $"\nearlier_study: {{ {study} }}\n", document, "markdown");
        var start = text.IndexOf("## Comparison with an earlier study", StringComparison.Ordinal);
        start.ShouldBeGreaterThan(0);
        return text[start..text.IndexOf("\n## ", start + 1, StringComparison.Ordinal)];
    }
}

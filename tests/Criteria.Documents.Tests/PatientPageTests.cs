using System.Text;
using System.Text.RegularExpressions;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>The page for the patient: easy to read, few numbers, and only once a clinician released it.</summary>
public sealed partial class PatientPageTests
{
    private const int MostNumbers = 3;

    private const string Release = "\nsign_offs:\n  - { id: s1, kind: patient-page, released_by: R. Example, released_on: 2026-06-20 }\n";

    public static TheoryData<string> Examples => [.. Written.Examples.Where(name => !Written.ExampleText(name).Contains("sign_offs:", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void PatientPage_OfEveryExample_ReadsAtGradeEightOrBelow(string example)
    {
        var grade = Readability.Grade(Body(example));

        grade.ShouldBeInRange(1, Readability.ForPatients);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void PatientPage_OfEveryExample_HoldsThreeNumbersAtMost(string example) =>
        Number().Count(Body(example)).ShouldBeLessThanOrEqualTo(MostNumbers);

    [Fact]
    public void PatientPage_ThatNobodyReleased_IsRefused()
    {
        var written = Written.Document(Written.ExampleText("oral-appliance-mild"), "patient-page");

        written.Page.ShouldBeNull();
        written.Problems.ShouldContain(problem => problem.ToString().Contains("released", StringComparison.Ordinal));
    }

    [Fact]
    public void PatientPage_OfAMildNight_SaysTheCountTheGradeAndTheCautions()
    {
        var body = Body("oral-appliance-mild");

        body.ShouldContain("This is called mild, the lowest of three grades.");
        body.ShouldContain("A mouth guard made for you by a dentist.");
        body.ShouldContain("Do not drive or use machines when you feel sleepy.");
        body.ShouldContain("Get emergency care at once");
    }

    [Theory]
    [InlineData("moderate", "Your clinician reads this as moderate.")]
    [InlineData("Severe", "Your clinician reads this as severe.")]
    [InlineData("moderate at 15.4 an hour", "Your clinician reads this in another way and will tell you how.")]
    [InlineData("below 5", "Your clinician reads this in another way and will tell you how.")]
    public void PatientPage_WithAnOverride_TellsItInPlainWordsBesideTheFinding(string reads, string sentence)
    {
        var body = Body("oral-appliance-mild", $"""

            overrides:
              - kind: finding
                id: o1
                of: severity.rei-4
                reads: {reads}
                reason: scored again
                note: Rescored by hand with 8 more events.
                by: R. Example
                on: 2026-06-20
            """);

        body.ShouldContain($"the lowest of three grades. {sentence}\n");
        body.Split("Your clinician reads").Length.ShouldBe(2);
        body.ShouldNotContain("scored again");
        body.ShouldNotContain("Rescored");
        body.ShouldNotContain("R. Example");
        Number().Count(body).ShouldBeLessThanOrEqualTo(MostNumbers);
    }

    [Fact]
    public void PatientPage_ThatWasReleased_IsNoDraftToThePatient()
    {
        var page = Written.Document(Written.ExampleText("oral-appliance-mild") + Release, "patient-page").Page!;

        (page.State, page.StateWords).ShouldBe((DocumentState.Draft, "RELEASED by R. Example"));
        page.Markdown.ShouldNotContain("draft", Shouldly.Case.Insensitive);
        page.Markdown.ShouldContain("Released to the patient by R. Example on 20 June 2026.");
    }

    [Fact]
    public void PatientPage_OfOneWhoHasAnAppliance_DoesNotOfferItAsNewAndNamesTheTestOnIt()
    {
        var body = Body("response-to-therapy");

        body.ShouldContain("You have a mouth guard now. Where it is named below, the choice is to go on with it or to have it changed.");
        body.ShouldContain("You had a test while you used your treatment too.");
        Body("oral-appliance-mild").ShouldNotContain("You have a mouth guard");
        Body("oral-appliance-mild").ShouldNotContain("while you used your treatment");
    }

    [Theory]
    [InlineData("not tolerated", true)]
    [InlineData("not effective", true)]
    [InlineData("declined", false)]
    public void PatientPage_OfOneWhoHadPap_SaysSoUnlessItWasDeclined(string outcome, bool says)
    {
        var body = Written.Text(Written.Document(Written.ExampleText("response-to-therapy")
            .Replace("kind: oral appliance, start: 2025-08-04, outcome: continued", $"kind: PAP, start: 2025-08-04, outcome: {outcome}", StringComparison.Ordinal) + Release, "patient-page"), "markdown");

        body.Contains("You have had a machine that blows air before.", StringComparison.Ordinal).ShouldBe(says);
    }

    [Fact]
    public void PatientPage_WithTwoCounts_TellsThemApart()
    {
        var body = Body("scoring-rules-disagree");

        body.ShouldContain("A strict count takes the pauses, and only the weak breaths");
        body.ShouldContain("A broad count takes the pauses, and the weak breaths");
    }

    [Theory]
    [InlineData(null, "* There is more to choose from than this page can explain.")]
    [InlineData("A choice of our own.", "* A choice of our own.")]
    public void PatientPage_WithAnOptionOfAPolicyOwner_NamesItByItsPlainWordsOrLeavesItToTheClinician(string? plain, string line)
    {
        var overlay = new SourceFile("local/own.yaml", Encoding.UTF8.GetBytes($$"""
            overlay: own-option
            extends: pathway-pap
            version: 1
            changes:
              - add:
                  id: pathway.own
                  title: Option of our own
                  {{(plain is null ? "# no plain words" : "plain: " + plain)}}
                  option:
                    offer: Chronotherapeutic optimisation
                    for: [{ when: pathway.osa, say: Our policy. }]
                    strength: local
                    certainty: local
                  cites: [trade "more than the index"]
                reason: a test
                approved_by: nobody
                approved_on: 2026-01-10
            """));
        var library = RulesetLibrary.Load(ShippedRules.With([overlay])).Library!;

        var body = Body("oral-appliance-mild", library: library);

        body.ShouldContain(line.Replace("* ", "- ", StringComparison.Ordinal));
        body.ShouldNotContain("Chronotherapeutic");
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("unknown", true)]
    public void PatientPage_WhereNobodyAskedAboutSleepAtTheWheel_Asks(string answer, bool asks)
    {
        var text = Written.ExampleText("oral-appliance-mild");
        text.ShouldContain("drowsy_driving: no");

        var body = Written.Text(Written.Document((answer.Length == 0 ? text : text.Replace("drowsy_driving: no", $"drowsy_driving: {answer}", StringComparison.Ordinal)) + Release, "patient-page"), "markdown");

        body.Contains("Did you fall asleep when you did not mean to", StringComparison.Ordinal).ShouldBe(asks);
    }

    // What the patient reads between the head of the page and the sign-off; the marks are not printed on this page.
    private static string Body(string example, string more = "", RulesetLibrary? library = null)
    {
        var written = Written.Document(Written.ExampleText(example) + Release + more, "patient-page", library ?? Written.Library);
        written.Problems.ShouldBeEmpty();
        var text = Written.Text(written, "markdown");
        var start = text.IndexOf("This page tells you", StringComparison.Ordinal);
        return text[start..text.IndexOf("## Sign-off", StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"\d+(?:\.\d+)?")]
    private static partial Regex Number();
}

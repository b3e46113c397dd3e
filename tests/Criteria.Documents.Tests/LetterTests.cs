using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Tests.Support;
using Criteria.Engine;

namespace Criteria.Documents.Tests;

/// <summary>Letters to other offices: each shows the options that the rules give to that office, and has the parts that a letter needs.</summary>
public sealed class LetterTests
{
    private const string Sample = "oral-appliance-mild";

    private const string Recipients = """

        identity: { answer_by: 2026-06-10 }
        recipients:
          - { id: dentist, kind: dentist, name: D. Dentist }
          - { id: laboratory, kind: sleep laboratory, name: L. Laboratory }
          - { id: orderer, kind: ordering clinician, name: O. Orderer }
          - { id: other, kind: clinician, name: C. Clinician }
        """;

    private const string Own = """
        ruleset: own-options
        title: Options of the clinic
        heading: Pathway of the clinic
        order: 90
        function: clinical
        version: 2026.1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }
        review_by: 2027-06-30
        criteria:
          - id: own.guard
            title: Guard for the teeth
            plain: A guard for your teeth.
            applies_when: age >= 18 years
            option:
              offer: A guard for the teeth
              for: [{ when: age >= 18 years, say: The clinic offers it. }]
              strength: none, our own
              certainty: none, our own
              carried_out_by: [OFFICE]
            cites: [ats-2013 "recommendations"]
        """;

    [Fact]
    public void ShippedOptions_OfAnOffice_AreTheseOnes()
    {
        string[] Of(string office) => [.. Written.Library.All.Criteria.Where(criterion => criterion.Body is OptionBody body && body.CarriedOutBy.Contains(office)).Select(criterion => criterion.Id).Order(StringComparer.Ordinal)];

        Of("dentist").ShouldBe(["appliance.option", "appliance.option-snoring", "jaw.option-dental"]);
        Of("sleep laboratory").ShouldBe(["follow-up.option-laboratory", "hsat.option-laboratory", "laboratory.option-heart-failure", "laboratory.option-pattern", "severity.option-next-test"]);
    }

    [Theory]
    [InlineData("dentist", "referral-dentist", "dentist", true)]
    [InlineData("dentist", "referral-sleep-laboratory", "laboratory", false)]
    [InlineData("sleep laboratory", "referral-sleep-laboratory", "laboratory", true)]
    [InlineData("sleep laboratory", "referral-dentist", "dentist", false)]
    public void Letter_WithAnOptionOfOwnRules_ShowsItToTheOfficeThatCarriesItOut(string office, string document, string to, bool shown)
    {
        var loading = Load(office);
        var library = loading.Library.ShouldNotBeNull(string.Join('\n', loading.Problems));
        var subject = new CaseReader(library.Vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(Written.ExampleText(Sample) + Recipients))).Case!;
        var writer = new DocumentWriter(DocumentTemplates.Load(library).Templates!, subject, new Assessor(library).Assess(subject, subject.RulesDate!.Value));

        var text = Written.Text(writer.Write(new DocumentOrder(document, to)), "markdown");

        Part(text, "## Why we write", "## ").Contains("guard for the teeth", StringComparison.OrdinalIgnoreCase).ShouldBe(shown, text);
    }

    [Fact]
    public void Option_CarriedOutByAnOfficeThatIsNone_IsAnError() =>
        Load("dentst").Problems.Select(problem => problem.ToString()).ShouldBe(
        [
            "own.yaml:21:24: error CD0023: `dentst` is not a kind of recipient; did you mean `dentist`? allowed: `clinician`, `ordering clinician`, `interpreting physician`, `technologist`, `dentist`, `supplier`, `sleep laboratory`, `payer`, `patient`",
        ]);

    [Fact]
    public void ReferrerLetter_OfACase_HasEachPartOfALetter()
    {
        var text = Letter("orderer");

        text.ShouldContain("O. Orderer");
        Part(text, "## Result", "## ").ShouldContain("mild by REI, 4 % rule");
        Part(text, "## Options", "## ").ShouldContain("Oral appliance");
        Part(text, "## What is wanted back", "## ").ShouldContain("who goes on with it");
        Part(text, "## By when", "## ").ShouldContain("10 June 2026");
        Part(text, "## Signature", "## ").ShouldContain("Not signed");
    }

    // That a paper is on file, or is not, is for whoever keeps the file.
    [Theory]
    [InlineData("referral-physician")]
    [InlineData("referrer-letter")]
    public void Letter_ToAPhysician_LeavesOutFlagsAboutPaperwork(string document)
    {
        var subject = Written.CaseOf(Written.ExampleText("response-to-therapy") + Recipients);
        var papers = Written.Assess(subject).Findings
            .Where(finding => finding is { Standing: Standing.Met, Criterion: { Shown: Shown.WhenMet, Ask: not null, Ruleset.Function: RulesetFunction.Clinical }, ReadFirst: null, Option: null })
            .Select(finding => finding.Criterion.Title).ToArray();

        var text = Written.Document(subject, document, "orderer").Page!.Markdown;

        papers.ShouldNotBeEmpty();
        papers.Where(title => text.Contains($"{title}.", StringComparison.Ordinal)).ShouldBeEmpty();
    }

    [Fact]
    public void ReferrerLetter_ToSomebodyElse_IsRefused()
    {
        var written = Written.Document(Written.CaseOf(Written.ExampleText(Sample) + Recipients), "referrer-letter", "other");

        written.Page.ShouldBeNull();
        written.Problems.ShouldHaveSingleItem().Message.ShouldContain("other");
    }

    [Fact]
    public void ReferrerLetter_WithoutTheSaturation_SaysNothingOfIt()
    {
        var subject = Written.CaseOf(Written.ExampleText(Sample) + Recipients);
        Written.Text(Written.Document(subject, "referrer-letter", "orderer"), "markdown").ShouldContain("lowest saturation");

        Written.Text(Written.Document(subject.Without(Written.Library.Vocabulary.Find("spo2_lowest")!), "referrer-letter", "orderer"), "markdown").ShouldNotContain("lowest saturation");
    }

    private static string Letter(string to) => Written.Text(Written.Document(Written.CaseOf(Written.ExampleText(Sample) + Recipients), "referrer-letter", to), "markdown");

    private static LibraryLoading Load(string office) =>
        RulesetLibrary.Load(ShippedRules.With([new SourceFile("own.yaml", Encoding.UTF8.GetBytes(Own.Replace("OFFICE", office, StringComparison.Ordinal)))]));

    private static string Part(string text, string from, string to)
    {
        var start = text.IndexOf(from, StringComparison.Ordinal);
        start.ShouldBeGreaterThan(-1, text);
        var end = text.IndexOf(to, start + from.Length, StringComparison.Ordinal);
        return end < 0 ? text[start..] : text[start..end];
    }
}

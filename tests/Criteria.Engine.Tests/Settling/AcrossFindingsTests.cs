using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Settling;

/// <summary>A finding that reads open findings is settled where all that they rest on leaves no choice.</summary>
public sealed class AcrossFindingsTests
{
    // Made up for the test. Two forms of one question, and whether they differ; and the opposite of an answer beside the answer.
    private const string TwoForms = """
          - id: form.old
            title: Old form
            when: { all: [hypertension, habitual_snoring] }
            cites: [bbp-osa "criteria"]
          - id: form.new
            title: New form
            when: { all: [hypertension, witnessed_apneas] }
            cites: [bbp-osa "criteria"]
          - id: form.differ
            title: The forms differ
            when: { any: [{ all: [form.old is met, form.new is not met] }, { all: [form.old is not met, form.new is met] }] }
            cites: [bbp-osa "criteria"]
          - id: form.unless
            title: One of the two only
            when: { any: [{ all: [hypertension, habitual_snoring = no] }, { all: [hypertension = no, habitual_snoring] }] }
            cites: [bbp-osa "criteria"]
          - id: form.plain
            title: The answer itself
            when: hypertension
            cites: [bbp-osa "criteria"]
          - id: form.apart
            title: The answer and one of the two only lie apart
            when: { any: [{ all: [form.unless is met, form.plain is not met] }, { all: [form.unless is not met, form.plain is met] }] }
            cites: [bbp-osa "criteria"]
          - id: form.rests
            title: Rests on the forms
            when: { not: form.differ }
            cites: [bbp-osa "criteria"]
        """;

    private static readonly RulesetLibrary Library = Rules.Load([.. RandomRules.Vocabulary, Rules.File("two-forms.yaml", Rules.Ruleset("two-forms", TwoForms))]);

    private static readonly Assessor Assessor = new(Library);

    [Theory]
    [InlineData("yes", "yes", Standing.NotMet)]
    [InlineData("no", "no", Standing.NotMet)] // Kleene logic alone: neither form is met
    [InlineData("yes", "no", Standing.Undetermined)]
    [InlineData("unknown", "yes", Standing.Undetermined)]
    public void Assess_OfTwoFormsThatRestOnOneOpenAnswer_IsSettledWhereItMovesBothAlike(string snoring, string apneas, Standing standing)
    {
        var assessment = Assessor.Assess(Answers(snoring, apneas), Rules.Date);
        var finding = assessment.Of("form.differ").Single();

        finding.Standing.ShouldBe(standing);
        finding.Whatever.ToArray().ShouldBe(snoring == "yes" && standing == Standing.NotMet ? ["Hypertension"] : []);
        assessment.Of("form.rests").Single().Standing.ShouldBe(standing == Standing.NotMet ? Standing.Met : standing);
    }

    // The finding between them says the same as before: only all that it rests on tells that the case differs.
    [Fact]
    public void Update_OfAKnownFactUnderAnOpenFinding_SettlesAnewWhatReadsIt()
    {
        var live = Assessor.Open(Answers("no", "no"), Rules.Date);
        live.Assessment.Of("form.unless").Single().Standing.ShouldBe(Standing.Undetermined);
        live.Assessment.Of("form.apart").Single().Standing.ShouldBe(Standing.NotMet);

        live.Update(Fact.Known(live.Case.Facts.Vocabulary.Find("habitual_snoring")!, new YesNoValue(true), Provenance.Entered));

        live.Assessment.Of("form.unless").Single().Standing.ShouldBe(Standing.Undetermined);
        live.Assessment.Of("form.apart").Single().Standing.ShouldBe(Standing.Met);
    }

    private static Case Answers(string snoring, string apneas) => Rules.Read($$"""
        case: HT-TEST
        assessed_on: 2026-06-18
        intake:
          symptoms: { habitual_snoring: {{snoring}}, witnessed_apneas: {{apneas}} }
          conditions: { hypertension: unknown }
        """, Library);
}

using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class CompleteCaseTests
{
    [Fact]
    public void CompleteCase_UnderAllShippedRules_LeavesNothingOpen()
    {
        var findings = CaseText.Complete.Index("index: payer RDI, hypopnea: 4 %, per_hour: 16.7, events: 120, over: 7 h 12 min").Filled().Assess();

        findings.Assessment.Problems.ShouldBeEmpty();
        findings.Assessment.Findings.ShouldAllBe(finding => finding.Standing != Standing.Undetermined || finding.OnlyAsksAboutDocuments());
        findings.Of("adequacy.final-statement").ShouldBe(Standing.Met);
        findings.Of("osa.icsd-3-tr").ShouldBe(Standing.Met);
        findings.Of("pap.initial-coverage").ShouldBe(Standing.Met);
    }

    // Unknown is never no, and never yes: with nothing on file nothing is decided but an option, which only weighs.
    [Fact]
    public void EmptyCase_UnderAllShippedRules_DecidesNothing()
    {
        var findings = CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "pap").Assess();

        findings.Assessment.Findings.Where(finding => finding.Standing != Standing.Undetermined)
            .Select(finding => finding.Id).ShouldBe(["hsat.option-laboratory"]);
        findings["hsat.option-laboratory"].Option!.For.ShouldBeEmpty();
        findings["hsat.option-laboratory"].Option!.Against.ShouldBeEmpty();
    }

    [Fact]
    public void EmptyCase_EveryOpenFinding_SaysWhatToAsk()
    {
        var findings = CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "pap").Assess();

        // A flag about a document asks for none: it would be good news that there is no such document.
        foreach (var finding in findings.Assessment.Findings.Where(finding => finding is { Standing: Standing.Undetermined, Criterion.Shown: Shown.Always or Shown.AtTheTop }))
        {
            finding.Missing.ShouldNotBeEmpty(finding.Id);
            finding.Missing.ShouldAllBe(fact => fact.Ask.Length > 0 && fact.Owner.Length > 0, finding.Id);
        }
    }

    [Fact]
    public void CompleteCase_WithUnknownWrittenOut_IsTheSameAsWithItLeftOut()
    {
        foreach (var place in (string[])["patient.age", "intake.neck", "nights.covers_usual_sleep", "nights.pap_used", "nights.scoring"])
        {
            var written = CaseText.Complete.With(place, "unknown").Assess();
            var leftOut = CaseText.Complete.Without(place).Assess();

            Standings(written).ShouldBe(Standings(leftOut), place);
        }
    }

    // Coverage reads clinical facts, but nothing clinical reads coverage, neither its facts nor its findings.
    [Fact]
    public void ClinicalRules_OfTheShippedRulesets_ReadNothingOfCoverage()
    {
        var rules = Rules.Library.InForce(Rules.Date, "medicare", "pap");
        var clinical = rules.Criteria.Where(criterion => criterion.Ruleset.Function == RulesetFunction.Clinical).ToArray();
        var coverageFacts = rules.Vocabulary.Facts.Where(fact => fact.At?.StartsWith("coverage.", StringComparison.Ordinal) == true
            || fact.Id is "device_cleared" or "test_provider_qualifies" or "local_test_policy_met" or "supplier_handled_test" or "supplier_is_certified_hospital"
            or "dentist_handled_test" or "report_reviewed_on"
            || fact.Id.StartsWith("payer_", StringComparison.Ordinal)).Select(fact => fact.Slot).ToArray();

        coverageFacts.Length.ShouldBeGreaterThan(50);
        clinical.SelectMany(criterion => criterion.ReadsFacts).Intersect(coverageFacts).ShouldBeEmpty();
        clinical.SelectMany(criterion => criterion.ReadsCriteria).Select(index => rules.Criteria[index].Ruleset.Function).ShouldAllBe(function => function == RulesetFunction.Clinical);
    }

    [Fact]
    public void ClinicalFindings_WithAndWithoutACoverageCheck_AreTheSame()
    {
        var with = Clinical(CaseText.Complete);
        var without = Clinical(CaseText.Complete.Without("coverage"));

        without.Length.ShouldBeGreaterThan(30);
        with.ShouldBe(without);
    }

    [Fact]
    public void Assessment_WithoutPayer_HoldsNoCoverageFinding()
    {
        var findings = CaseText.Complete.Without("coverage").Assess();

        findings.Assessment.Findings.ShouldAllBe(finding => finding.Criterion.Ruleset.Function == RulesetFunction.Clinical);
    }

    private static (string, Standing)[] Standings(FindingTable findings) => [.. findings.Assessment.Findings.Select(finding => (finding.Id, finding.Standing))];

    private static string[] Clinical(CaseText text) =>
        [.. text.Assess().Assessment.Findings.Where(finding => finding.Criterion.Ruleset.Function == RulesetFunction.Clinical).Select(Print.Of)];
}

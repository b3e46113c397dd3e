using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests;

public sealed class AssessorTests
{
    [Fact]
    public void Assess_SeveralNights_GivesOneFindingEachAndAveragesNothing()
    {
        var findings = CaseText.Complete.Night(
            "date: 2026-06-04, recorder: type III, pap_used: no, covers_usual_sleep: yes, channels: [airflow, oximetry], "
            + "usable: { airflow: 6 h, oximetry: 6 h }, indices: [{ index: REI, hypopnea: 4 %, events: 60, over: 6 h }]").Assess();

        findings.Assessment.Nights.ShouldBe(["2026-06-03", "2026-06-04"]);
        findings.Assessment.Of("severity.rei-4").Select(finding => (finding.Night, finding.Value!.Band))
            .ShouldBe([("2026-06-03", "moderate"), ("2026-06-04", "mild")]);
        findings.Assessment.Of("stopbang").ShouldHaveSingleItem().Night.ShouldBeNull();
        foreach (var criterion in Rules.Library.InForce(Rules.Date, "medicare", "pap").Criteria)
        {
            findings.Assessment.Of(criterion.Id).Count().ShouldBe(criterion.PerNight ? 2 : 1, criterion.Id);
        }
    }

    [Fact]
    public void Assess_NightsInAnyOrder_GivesTheSame()
    {
        const string first = "date: 2026-06-03, recorder: type III, pap_used: no, usable: { airflow: 6 h, oximetry: 6 h }";
        const string second = "date: 2026-06-04, recorder: type IV, pap_used: no, usable: { airflow: 3 h, oximetry: 6 h }";

        var forth = CaseText.Empty.Night(first).Night(second).Assess();
        var back = CaseText.Empty.Night(second).Night(first).Assess();

        Print.Of(back.Assessment).ShouldBe(Print.Of(forth.Assessment));
    }

    [Fact]
    public void Assess_WithoutANight_AsksForTheNight()
    {
        var findings = CaseText.Complete.Without("nights").WithoutIndices().Assess();

        findings.Assessment.Nights.ShouldBeEmpty();
        findings.Of("severity.rei-4").ShouldBe(Standing.Undetermined);
        findings.Missing("adequacy.night").ShouldContain("covers_usual_sleep");
    }

    [Fact]
    public void Assess_LinesOfTheCaseFileInAnyOrder_GivesTheSame()
    {
        const string forth = """
            case: HT-ORDER
            patient: { age: 52 years, sex: male }
            intake:
              neck: 43 cm
              symptoms: { habitual_snoring: yes, fatigue: yes }
              conditions: { hypertension: yes, others: no, reviewed_by: clinician }
            documents:
              - { id: note, kind: clinical evaluation, date: 2026-05-20, in_person: yes, author: physician, signed: yes }
              - { id: order, kind: test order, author: physician, date: 2026-05-21 }
            coverage: { payer: medicare, item: pap }
            """;
        const string back = """
            coverage: { item: pap, payer: medicare }
            documents:
              - { date: 2026-05-21, author: physician, kind: test order, id: order }
              - { signed: yes, author: physician, in_person: yes, date: 2026-05-20, kind: clinical evaluation, id: note }
            intake:
              conditions: { reviewed_by: clinician, others: no, hypertension: yes }
              symptoms: { fatigue: yes, habitual_snoring: yes }
              neck: 43 cm
            patient: { sex: male, age: 52 years }
            case: HT-ORDER
            """;

        var first = Rules.Assessor.Assess(Rules.Read(forth), Rules.Date);
        var second = Rules.Assessor.Assess(Rules.Read(back), Rules.Date);

        Print.Of(second).ShouldBe(Print.Of(first));
    }

    [Fact]
    public void Assess_RulesetFilesInAnyOrder_GivesTheSame()
    {
        var files = ShippedRules.Files();

        foreach (var shuffled in (SourceFile[][])[[.. files.Reverse()], [.. files.OrderBy(file => file.Content.Length)]])
        {
            var library = Rules.Load(shuffled);
            var assessed = new Assessor(library).Assess(Rules.Read(CaseText.Complete.Yaml, library), Rules.Date);

            Print.Of(assessed).ShouldBe(Print.Of(Rules.Assessor.Assess(CaseText.Complete.Read(), Rules.Date)));
        }
    }

    [Fact]
    public void Assess_ForAnUnknownPayer_SaysThatCoverageWasNotChecked()
    {
        var findings = CaseText.Complete.With("coverage.payer", "other").Assess();

        var problem = findings.Assessment.Problems.ShouldHaveSingleItem();
        problem.Code.ShouldBe("CA0001");
        problem.Message.ShouldBe("no ruleset for `other`, `pap` in force on 2026-07-01; coverage was not checked");
        problem.Help.ShouldBe("there are rules for medicare, pap; medicare, oral appliance; medicare, nerve stimulation; medicare, respiratory assist; medicare, home sleep test; example plan, pap");
    }

    [Theory]
    [InlineData("coverage.item", "the case names the payer and not the item; coverage was not checked")]
    [InlineData("coverage.payer", "the case names the item and not the payer; coverage was not checked")]
    public void Assess_WithPayerOrItemAlone_SaysSo(string leftOut, string message)
    {
        var findings = CaseText.Complete.Without(leftOut).Assess();

        var problem = findings.Assessment.Problems.ShouldHaveSingleItem();
        problem.Code.ShouldBe("CA0003");
        problem.Message.ShouldBe(message);
    }

    // Nearly every shipped ruleset for PAP is in force from the same day; all are to be reviewed by the same day.
    [Theory]
    [InlineData("2023-12-31", false, false)]
    [InlineData("2024-01-01", true, false)]
    [InlineData("2027-06-30", true, false)]
    [InlineData("2027-07-01", true, true)]
    public void Assess_AroundTheDatesOfTheRulesets_SelectsAndWarns(string date, bool inForce, bool reviewPassed)
    {
        var asOf = DateOnly.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        var shipped = Rules.Library.Rulesets.Where(ruleset => ruleset is { Payer: null or "medicare", Item: null or "pap", Status: RulesetStatus.Active }).Select(ruleset => ruleset.Id).ToArray();

        var assessed = Rules.Assessor.Assess(CaseText.Complete.Read(), asOf);

        shipped = [.. shipped.Where(ruleset => Rules.Library.Rulesets.Any(each => each.Id == ruleset && each.EffectiveFrom <= asOf))];
        (shipped.Length > 0).ShouldBe(inForce);
        assessed.Rulesets.Select(ruleset => ruleset.Id).ShouldBe(shipped);
        assessed.Problems.Count(problem => problem.Code == "CA0002").ShouldBe(reviewPassed ? shipped.Length : 0);
    }

    [Fact]
    public void Assess_OnADateWhoseRulesReadWhatIsNotInForce_SaysWhatIsLeftOut()
    {
        var early = Rules.File("early.yaml", """
            ruleset: early
            title: E
            heading: E
            order: 1
            function: clinical
            version: 1
            status: active
            effective: { from: 2020-01-01 }
            conventions: { rounding: none }
            criteria:
              - { id: early.severe, title: Severe, when: severity.rei-4 is severe, cites: [bbp-osa] }
            """);
        var library = Rules.Load(ShippedRules.With([early]));

        var assessed = new Assessor(library).Assess(Rules.Read(CaseText.Complete.Yaml, library), new DateOnly(2023, 6, 1));

        assessed.Findings.ShouldBeEmpty();
        assessed.Problems.Where(problem => problem.Code == "CA0004").ShouldHaveSingleItem().Message
            .ShouldBe("the ruleset `early` is left out: it refers to rules that are not in force on 2023-06-01");
    }

    [Fact]
    public void Assess_Always_NamesTheRulesThatItUsed()
    {
        var assessed = CaseText.Complete.Assess().Assessment;

        assessed.Rulesets.Select(ruleset => ruleset.Order).ShouldBe(assessed.Rulesets.Select(ruleset => ruleset.Order).Order());
        assessed.Rulesets.ShouldAllBe(ruleset => ruleset.Digest.StartsWith("sha256:") && ruleset.Version.Length > 0);
        assessed.Findings.ShouldAllBe(finding => finding.Criterion.Cites.Length > 0);
    }
}

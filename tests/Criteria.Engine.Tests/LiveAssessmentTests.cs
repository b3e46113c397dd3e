using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests;

public sealed class LiveAssessmentTests
{
    // A few shipped rulesets, so that a further one changes nothing here.
    private static readonly RulesetLibrary Few = Rules.Load(ShippedRules.Files().Where(file => !file.Name.Contains("/clinical/", StringComparison.Ordinal)
        && !file.Name.Contains("/coverage/", StringComparison.Ordinal)
        || (string[])["scope", "adequacy", "agreement", "severity", "breathing-pattern", "position", "diagnosis", "screening", "screening-scores", "driving", "medicare-pap", "medicare-pap-continued"]
            is var few && few.Any(name => file.Name.EndsWith($"/{name}.yaml", StringComparison.Ordinal))));

    [Fact]
    public void Open_AnyCase_EvaluatesEachCriterionOnce()
    {
        var live = Open(CaseText.Complete);

        live.Evaluated.ShouldBe(live.Assessment.Findings.Select(finding => finding.Id), ignoreOrder: true);
    }

    [Fact]
    public void Update_OfANeckThatChangesNoAnswer_EvaluatesOnlyWhatReadsIt()
    {
        var live = Open(CaseText.Complete);

        live.Update(Number("neck", 50));

        live.Evaluated.ShouldContain("stopbang.large-neck");
        live.Evaluated.ShouldBe(Readers("neck"), ignoreOrder: true);
    }

    [Fact]
    public void Update_OfANeckThatChangesTheScore_EvaluatesWhatReadsTheScoreToo()
    {
        var live = Open(CaseText.Complete);

        live.Update(Number("neck", 35));

        // What reads two findings that change in different rounds is evaluated in both.
        live.Evaluated.Distinct().Except(Readers("neck")).ShouldBe(["stopbang", "stopbang.two-step", "stopbang.two-class", "stopbang.bicarbonate", "stopbang.forms-differ"], ignoreOrder: true);
        live.Assessment.Of("stopbang").Single().Conclusion.Points.ShouldBe(new PointRange(6, 6));
    }

    [Fact]
    public void Update_OfBicarbonate_EvaluatesWhatReadsIt()
    {
        var live = Open(CaseText.Complete);

        live.Update(Number("bicarbonate", 28));

        live.Evaluated.ShouldContain("stopbang.bicarbonate");
        live.Evaluated.ShouldBe(Readers("bicarbonate"), ignoreOrder: true);
        live.Assessment.Of("stopbang.bicarbonate").Single().Standing.ShouldBe(Standing.Met);
    }

    [Fact]
    public void Update_OfAFactThatNoRuleReads_EvaluatesNothing()
    {
        var live = Open(CaseText.Complete);

        live.Update(YesNo("morning_headache", true));

        live.Evaluated.ShouldBeEmpty();
        live.Case.Facts["morning_headache"].Text.ShouldBe("yes");
    }

    [Fact]
    public void Update_WithTheValueItHasAlready_EvaluatesNothing()
    {
        var live = Open(CaseText.Complete);

        live.Update(live.Case.Facts["neck"], live.Case.Facts["hypertension"], live.Case.Facts["age"]);

        live.Evaluated.ShouldBeEmpty();
    }

    // The trace says where a value came from, so a new source is a new reading.
    [Fact]
    public void Update_WithTheSameValueFromElsewhere_EvaluatesWhatReadsIt()
    {
        var live = Open(CaseText.Complete);

        live.Update(live.Case.Facts["bicarbonate"] with { Origin = new Provenance(OriginKind.Document, "visit-note p.2") });

        live.Evaluated.ShouldBe(Readers("bicarbonate"), ignoreOrder: true);
    }

    [Fact]
    public void UpdateNight_OfTheMeanSaturation_EvaluatesOneCriterion()
    {
        var live = Open(CaseText.Complete);

        live.UpdateNight(0, Number("spo2_mean", 80));

        live.Evaluated.ShouldBe(["adequacy.saturation-contradiction"]);
        live.Assessment.Of("adequacy.saturation-contradiction").Single().Standing.ShouldBe(Standing.Met);
    }

    // One event more within the grade: what reads the grade is left alone, what reads the rate is not.
    [Fact]
    public void UpdateNight_OfAnIndexWithinItsGrade_StopsAtTheGrade()
    {
        var live = Open(CaseText.Complete);

        live.UpdateNight(0, Number("rei_3.events", 171));

        live.Evaluated.ShouldBe(
            [
                "agreement.rules-reversed", "agreement.printed-rei-3", "agreement.types-rei",
                "severity.rei-3", "severity.rules-disagree", "severity.negative", "osa.five-per-hour", "osa.fifteen-per-hour",
            ],
            ignoreOrder: true);
    }

    [Fact]
    public void UpdateNight_OfAnIndexAcrossItsGrade_ReachesWhatReadsTheGrade()
    {
        var live = Open(CaseText.Complete);

        // 40 per hour; the printed figure of before no longer counts.
        live.UpdateNight(0, Number("rei_3.events", 280), Fact.Absent(Definition("rei_3.printed")), Number("rei_3.time", 420));

        live.Evaluated.Distinct().ShouldBe(
            [
                "agreement.rules-reversed", "agreement.printed-rei-3", "agreement.rei-time", "agreement.types-rei",
                "severity.rei-3", "severity.rules-disagree", "severity.negative", "osa.five-per-hour", "osa.fifteen-per-hour",
            ],
            ignoreOrder: true);
        live.Assessment.Of("severity.rules-disagree").Single().Standing.ShouldBe(Standing.Met);
    }

    [Fact]
    public void UpdateNight_ToAnInadequateNight_ReachesTheEndOfTheChain()
    {
        var live = Open(CaseText.Complete);

        live.UpdateNight(0, Number("usable.airflow", 239));

        live.Evaluated.ShouldContain("adequacy.night");
        live.Evaluated.ShouldContain("adequacy.gradable");
        live.Evaluated.ShouldContain("severity.rei-4");
        live.Evaluated.ShouldContain("osa.icsd-3");
        live.Evaluated.ShouldNotContain("pap.sleep-test");
        live.Evaluated.ShouldNotContain("stopbang");
        live.Assessment.Of("osa.icsd-3").Single().Standing.ShouldBe(Standing.NotApplicable);
    }

    [Fact]
    public void UpdateNight_OfOneNight_LeavesTheOtherAlone()
    {
        var live = Open(CaseText.Complete.Night("date: 2026-06-04, recorder: type III, pap_used: no"));

        live.UpdateNight(1, Number("spo2_mean", 80), Number("spo2_lowest", 90));

        live.Evaluated.ShouldBe(["adequacy.saturation-contradiction"]);
        live.Assessment.Of("adequacy.saturation-contradiction").Select(finding => (finding.Night, finding.Standing))
            .ShouldBe([("2026-06-03", Standing.NotMet), ("2026-06-04", Standing.Met)]);
    }

    [Fact]
    public void Update_OfACaseFact_ReachesEveryNight()
    {
        var live = Open(CaseText.Complete.Night("date: 2026-06-04, recorder: type III, pap_used: no"));

        live.Update(YesNo("not_better_explained", false));

        // Of the second night too little is known for what reads it to change. Whether the editions would agree on it is tried again.
        live.Evaluated.ShouldBe(["osa.icsd-3-tr", "osa.icsd-3-tr", "osa.editions-disagree", "osa.editions-disagree"], ignoreOrder: true);
        live.Assessment.Of("osa.icsd-3-tr").First().Standing.ShouldBe(Standing.NotMet);
    }

    [Fact]
    public void Update_OfTheDocuments_EvaluatesWhatReadsDocuments()
    {
        var live = Open(CaseText.Complete);
        var documents = live.Case.Facts.RecordsOf(Few.Vocabulary.Record("documents")!);

        live.Update(documents with { Items = documents.Items.RemoveAll(item => item.Kind == "instruction record") });

        live.Evaluated.ShouldBe(
            [
                "agreement.report-before-night", "pap.evaluation-before-test", "pap.evaluation-content", "pap.test-order", "pap.test-report",
                "pap.instruction", "pap.instruction-before-use", "pap.initial-coverage",
                "pap.continued.visit", "pap.continued.late-visit", "pap.continued.too-early", "pap.continued.report", "pap.continued-coverage",
                "pap.failed-trial.visit", "pap.failed-trial.study",
            ],
            ignoreOrder: true);
        live.Assessment.Of("pap.initial-coverage").Single().Standing.ShouldBe(Standing.NotMet);
    }

    // What a test on therapy is set against comes from the nights: it follows them.
    [Fact]
    public void UpdateNight_OfTheIndexThatATestOnTherapyIsSetAgainst_ReachesTheComparison()
    {
        var text = CaseText.Complete.With("follow_up.treated_index", "REI by 4 %").With("follow_up.treated_recorder", "type III").With("follow_up.treated_rate", "6.2 /h")
            .With("follow_up.similar_supine_share", "yes").With("therapy", "[{ id: oa, kind: oral appliance, start: 2026-06-10, outcome: continued }, { others: no, reviewed_by: billing staff }]");
        var live = new Assessor(Rules.Library).Open(text.Read(), Rules.Date);
        live.Assessment.Of("follow-up.response").Single().Standing.ShouldBe(Standing.Met);

        live.Assessment.Of("follow-up.response").Single().Night.ShouldBeNull();
        live.UpdateNight(0, Number("rei_4.events", 80), Fact.Absent(Rules.Library.Vocabulary.Find("rei_4.printed")!));

        live.Assessment.Of("follow-up.response").Single().Standing.ShouldBe(Standing.NotMet);
        live.Update(Number("treated_rate", 5));
        live.Assessment.Of("follow-up.response").Single().Standing.ShouldBe(Standing.Met);
    }

    [Fact]
    public void Update_WithTheDocumentsItHasAlready_EvaluatesNothing()
    {
        var live = Open(CaseText.Complete);
        var documents = live.Case.Facts.RecordsOf(Few.Vocabulary.Record("documents")!);

        live.Update(documents with { Items = [.. documents.Items] });

        live.Evaluated.ShouldBeEmpty();
    }

    [Fact]
    public void Update_ToAChildAndBack_RefusesAndGivesEverythingBack()
    {
        var live = Open(CaseText.Complete);
        var before = Print.Of(live.Assessment);

        live.Update(Number("age", 17));
        live.Assessment.Refusal.ShouldNotBeNull();
        live.Assessment.Findings.ShouldHaveSingleItem();

        live.Update(Fact.Known(Definition("age"), new NumberValue(Interval.Exactly(52)), Provenance.Entered, "52 years"));
        live.Assessment.Refusal.ShouldBeNull();
        Print.Of(live.Assessment).ShouldBe(before);
    }

    [Fact]
    public void Update_WithAFactOfANight_IsRefused() =>
        Should.Throw<ArgumentException>(() => Open(CaseText.Complete).Update(Number("spo2_mean", 80)));

    // The rules were selected by payer and item; findings under the old ones would be those of another payer.
    [Fact]
    public void Update_OfThePayer_IsRefusedAndChangesNothing()
    {
        var live = Open(CaseText.Complete);
        var before = Print.Of(live.Assessment);
        var payer = live.Case.Facts.Entered.Single(fact => fact.Definition.At == "coverage.payer");

        Should.Throw<ArgumentException>(() => live.Update(payer with { Value = new ChoiceValue("other") }));

        live.Case.Payer.ShouldBe("medicare");
        Print.Of(live.Assessment).ShouldBe(before);
    }

    [Fact]
    public void Update_OfTheDateOfService_IsSeenInTheAssessment()
    {
        var live = Open(CaseText.Complete);
        var service = live.Case.Facts.Entered.Single(fact => fact.Definition.At == "coverage.service_date");

        live.Update(service with { Value = new DateValue(new DateOnly(2026, 8, 9)) });

        live.Assessment.ServiceDate.ShouldBe(new DateOnly(2026, 8, 9));
    }

    [Fact]
    public void UpdateNight_WithAFactOfTheCase_IsRefused() =>
        Should.Throw<ArgumentException>(() => Open(CaseText.Complete).UpdateNight(0, Number("neck", 40)));

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void UpdateNight_OfANightThatIsNotThere_IsRefused(int night) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Open(CaseText.Complete).UpdateNight(night, Number("spo2_mean", 80)));

    // The criteria of the selection that read a fact, by their own account.
    private static IEnumerable<string> Readers(string fact) => Few.InForce(Rules.Date, "medicare", "pap").Criteria
        .Where(criterion => criterion.ReadsFacts.Contains(Definition(fact).Slot)).Select(criterion => criterion.Id);

    private static LiveAssessment Open(CaseText text) => new Assessor(Few).Open(Rules.Read(text.Yaml, Few), Rules.Date);

    private static FactDefinition Definition(string id) => Few.Vocabulary.Find(id)!;

    private static Fact Number(string id, decimal value) => Fact.Known(Definition(id), new NumberValue(Interval.Exactly(value)), Provenance.Entered);

    private static Fact YesNo(string id, bool value) => Fact.Known(Definition(id), new YesNoValue(value), Provenance.Entered);
}

using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>Medicare coverage of a custom oral appliance: L33611, read through L28620, and A52512. The night is that of 2026-06-03.</summary>
public sealed class OralApplianceTests
{
    private const string Ruleset = "medicare-oral-appliance";

    private const string SignedOrder = "kind: order, item: oral appliance, author: physician, signed: yes";

    // The report is of 2026-06-08, its review of 2026-06-10, the order of 2026-06-12.
    private static readonly CaseText Complete = CaseText.Complete.Open()
        .With("coverage.item", "oral appliance").With("coverage.pap_contraindicated", "no")
        .With("coverage.appliance_code", "E0486").With("coverage.appliance_listed", "yes")
        .With("coverage.appliance_custom_advancement", "yes").With("coverage.appliance_fixed_hinge", "yes")
        .With("coverage.appliance_beyond_front_teeth", "yes").With("coverage.appliance_fine_adjustment", "yes")
        .With("coverage.appliance_keeps_setting", "yes").With("coverage.appliance_holds_jaw", "yes")
        .With("coverage.appliance_no_later_visits", "yes")
        .With("coverage.appliance_provided_by_dentist", "yes").With("coverage.appliance_billed_by_dentist", "yes")
        .With("coverage.appliance_dentist_enrolled", "yes")
        .With("nights.dentist_handled_test", "no").With("nights.report_reviewed_on", "2026-06-10")
        .Document($"id: appliance-order, {SignedOrder}, date: 2026-06-12")
        .Closed();

    private static readonly CaseText Night = Complete.WithoutIndices().Without("nights.monitoring_time");

    private static readonly CaseText WithoutEvaluation = Complete.WithoutDocuments("clinical evaluation");

    private static readonly CaseText WithoutTestOrder = Complete.WithoutDocuments("test order");

    private static readonly CaseText WithoutOrder = Complete.WithoutDocuments("order");

    private static readonly Dictionary<(string Criterion, string Question), CaseText> Examples = new()
    {
        [("oral.evaluation-before-test", "x-13")] = Evaluation("date: 2026-05-20, author: physician, in_person: no, telehealth: yes, signed: yes"),
        [("oral.evaluation-before-test", "same-day")] = Evaluation("date: 2026-06-03, author: physician, in_person: yes, telehealth: no, signed: yes"),
        [("oral.listed-condition", "x-18")] = Unlisted(Complete).With("intake.symptoms.fatigue", "yes"),
        [("oral.sleep-test", "x-01")] = Rate(145, "10 h"),
        [("oral.sleep-test", "x-03")] = Rate(29, "1 h 50 min"),
        [("oral.sleep-test", "x-04")] = Rate(29, "4 h").With("nights.recording_in_fragments", "yes"),
        [("oral.sleep-test", "x-16")] = Rate(301, "10 h"),
        [("oral.sleep-test", "third-route-events")] = NotTolerated(Rate(29, "50 min")),
        [("oral.sleep-test", "denominator")] = Night.With("nights.recording_time", "6 h 1 min").Index("index: REI, hypopnea: 4 %, events: 90, over: 6 h"),
        [("oral.test-order", "same-day")] = WithoutTestOrder.Document("id: test-order, kind: test order, date: 2026-06-03, author: physician"),
    };

    public static TheoryData<string, string> Questions
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var (criterion, question) in Examples.Keys)
            {
                data.Add(criterion, question);
            }

            return data;
        }
    }

    // The whole.

    [Fact]
    public void CompleteCase_UnderTheAppliancePolicy_LeavesNothingOpen()
    {
        var findings = Complete.Index("index: payer RDI, hypopnea: 4 %, per_hour: 16.7, events: 120, over: 7 h 12 min").Filled().Assess();

        findings.Assessment.Problems.ShouldBeEmpty();
        findings.Assessment.Findings.ShouldAllBe(finding => finding.Standing != Standing.Undetermined || finding.OnlyAsksAboutDocuments());
        findings.Of("oral.coverage").ShouldBe(Standing.Met);
        findings.Of("oral.same-or-similar").ShouldBe(Standing.NotMet);
    }

    [Fact]
    public void EmptyCase_UnderTheAppliancePolicy_DecidesNothingAndSaysWhatToAsk()
    {
        var findings = CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "oral appliance").Assess();

        var coverage = findings.Assessment.Findings.Where(finding => finding.Criterion.Ruleset.Function == RulesetFunction.Coverage).ToArray();
        coverage.Length.ShouldBeGreaterThan(20);
        coverage.ShouldAllBe(finding => finding.Standing == Standing.Undetermined);
        coverage.Where(finding => finding.Criterion.Shown is Shown.Always or Shown.AtTheTop).SelectMany(finding => finding.Missing).ShouldAllBe(fact => fact.Ask.Length > 0 && fact.Owner.Length > 0);
    }

    [Fact]
    public void Assessment_ForOneItem_HoldsNoFindingOfTheOther()
    {
        Complete.Assess().Assessment.Findings.ShouldNotContain(finding => finding.Criterion.Ruleset.Id == "medicare-pap");
        CaseText.Complete.Assess().Assessment.Findings.ShouldNotContain(finding => finding.Criterion.Ruleset.Id == Ruleset);
    }

    // Source: L28620 A-B and L33611 A-D: any one that is missing denies the claim.
    [Theory]
    [InlineData("nights.device_cleared", "no", Standing.NotMet)]
    [InlineData("nights.device_cleared", null, Standing.Undetermined)]
    [InlineData("nights.local_test_policy_met", "no", Standing.NotMet)]
    [InlineData("nights.local_test_policy_met", null, Standing.Undetermined)]
    [InlineData("nights.test_provider_qualifies", "no", Standing.NotMet)]
    [InlineData("nights.test_provider_qualifies", null, Standing.Undetermined)]
    [InlineData("nights.supplier_handled_test", "yes", Standing.NotMet)]
    [InlineData("nights.dentist_handled_test", "yes", Standing.NotMet)]
    [InlineData("nights.channels", "[oximetry]", Standing.NotMet)]
    [InlineData("nights.pap_used", "yes", Standing.NotMet)]
    [InlineData("nights.report_reviewed_on", null, Standing.Undetermined)]
    [InlineData("coverage.appliance_provided_by_dentist", "no", Standing.NotMet)]
    [InlineData("coverage.appliance_billed_by_dentist", "no", Standing.NotMet)]
    [InlineData("coverage.appliance_dentist_enrolled", "no", Standing.NotMet)]
    [InlineData("coverage.appliance_dentist_enrolled", null, Standing.Undetermined)]
    [InlineData("coverage.appliance_code", "E0485", Standing.NotMet)]
    [InlineData("coverage.appliance_fixed_hinge", "no", Standing.NotMet)]
    [InlineData("coverage.appliance_listed", "no", Standing.NotMet)]
    [InlineData("coverage.appliance_listed", null, Standing.Undetermined)]
    public void Coverage_EachCondition_IsNeeded(string place, string? value, Standing expected)
    {
        var findings = Complete.With(place, value).Assess();

        findings.Of("oral.coverage").ShouldBe(expected);
    }

    [Theory]
    [InlineData("clinical evaluation")]
    [InlineData("test order")]
    [InlineData("sleep test report")]
    [InlineData("order")]
    public void Coverage_EachDocument_IsNeeded(string kind)
    {
        Complete.WithoutDocuments(kind).Assess().Of("oral.coverage").ShouldBe(Standing.NotMet);
        Complete.WithoutDocuments(kind).Open().Assess().Of("oral.coverage").ShouldBe(Standing.Undetermined);
    }

    // Teaching the use of the equipment is a criterion of the PAP policy, not of this one.
    [Fact]
    public void Coverage_WithoutAnInstructionRecord_IsMet()
    {
        Complete.WithoutDocuments("instruction record").Assess().Of("oral.coverage").ShouldBe(Standing.Met);
    }

    // Criterion A.

    // Source: L28620 A, and the revision of 2021: in person, before the sleep test.
    [Theory]
    [InlineData("2026-06-02", Standing.Met)]
    [InlineData("2026-06-03", Standing.Undetermined)]
    [InlineData("2026-06-04", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData("2016-06-02", Standing.Met)]
    public void Evaluation_AroundTheNight_MustComeBefore(string date, Standing expected)
    {
        var findings = Evaluation($"date: {date}, author: physician, in_person: yes, telehealth: no, signed: yes").Assess();

        findings.Of("oral.evaluation-before-test").ShouldBe(expected);
        findings.Questions("oral.evaluation-before-test").ShouldBe(date == "2026-06-03" ? ["same-day"] : []);
    }

    // Source: A55426, treating practitioner. The dentist is taken as supplier only.
    [Theory]
    [InlineData("physician", Standing.Met)]
    [InlineData("nurse practitioner", Standing.Met)]
    [InlineData("physician assistant", Standing.Met)]
    [InlineData("clinical nurse specialist", Standing.Met)]
    [InlineData("dentist", Standing.NotMet)]
    [InlineData("supplier", Standing.NotMet)]
    [InlineData("other", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    public void Evaluation_ByEachAuthor_CountsFromTheTreatingPractitioner(string author, Standing expected)
    {
        var findings = Evaluation($"date: 2026-05-20, author: {author}, in_person: yes, telehealth: no, signed: yes").Assess();

        findings.Of("oral.evaluation-before-test").ShouldBe(expected);
        findings["oral.evaluation-before-test"].Cautions.Length.ShouldBe(author == "dentist" ? 1 : 0);
    }

    [Theory]
    [InlineData("in_person: yes, telehealth: no, signed: no", Standing.NotMet, "")]
    [InlineData("in_person: yes, telehealth: no", Standing.Undetermined, "")]
    [InlineData("in_person: no, telehealth: no, signed: yes", Standing.NotMet, "")]
    [InlineData("in_person: no, telehealth: yes, signed: yes", Standing.Undetermined, "x-13")]
    [InlineData("telehealth: no, signed: yes", Standing.Undetermined, "")]
    public void Evaluation_FormAndSignature_AreNeeded(string form, Standing expected, string questions)
    {
        var findings = Evaluation($"date: 2026-05-20, author: physician, {form}").Assess();

        findings.Of("oral.evaluation-before-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("oral.evaluation-before-test")).ShouldBe(questions);
    }

    // Source: summary of revisions of 2021, initial evaluation: expected content.
    [Theory]
    [InlineData("symptoms")]
    [InlineData("sleepiness_scale")]
    [InlineData("exam")]
    [InlineData("neck")]
    [InlineData("bmi")]
    public void EvaluationContent_EachItem_IsLookedForAndGatesNothing(string item)
    {
        string[] items = ["symptoms", "sleepiness_scale", "exam", "neck", "bmi"];
        var content = string.Join(", ", items.Select(known => $"records_{known}: {(known == item ? "no" : "yes")}"));

        var findings = Evaluation($"date: 2026-05-20, author: physician, in_person: yes, telehealth: no, signed: yes, {content}").Assess();

        findings.Of("oral.evaluation-content").ShouldBe(Standing.NotMet);
        findings.Of("oral.coverage").ShouldBe(Standing.Met);
    }

    [Theory]
    [InlineData("intake.neck")]
    [InlineData("intake.epworth_total")]
    public void EvaluationContent_WithoutTheFigureItself_IsOpen(string place)
    {
        Complete.Without(place).Assess().Of("oral.evaluation-content").ShouldBe(Standing.Undetermined);
    }

    // Criterion B.

    // Source: L28620 B.1: 15 or more per hour. 149, 150 and 151 events in ten hours.
    [Theory]
    [InlineData(149, Standing.NotMet)]
    [InlineData(150, Standing.Met)]
    [InlineData(151, Standing.Met)]
    public void FirstRoute_RateAroundFifteen_IsInclusiveBelow(int events, Standing expected)
    {
        var findings = Unlisted(Rate(events, "10 h")).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
    }

    // Source: L28620 B.1: 30 events.
    [Theory]
    [InlineData(29, Standing.NotMet)]
    [InlineData(30, Standing.Met)]
    [InlineData(31, Standing.Met)]
    public void FirstRoute_EventsAroundThirtyOnAShortNight_IsInclusiveBelow(int events, Standing expected)
    {
        var findings = Unlisted(Rate(events, "1 h 50 min")).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
    }

    // Source: L28620 B.2: from 5 to 14 per hour, both included. 49 to 51 and 139 to 141 events in ten hours.
    [Theory]
    [InlineData(49, Standing.NotMet)]
    [InlineData(50, Standing.Met)]
    [InlineData(51, Standing.Met)]
    [InlineData(139, Standing.Met)]
    [InlineData(140, Standing.Met)]
    [InlineData(141, Standing.Undetermined)]
    [InlineData(149, Standing.Undetermined)]
    [InlineData(150, Standing.Met)]
    public void SecondRoute_RateFromFiveToFourteen_HoldsBothEnds(int events, Standing expected)
    {
        var findings = Rate(events, "10 h").Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        findings.Questions("oral.sleep-test").ShouldBe(expected == Standing.Undetermined ? ["x-01"] : []);
    }

    // Source: L28620 B.2: 10 events.
    [Theory]
    [InlineData(9, Standing.NotMet)]
    [InlineData(10, Standing.Met)]
    [InlineData(11, Standing.Met)]
    public void SecondRoute_EventsAroundTenOnAShortNight_IsInclusiveBelow(int events, Standing expected)
    {
        Rate(events, "1 h").Assess().Of("oral.sleep-test").ShouldBe(expected);
    }

    [Fact]
    public void Gap_WithoutAListedItem_IsNotMetByEveryReading()
    {
        var findings = Unlisted(Rate(145, "10 h")).Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.NotMet);
        findings.Questions("oral.sleep-test").ShouldBeEmpty();
    }

    // Source: L28620 B.2: four symptoms and three conditions.
    [Theory]
    [InlineData("symptoms.daytime_sleepiness")]
    [InlineData("symptoms.impaired_cognition")]
    [InlineData("conditions.cognitive_dysfunction")]
    [InlineData("conditions.mood_disorder")]
    [InlineData("symptoms.insomnia_complaint")]
    [InlineData("conditions.insomnia")]
    [InlineData("conditions.hypertension")]
    [InlineData("conditions.ischemic_heart_disease")]
    [InlineData("conditions.coronary_artery_disease")]
    [InlineData("conditions.stroke_history")]
    public void SecondRoute_WithOneListedItemAlone_Qualifies(string item)
    {
        var findings = Unlisted(Rate(60, "6 h")).With($"intake.{item}", "yes").Assess();

        findings.Of("oral.listed-condition").ShouldBe(Standing.Met);
        findings.Of("oral.sleep-test").ShouldBe(Standing.Met);
    }

    [Theory]
    [InlineData("symptoms.habitual_snoring")]
    [InlineData("symptoms.witnessed_apneas")]
    [InlineData("conditions.type_2_diabetes")]
    [InlineData("conditions.atrial_fibrillation")]
    [InlineData("conditions.heart_failure")]
    public void SecondRoute_WithWhatIsNotListed_DoesNotQualify(string item)
    {
        var findings = Unlisted(Rate(60, "6 h")).With($"intake.{item}", "yes").Assess();

        findings.Of("oral.listed-condition").ShouldBe(Standing.NotMet);
        findings.Of("oral.sleep-test").ShouldBe(Standing.NotMet);
    }

    [Theory]
    [InlineData("symptoms.nocturia")]
    [InlineData("symptoms.fatigue")]
    [InlineData("conditions.tia_history")]
    [InlineData("conditions.anxiety_disorder")]
    public void ListedCondition_WithARelatedFindingOnly_IsLeftToAPerson(string item)
    {
        var findings = Unlisted(Rate(60, "6 h")).With($"intake.{item}", "yes").Assess();

        findings.Questions("oral.listed-condition").ShouldBe(["x-18"]);
        findings.Of("oral.sleep-test").ShouldBe(Standing.Undetermined);
    }

    [Fact]
    public void SecondRoute_WithAListedItemUnknown_AsksForIt()
    {
        var findings = Unlisted(Rate(60, "6 h")).With("intake.conditions.hypertension", "unknown").Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("oral.sleep-test").ShouldBe(["hypertension"]);
    }

    // Source: L28620 B.3: above 30 per hour, 30 not included. 299 to 301 events in ten hours.
    [Theory]
    [InlineData(299, false, Standing.Met)]
    [InlineData(300, false, Standing.Met)]
    [InlineData(301, false, Standing.Undetermined)]
    [InlineData(299, true, Standing.Met)]
    [InlineData(300, true, Standing.Met)]
    [InlineData(301, true, Standing.Met)]
    public void ThirdRoute_RateAroundThirty_NeedsPapToBeOutOfTheQuestionOnlyAbove(int events, bool tried, Standing expected)
    {
        var text = Rate(events, "10 h");

        var findings = (tried ? NotTolerated(text) : text).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        findings.Questions("oral.sleep-test").ShouldBe(expected == Standing.Undetermined ? ["x-16"] : []);
    }

    // A printed 30.0 stands for 29.95 up to 30.05, on both sides of 30.
    [Fact]
    public void ThirdRoute_ThirtyOnlyPrintedWithoutPap_AsksForTheCount()
    {
        var findings = Night.With("nights.recording_time", "10 h").Index("index: payer RDI, hypopnea: 4 %, per_hour: 30.0").Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Questions("oral.sleep-test").ShouldBeEmpty();
        findings.Missing("oral.sleep-test").ShouldContain("rdi_payer_4.events");
    }

    // Source: L28620 B.3 (not tolerated) and a restatement (contraindicated). Above 30 per hour.
    [Theory]
    [InlineData("not tolerated", "no", Standing.Met, "")]
    [InlineData("not effective", "no", Standing.Undetermined, "x-16")]
    [InlineData("declined", "no", Standing.Undetermined, "x-16")]
    [InlineData("continued", "no", Standing.Undetermined, "x-16")]
    [InlineData("stopped for another reason", "no", Standing.Undetermined, "x-16")]
    [InlineData("unknown", "no", Standing.Undetermined, "")]
    [InlineData("declined", "yes", Standing.Met, "")]
    [InlineData("declined", "unknown", Standing.Undetermined, "")]
    public void ThirdRoute_ByOutcomeOfPap_CountsIntoleranceAndContraindication(string outcome, string contraindicated, Standing expected, string questions)
    {
        var findings = Trial(Rate(340, "10 h"), $"start: 2023-02-06, outcome: {outcome}").With("coverage.pap_contraindicated", contraindicated).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("oral.sleep-test")).ShouldBe(questions);
    }

    // A list of trials that nobody closed is no record that PAP was never tried.
    [Fact]
    public void ThirdRoute_WithTheListOfTrialsOpen_AsksInsteadOfPuttingTheQuestion()
    {
        var findings = Rate(340, "10 h").With("therapy", null).Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Questions("oral.sleep-test").ShouldBeEmpty();
        findings["oral.sleep-test"].Missing.ShouldHaveSingleItem().Ask.ShouldStartWith("Does the record say that the patient could not tolerate PAP");
    }

    // Up to 30 per hour a trial of PAP is not asked for, so what is unknown of it changes nothing.
    [Fact]
    public void FirstRoute_WithNothingKnownOfPap_IsMetUpToThirty()
    {
        var findings = Rate(300, "10 h").With("therapy", null).With("coverage.pap_contraindicated", null).Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Met);
    }

    // 29 and 30 events in 50 min are 34.8 and 36 per hour.
    [Theory]
    [InlineData(29, true, true, Standing.Undetermined, "third-route-events")]
    [InlineData(29, true, false, Standing.Undetermined, "third-route-events")]
    [InlineData(30, true, false, Standing.Met, "")]
    [InlineData(29, false, true, Standing.Undetermined, "x-03")]
    [InlineData(29, false, false, Standing.NotMet, "")]
    [InlineData(30, false, true, Standing.Undetermined, "x-16")]
    public void ShortNight_AboveThirty_IsDecidedOnlyWithThirtyEvents(int events, bool tried, bool listed, Standing expected, string questions)
    {
        var text = Rate(events, "50 min");
        text = tried ? NotTolerated(text) : text;

        var findings = (listed ? text : Unlisted(text)).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("oral.sleep-test")).ShouldBe(questions);
    }

    // 27, 28 and 29 events in 1 h 59 min are 13.6, 14.1 and 14.6 per hour; 9 and 10 in half an hour are 18 and 20.
    [Theory]
    [InlineData(27, "1 h 59 min", Standing.Met, "")]
    [InlineData(28, "1 h 59 min", Standing.Undetermined, "x-01 x-03")]
    [InlineData(30, "1 h 59 min", Standing.Met, "")]
    [InlineData(28, "2 h", Standing.Met, "")]
    [InlineData(29, "2 h", Standing.Undetermined, "x-01")]
    [InlineData(9, "30 min", Standing.NotMet, "")]
    [InlineData(10, "30 min", Standing.Undetermined, "x-03")]
    public void ShortNight_AboveFourteenWithFewEvents_IsLeftToAPerson(int events, string hours, Standing expected, string questions)
    {
        var findings = Rate(events, hours).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("oral.sleep-test")).ShouldBe(questions);
    }

    [Theory]
    [InlineData(29, "yes", Standing.Undetermined)]
    [InlineData(30, "yes", Standing.Met)]
    [InlineData(29, "no", Standing.Met)]
    [InlineData(29, null, Standing.Undetermined)]
    public void Fragments_OfANightWithFewEvents_AreLeftToAPerson(int events, string? fragments, Standing expected)
    {
        var findings = Rate(events, "4 h").With("nights.recording_in_fragments", fragments).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        findings.Questions("oral.sleep-test").ShouldBe(fragments == "yes" && events == 29 ? ["x-04"] : []);
    }

    [Theory]
    [InlineData(90, "6 h", true, Standing.Met)]
    [InlineData(90, "6 h 1 min", true, Standing.Undetermined)]
    [InlineData(90, "6 h 25 min", true, Standing.Undetermined)]
    [InlineData(90, "6 h 26 min", true, Standing.Met)]
    [InlineData(90, "6 h 26 min", false, Standing.Undetermined)]
    [InlineData(30, "6 h", true, Standing.Met)]
    [InlineData(30, "6 h 1 min", true, Standing.Undetermined)]
    [InlineData(30, "6 h 1 min", false, Standing.NotMet)]
    public void Denominator_OnDifferentSidesOfAThreshold_IsLeftToAPerson(int events, string recorded, bool listed, Standing expected)
    {
        var text = Night.With("nights.recording_time", recorded).Index($"index: REI, hypopnea: 4 %, events: {events}, over: 6 h");

        var findings = (listed ? text : Unlisted(text)).Assess();

        findings.Of("oral.sleep-test").ShouldBe(expected);
        findings.Questions("oral.sleep-test").ShouldBe(expected == Standing.Undetermined ? ["denominator"] : []);
    }

    // 181 events: 30.2 per hour of six; 30.0 and 30.1 of the recording.
    [Theory]
    [InlineData("6 h 1 min", false)]
    [InlineData("6 h 2 min", true)]
    public void Denominator_AroundThirty_CarriesACaution(string recorded, bool expected)
    {
        var findings = NotTolerated(Night.With("nights.recording_time", recorded).Index("index: REI, hypopnea: 4 %, events: 181, over: 6 h")).Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Met);
        findings["oral.sleep-test"].Cautions.Any(caution => caution.StartsWith("The rate is above 30 by the report's hours", StringComparison.Ordinal)).ShouldBe(expected);
    }

    [Theory]
    [InlineData("yes", Standing.NotMet)]
    [InlineData("no", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void Rate_UnderPap_DoesNotQualify(string? papUsed, Standing expected)
    {
        NotTolerated(Rate(340, "10 h")).With("nights.pap_used", papUsed).Assess().Of("oral.sleep-test").ShouldBe(expected);
    }

    [Fact]
    public void Rate_ByTheThreePercentRuleOnly_StandsInForNothing()
    {
        var findings = NotTolerated(Night.Index("index: REI, hypopnea: 3 %, events: 240, over: 6 h")).Assess();

        findings.Of("oral.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("oral.sleep-test").ShouldContain("payer_rate");
    }

    [Theory]
    [InlineData("1 h 59 min", Standing.NotMet)]
    [InlineData("2 h", Standing.Met)]
    [InlineData("2 h 1 min", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void TwoHours_AroundTheMark_IsInclusiveBelow(string? hours, Standing expected)
    {
        var text = hours is null ? Night.Index("index: REI, hypopnea: 4 %, events: 40") : Rate(40, hours);

        text.Assess().Of("oral.two-hours").ShouldBe(expected);
    }

    // Source: NCD 240.4.1 A and B.1-4.
    [Theory]
    [InlineData("type II", "[eeg, eog, chin_emg, ecg, airflow, thoracic_effort, oximetry]", Standing.Met)]
    [InlineData("type II", "[eeg, eog, ecg, oximetry]", Standing.NotMet)]
    [InlineData("type III", "[airflow, thoracic_effort, heart_rate, oximetry]", Standing.Met)]
    [InlineData("type III", "[thoracic_effort, heart_rate, oximetry]", Standing.NotMet)]
    [InlineData("type IV", "[airflow, oximetry, snore]", Standing.Met)]
    [InlineData("type IV", "[oximetry, heart_rate, position]", Standing.NotMet)]
    [InlineData("PAT set", "[pat, oximetry, actigraphy]", Standing.Met)]
    [InlineData("PAT set", "[pat, oximetry]", Standing.NotMet)]
    [InlineData("type III", null, Standing.Undetermined)]
    public void CoveredTest_EachSetOfChannels_IsJudgedByTheChannels(string recorder, string? channels, Standing expected)
    {
        var findings = Complete.With("nights.recorder", recorder).With("nights.channels", channels).Assess();

        findings.Of("oral.covered-test").ShouldBe(expected);
    }

    // Source: 42 CFR 410.32(a) and NCD 240.4 B.4: ordered beforehand by the treating practitioner.
    [Theory]
    [InlineData("2026-06-02", "physician", Standing.Met)]
    [InlineData("2026-06-03", "physician", Standing.Undetermined)]
    [InlineData("2026-06-04", "physician", Standing.NotMet)]
    [InlineData("unknown", "physician", Standing.Undetermined)]
    [InlineData("2026-06-02", "nurse practitioner", Standing.Met)]
    [InlineData("2026-06-02", "dentist", Standing.NotMet)]
    [InlineData("2026-06-02", "supplier", Standing.NotMet)]
    public void TestOrder_AroundTheNight_MustComeBefore(string date, string author, Standing expected)
    {
        var findings = WithoutTestOrder.Document($"id: test-order, kind: test order, date: {date}, author: {author}").Assess();

        findings.Of("oral.test-order").ShouldBe(expected);
        findings.Questions("oral.test-order").ShouldBe(date == "2026-06-03" ? ["same-day"] : []);
    }

    // Source: A55426, records and their timing.
    [Theory]
    [InlineData("date: 2026-06-02, signed: yes", Standing.NotMet)]
    [InlineData("date: 2026-06-03, signed: yes", Standing.Met)]
    [InlineData("date: 2026-06-04, signed: yes", Standing.Met)]
    [InlineData("date: 2026-06-04, signed: no", Standing.NotMet)]
    [InlineData("date: 2026-06-04", Standing.Undetermined)]
    [InlineData("signed: yes", Standing.Undetermined)]
    public void TestReport_AroundTheNight_IsSignedAndOfThatNightOrLater(string report, Standing expected)
    {
        Report(report).Assess().Of("oral.test-report").ShouldBe(expected);
    }

    // Source: A52512: no part by an equipment supplier, hospitals and laboratories excepted. A dentist enrolled as supplier is one.
    [Theory]
    [InlineData("no", "no", "yes", "no", "type III", Standing.Met)]
    [InlineData("no", "yes", "yes", "no", "type III", Standing.NotMet)]
    [InlineData("no", "yes", "no", "no", "type III", Standing.Met)]
    [InlineData("no", "yes", null, "no", "type III", Standing.Undetermined)]
    [InlineData("no", null, "yes", "no", "type III", Standing.Undetermined)]
    [InlineData("no", null, "no", "no", "type III", Standing.Met)]
    [InlineData("no", "yes", "yes", "yes", "type III", Standing.Met)]
    [InlineData("no", "yes", "yes", "no", "type I", Standing.Met)]
    [InlineData("yes", "no", "yes", "no", "type III", Standing.NotMet)]
    [InlineData("yes", "no", "yes", "yes", "type III", Standing.Met)]
    [InlineData("yes", "no", "yes", "no", "type I", Standing.Met)]
    [InlineData("yes", "no", "yes", null, "type III", Standing.Undetermined)]
    [InlineData(null, "no", "yes", "no", "type III", Standing.Undetermined)]
    public void SupplierPart_ByAnybody_RulesTheHomeTestOut(
        string? supplier, string? dentist, string? enrolled, string? hospital, string recorder, Standing expected)
    {
        var findings = Complete.With("nights.supplier_handled_test", supplier).With("nights.dentist_handled_test", dentist)
            .With("coverage.appliance_dentist_enrolled", enrolled).With("nights.supplier_is_certified_hospital", hospital)
            .With("nights.recorder", recorder).Assess();

        findings.Of("oral.no-supplier-part").ShouldBe(expected);
    }

    // Criterion C.

    // Source: L33611 C: ordered after review of the sleep test report. The review is of 2026-06-10.
    [Theory]
    [InlineData("2026-06-02", Standing.NotMet)]
    [InlineData("2026-06-09", Standing.NotMet)]
    [InlineData("2026-06-10", Standing.Met)]
    [InlineData("2026-06-11", Standing.Met)]
    [InlineData("unknown", Standing.Undetermined)]
    public void Order_AroundTheReview_ComesOnThatDayOrLater(string date, Standing expected)
    {
        WithoutOrder.Document($"id: order, {SignedOrder}, date: {date}").Assess().Of("oral.order").ShouldBe(expected);
    }

    // Source: L33611 C. The report is of 2026-06-08, the order of 2026-06-12, the night of 2026-06-03.
    [Theory]
    [InlineData("2026-06-02", Standing.NotMet)]
    [InlineData("2026-06-07", Standing.NotMet)]
    [InlineData("2026-06-08", Standing.Met)]
    [InlineData("2026-06-09", Standing.Met)]
    [InlineData("2026-06-12", Standing.Met)]
    [InlineData("2026-06-13", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void Order_ReviewOfTheReport_LiesBetweenReportAndOrder(string? reviewed, Standing expected)
    {
        var findings = Complete.With("nights.report_reviewed_on", reviewed).Assess();

        findings.Of("oral.order").ShouldBe(expected);
        findings.Missing("oral.order").ShouldBe(reviewed is null ? ["report_reviewed_on"] : []);
    }

    // A report of an earlier night is no reason to count a review that came before this one.
    [Theory]
    [InlineData("2026-06-02", Standing.NotMet)]
    [InlineData("2026-06-03", Standing.Met)]
    public void Order_ReviewAroundTheNight_IsNotOlderThanTheNight(string reviewed, Standing expected)
    {
        Report("date: 2026-06-01, signed: yes").With("nights.report_reviewed_on", reviewed).Assess().Of("oral.order").ShouldBe(expected);
    }

    // An order older than the night cannot follow its report, whenever that was reviewed.
    [Theory]
    [InlineData("2026-06-02", Standing.NotMet)]
    [InlineData("2026-06-03", Standing.Undetermined)]
    public void Order_WithTheReviewUnknown_IsSettledOnlyBeforeTheNight(string date, Standing expected)
    {
        var findings = WithoutOrder.Document($"id: order, {SignedOrder}, date: {date}").With("nights.report_reviewed_on", null).Assess();

        findings.Of("oral.order").ShouldBe(expected);
    }

    // Source: A55426, treating practitioner. The dentist is taken as supplier only.
    [Theory]
    [InlineData("physician", Standing.Met)]
    [InlineData("nurse practitioner", Standing.Met)]
    [InlineData("physician assistant", Standing.Met)]
    [InlineData("clinical nurse specialist", Standing.Met)]
    [InlineData("dentist", Standing.NotMet)]
    [InlineData("supplier", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    public void Order_ByEachAuthor_CountsFromTheTreatingPractitioner(string author, Standing expected)
    {
        var findings = WithoutOrder.Document($"id: order, kind: order, item: oral appliance, author: {author}, signed: yes, date: 2026-06-12").Assess();

        findings.Of("oral.order").ShouldBe(expected);
        findings["oral.order"].Cautions.Length.ShouldBe(author == "dentist" ? 1 : 0);
    }

    // Source: PIM 3.3.2.4: an unsigned order is disregarded. An order for PAP is none for an appliance.
    [Theory]
    [InlineData("item: oral appliance, signed: no", Standing.NotMet)]
    [InlineData("item: oral appliance", Standing.Undetermined)]
    [InlineData("item: oral appliance, signed: 2026-06-12", Standing.Met)]
    [InlineData("item: pap, signed: yes", Standing.NotMet)]
    [InlineData("signed: yes", Standing.Undetermined)]
    public void Order_SignatureAndItem_AreNeeded(string entry, Standing expected)
    {
        WithoutOrder.Document($"id: order, kind: order, author: physician, date: 2026-06-12, {entry}").Assess().Of("oral.order").ShouldBe(expected);
    }

    // Source: L33611 C: the one who orders may differ from the one who evaluated.
    [Fact]
    public void Order_ByAnotherPractitionerThanTheEvaluation_Counts()
    {
        var findings = WithoutOrder.Document("id: order, kind: order, item: oral appliance, author: nurse practitioner, signed: yes, date: 2026-06-12").Assess();

        findings.Of("oral.coverage").ShouldBe(Standing.Met);
    }

    // Criterion D.

    // Source: L33611 D.
    [Theory]
    [InlineData("yes", "yes", Standing.Met)]
    [InlineData("yes", "no", Standing.NotMet)]
    [InlineData("no", "yes", Standing.NotMet)]
    [InlineData("yes", null, Standing.Undetermined)]
    [InlineData(null, "yes", Standing.Undetermined)]
    public void Dentist_ProvidesAndBills_BothAreNeeded(string? provided, string? billed, Standing expected)
    {
        var findings = Complete.With("coverage.appliance_provided_by_dentist", provided).With("coverage.appliance_billed_by_dentist", billed).Assess();

        findings.Of("oral.dentist").ShouldBe(expected);
    }

    [Theory]
    [InlineData("yes", Standing.Met)]
    [InlineData("no", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void DentistEnrolled_YesNoOrUnknown_FollowsTheFact(string? enrolled, Standing expected)
    {
        Complete.With("coverage.appliance_dentist_enrolled", enrolled).Assess().Of("oral.dentist-enrolled").ShouldBe(expected);
    }

    // The appliance.

    // Source: L33611 (E0485) and A52512 (not covered), both as far as seen.
    [Theory]
    [InlineData("E0486", Standing.Met, "")]
    [InlineData("E0485", Standing.NotMet, "E0485, a prefabricated appliance")]
    [InlineData("K1027", Standing.NotMet, "No coverage policy speaks of K1027")]
    [InlineData("A9270", Standing.NotMet, "A9270 stands for")]
    [InlineData("other", Standing.NotMet, "")]
    [InlineData(null, Standing.Undetermined, "")]
    public void ProcedureCode_EachCode_IsCoveredOnlyAsE0486(string? code, Standing expected, string caution)
    {
        var findings = Complete.With("coverage.appliance_code", code).Assess();

        findings.Of("oral.procedure-code").ShouldBe(expected);
        string.Join(' ', findings["oral.procedure-code"].Cautions).ShouldStartWith(caution);
        findings["oral.procedure-code"].Cautions.Length.ShouldBe(caution.Length > 0 ? 1 : 0);
    }

    // Source: A52512, coding, and the coding bulletin of 2012: each feature.
    [Theory]
    [InlineData("custom_advancement")]
    [InlineData("fixed_hinge")]
    [InlineData("beyond_front_teeth")]
    [InlineData("fine_adjustment")]
    [InlineData("keeps_setting")]
    [InlineData("holds_jaw")]
    [InlineData("no_later_visits")]
    public void DeviceFeatures_EachFeature_IsNeeded(string feature)
    {
        var lacking = Complete.With($"coverage.appliance_{feature}", "no").Assess();
        lacking.Of("oral.device-features").ShouldBe(Standing.NotMet);
        lacking["oral.device-features"].Cautions.Length.ShouldBe(feature == "no_later_visits" ? 1 : 0);

        var unknown = Complete.With($"coverage.appliance_{feature}", null).Assess();
        unknown.Of("oral.device-features").ShouldBe(Standing.Undetermined);
        unknown.Missing("oral.device-features").ShouldBe([$"appliance_{feature}"]);
    }

    // Source: A52512, coding verification.
    [Theory]
    [InlineData("yes", Standing.Met)]
    [InlineData("no", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void CodingVerified_YesNoOrUnknown_FollowsTheFact(string? listed, Standing expected)
    {
        Complete.With("coverage.appliance_listed", listed).Assess().Of("oral.coding-verified").ShouldBe(expected);
    }

    // Same or similar equipment.

    // Source: trade press of 2018: PAP paid within five years. The date of service is 2026-07-01.
    [Theory]
    [InlineData("paid_by_medicare: yes, last_paid: 2021-06-30", Standing.NotMet)]
    [InlineData("paid_by_medicare: yes, last_paid: 2021-07-01", Standing.Met)]
    [InlineData("paid_by_medicare: yes, last_paid: 2021-07-02", Standing.Met)]
    [InlineData("paid_by_medicare: yes, last_paid: 2026-07-01", Standing.Met)]
    [InlineData("paid_by_medicare: yes, last_paid: 2026-07-02", Standing.NotMet)]
    [InlineData("paid_by_medicare: yes", Standing.Undetermined)]
    [InlineData("paid_by_medicare: no", Standing.NotMet)]
    [InlineData("last_paid: 2023-06-06", Standing.Undetermined)]
    public void SameOrSimilar_PapPaidAroundFiveYears_IsAFlagAndGatesNothing(string paid, Standing expected)
    {
        var findings = Trial(Complete, $"start: 2019-02-06, outcome: declined, {paid}").Assess();

        findings.Of("oral.same-or-similar").ShouldBe(expected);
        findings.Of("oral.coverage").ShouldBe(Standing.Met);
        (findings["oral.same-or-similar"].ReadFirst is not null).ShouldBe(expected == Standing.Met);
    }

    [Fact]
    public void SameOrSimilar_WithTheListOfTrialsOpen_IsAskedFor()
    {
        var findings = Complete.With("therapy", null).Assess();

        findings.Of("oral.same-or-similar").ShouldBe(Standing.Undetermined);
        findings["oral.same-or-similar"].Missing.ShouldHaveSingleItem().Ask.ShouldStartWith("Did Medicare pay for PAP");
    }

    [Fact]
    public void SameOrSimilar_WithoutADateOfService_IsAskedFor()
    {
        var findings = Trial(Complete, "paid_by_medicare: yes, last_paid: 2023-06-06").Without("coverage.service_date").Assess();

        findings.Of("oral.same-or-similar").ShouldBe(Standing.Undetermined);
        findings.Missing("oral.same-or-similar").ShouldBe(["coverage.service_date"]);
    }

    // The check denies the very patient for whom the third route was made.
    [Theory]
    [InlineData("not tolerated", 2)]
    [InlineData("declined", 1)]
    public void SameOrSimilar_AfterIntolerance_SaysThatTextAndCheckCollide(string outcome, int cautions)
    {
        var findings = Trial(Complete, $"outcome: {outcome}, paid_by_medicare: yes, last_paid: 2023-06-06").Assess();

        findings["oral.same-or-similar"].Cautions.Length.ShouldBe(cautions);
    }

    // What the text leaves open.

    [Fact]
    public void Examples_OfAllQuestions_LeaveNoneOut()
    {
        var rules = Rules.Library.InForce(Rules.Date, "medicare", "oral appliance");

        var shipped = rules.Criteria.Where(criterion => criterion.Ruleset.Id == Ruleset)
            .SelectMany(criterion => criterion.Silent.Select(question => (criterion.Id, question.Id)));

        shipped.ShouldBe(Examples.Keys, ignoreOrder: true);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Question_ThatArises_LeavesTheFindingOpenWithItsReadings(string criterion, string question)
    {
        var findings = Examples[(criterion, question)].Assess();

        findings.Of(criterion).ShouldBe(Standing.Undetermined);
        findings.Questions(criterion).ShouldBe([question]);
        findings.Missing(criterion).ShouldBeEmpty();
        findings[criterion].Silent[0].Readings.Length.ShouldBeGreaterThanOrEqualTo(2);
        findings.Of("oral.coverage").ShouldNotBe(Standing.NotMet);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Question_AnsweredByAnOverlay_IsDecidedAndSaysByWhom(string criterion, string question)
    {
        var met = Examples[(criterion, question)].Assess(All("met"));
        var notMet = Examples[(criterion, question)].Assess(All("not met"));

        met.Of(criterion).ShouldBe(Standing.Met);
        notMet.Of(criterion).ShouldBe(Standing.NotMet);
        met[criterion].DecidedLocally.ShouldHaveSingleItem().Answer!.By.ShouldBe("nobody, 2026-01-10");
    }

    // Each example raises one question only, so one overlay with every answer does for all of them.
    private static Overlay[] All(string answer) =>
        [.. Examples.Keys.Select(key => new Overlay(Ruleset, $"answer: {key.Question}, of: {key.Criterion}, as: {answer}"))];

    private static CaseText Evaluation(string entry) => WithoutEvaluation.Document($"id: note, kind: clinical evaluation, {entry}");

    private static CaseText Report(string entry) => Complete.WithoutDocuments("sleep test report").Document($"id: report, kind: sleep test report, {entry}");

    // By recording time, as the policy defines its rate, so that no second denominator comes in.
    private static CaseText Rate(int events, string hours) =>
        Night.With("nights.recording_time", hours).Index($"index: payer RDI, hypopnea: 4 %, events: {events}, over: {hours}");

    private static CaseText NotTolerated(CaseText text) => Trial(text, "start: 2023-02-06, outcome: not tolerated");

    private static CaseText Trial(CaseText text, string entry) =>
        text.With("therapy", $"[{{ id: trial, kind: PAP, {entry} }}, {{ others: no, reviewed_by: billing staff }}]");

    private static CaseText Unlisted(CaseText text) => text
        .Without("intake.symptoms").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .Without("intake.conditions").With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician");
}

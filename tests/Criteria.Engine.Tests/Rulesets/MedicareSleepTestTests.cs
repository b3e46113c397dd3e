using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>The qualifying sleep test of L33718 R11 and NCD 240.4.</summary>
public sealed class MedicareSleepTestTests
{
    private static readonly CaseText Night = CaseText.Complete.WithoutIndices().Without("nights.monitoring_time");

    private static readonly Overlay ShortNightsOnly = new("medicare-pap", "set: event_minimum, to: only on short nights");

    // Source: L33718 I.B.1: 15 or more per hour. 149, 150 and 151 events in ten hours.
    [Theory]
    [InlineData(149, Standing.NotMet)]
    [InlineData(150, Standing.Met)]
    [InlineData(151, Standing.Met)]
    public void FirstRoute_RateAroundFifteen_IsInclusiveBelow(int events, Standing expected)
    {
        var findings = Unlisted(Rate(events, "10 h")).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // Source: L33718 I.B.1 and definitions: 30 events, never scaled up from a short recording.
    [Theory]
    [InlineData(29, Standing.NotMet)]
    [InlineData(30, Standing.Met)]
    [InlineData(31, Standing.Met)]
    public void FirstRoute_EventsAroundThirtyOnAShortNight_IsInclusiveBelow(int events, Standing expected)
    {
        var findings = Unlisted(Rate(events, "1 h 50 min")).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // Source: L33718 I.B.2: from 5 to 14 per hour, both included. 49 to 51 and 139 to 141 events in ten hours.
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

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // A printed figure with two decimals: 14.01 lies in the gap, 14.00 may lie on either side of 14.
    [Theory]
    [InlineData("4.99", Standing.NotMet)]
    [InlineData("5.01", Standing.Met)]
    [InlineData("13.99", Standing.Met)]
    [InlineData("14.00", Standing.Undetermined)]
    [InlineData("14.01", Standing.Undetermined)]
    [InlineData("14.99", Standing.Undetermined)]
    [InlineData("15.00", Standing.Undetermined)]
    [InlineData("15.01", Standing.Met)]
    public void BothRoutes_RateOnlyPrinted_IsOpenInTheGapAndWhereItStraddles(string printed, Standing expected)
    {
        var findings = Night.With("nights.recording_time", "10 h").Index($"index: payer RDI, hypopnea: 4 %, per_hour: {printed}").Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
        findings.Questions("pap.sleep-test").ShouldBe(printed is "14.01" or "14.99" ? ["x-01"] : []);
    }

    // Source: payer texts say nothing of rounding, so 14.6 printed as 15 is not 15.
    [Fact]
    public void FirstRoute_FifteenPrintedWithoutCount_AsksForTheCount()
    {
        var findings = Unlisted(Night.Index("index: REI, hypopnea: 4 %, per_hour: 15, over: 6 h")).Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.sleep-test").ShouldBe(["rei_4.events"]);
    }

    [Fact]
    public void FirstRoute_FifteenPrintedWithoutCountAndTime_AsksForBoth()
    {
        var findings = Unlisted(Night.Index("index: REI, hypopnea: 4 %, per_hour: 15")).Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.sleep-test").ShouldContain("rei_4.events");
        findings.Missing("pap.sleep-test").ShouldContain("rei_4.time");
    }

    // Source: L33718 I.B.2 and definitions: 10 events with a listed symptom or condition.
    [Theory]
    [InlineData(9, Standing.NotMet)]
    [InlineData(10, Standing.Met)]
    [InlineData(11, Standing.Met)]
    public void SecondRoute_EventsAroundTenOnAShortNight_IsInclusiveBelow(int events, Standing expected)
    {
        var findings = Rate(events, "1 h").Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // For unrounded rates both readings of the event minimum give the same result.
    [Theory]
    [InlineData(29, "1 h 50 min")]
    [InlineData(30, "1 h 50 min")]
    [InlineData(30, "2 h")]
    [InlineData(9, "1 h")]
    [InlineData(10, "1 h")]
    [InlineData(10, "2 h")]
    [InlineData(150, "10 h")]
    [InlineData(149, "10 h")]
    public void EventMinimum_AlwaysOrOnShortNightsOnly_GivesTheSameForExactRates(int events, string hours)
    {
        var always = Rate(events, hours).Assess();
        var shortOnly = Rate(events, hours).Assess(ShortNightsOnly);

        shortOnly.Of("pap.sleep-test").ShouldBe(always.Of("pap.sleep-test"));
    }

    // Source: NCD 240.4 B.6: two hours.
    [Theory]
    [InlineData("1 h 59 min", Standing.NotMet, 1)]
    [InlineData("2 h", Standing.Met, 0)]
    [InlineData("2 h 1 min", Standing.Met, 0)]
    [InlineData(null, Standing.Undetermined, 0)]
    public void TwoHours_AroundTheMark_IsInclusiveBelow(string? hours, Standing expected, int cautions)
    {
        var text = hours is null ? Night.Index("index: REI, hypopnea: 4 %, events: 40") : Rate(40, hours);

        var findings = text.Assess();

        findings.Of("pap.two-hours").ShouldBe(expected);
        findings["pap.two-hours"].Cautions.Length.ShouldBe(cautions);
    }

    [Fact]
    public void Rate_ByTheThreePercentRuleOnly_StandsInForNothing()
    {
        var findings = Night.Index("index: REI, hypopnea: 3 %, events: 200, over: 6 h").Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.sleep-test").ShouldContain("payer_rate");
        findings["pap.sleep-test"].Cautions.ShouldContain(
            "4 % not supplied. The policy counts only falls in saturation of at least 4 %. An index by another rule cannot stand in for it, and none is worked out from another.");
    }

    // Source: L33718 definitions: effort-related arousals count in neither index.
    [Fact]
    public void Rate_WithArousals_IsNotThePayersRate()
    {
        var findings = Rate(49, "10 h").With("nights.recorder", "type II")
            .Index("index: RDI with arousals, hypopnea: 3 % or arousal, events: 300, over: 10 h").Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.NotMet);
        findings["pap.sleep-test"].Cautions.ShouldContain(
            "The report gives an RDI with arousals. The policy's RDI leaves arousals out; the two share only their letters.");
    }

    [Theory]
    [InlineData("yes", Standing.NotMet)]
    [InlineData("no", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void Rate_UnderPap_DoesNotQualify(string? papUsed, Standing expected)
    {
        var findings = Rate(200, "10 h").With("nights.pap_used", papUsed).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // Source: L33718 I.B.2: four symptoms and three conditions.
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

        findings.Of("pap.listed-condition").ShouldBe(Standing.Met);
        findings.Of("pap.sleep-test").ShouldBe(Standing.Met);
    }

    [Theory]
    [InlineData("symptoms.daytime_sleepiness", "daytime_sleepiness")]
    [InlineData("conditions.hypertension", "hypertension")]
    [InlineData("conditions.stroke_history", "stroke_history")]
    public void SecondRoute_WithAListedItemUnknown_IsOpenAndAsksForIt(string item, string fact)
    {
        var findings = Unlisted(Rate(60, "6 h")).With($"intake.{item}", "unknown").Assess();

        findings.Of("pap.listed-condition").ShouldBe(Standing.Undetermined);
        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.sleep-test").ShouldBe([fact]);
    }

    // Source: derived from L33718 I.B.2: what is not on the list does not carry the second route.
    [Theory]
    [InlineData("intake.symptoms.habitual_snoring", "yes")]
    [InlineData("intake.symptoms.witnessed_apneas", "yes")]
    [InlineData("intake.symptoms.gasping_choking", "yes")]
    [InlineData("intake.symptoms.morning_headache", "yes")]
    [InlineData("intake.symptoms.nonrestorative_sleep", "yes")]
    [InlineData("intake.conditions.type_2_diabetes", "yes")]
    [InlineData("intake.conditions.atrial_fibrillation", "yes")]
    [InlineData("intake.conditions.heart_failure", "yes")]
    [InlineData("intake.weight", "180 kg")]
    [InlineData("nights.spo2_lowest", "60 %")]
    public void SecondRoute_WithWhatIsNotListed_DoesNotQualify(string place, string value)
    {
        var findings = Unlisted(Rate(60, "6 h")).With(place, value).Assess();

        findings.Of("pap.listed-condition").ShouldBe(Standing.NotMet);
        findings.Of("pap.sleep-test").ShouldBe(Standing.NotMet);
    }

    [Theory]
    [InlineData("intake.symptoms.nocturia")]
    [InlineData("intake.symptoms.fatigue")]
    [InlineData("intake.conditions.tia_history")]
    [InlineData("intake.conditions.anxiety_disorder")]
    public void ListedCondition_WithARelatedFindingOnly_IsLeftToAPerson(string place)
    {
        var findings = Unlisted(Rate(60, "6 h")).With(place, "yes").Assess();

        findings.Of("pap.listed-condition").ShouldBe(Standing.Undetermined);
        findings.Questions("pap.listed-condition").ShouldBe(["x-18"]);
        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
    }

    [Fact]
    public void ListedCondition_WithARelatedFindingBesideAListedOne_PutsNoQuestion()
    {
        var findings = Unlisted(Rate(60, "6 h")).With("intake.symptoms.fatigue", "yes").With("intake.conditions.hypertension", "yes").Assess();

        findings.Of("pap.listed-condition").ShouldBe(Standing.Met);
    }

    // The gap between 14 and 15 matters only with a listed symptom or condition: without one, no reading qualifies.
    [Fact]
    public void Gap_WithoutAListedItem_IsNotMetByEveryReading()
    {
        var findings = Unlisted(Rate(145, "10 h")).Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.NotMet);
        findings.Questions("pap.sleep-test").ShouldBeEmpty();
    }

    [Fact]
    public void Gap_DecidedLocallyAsMet_StillNeedsTheListedItemAndANightWithoutPap()
    {
        var answer = new Overlay("medicare-pap", "answer: x-01, of: pap.sleep-test, as: met");

        Rate(145, "10 h").Assess(answer).Of("pap.sleep-test").ShouldBe(Standing.Met);
        Unlisted(Rate(145, "10 h")).Assess(answer).Of("pap.sleep-test").ShouldBe(Standing.NotMet);
        Rate(145, "10 h").With("nights.pap_used", "yes").Assess(answer).Of("pap.sleep-test").ShouldBe(Standing.NotMet);
    }

    // 27, 28 and 29 events in 1 h 59 min are 13.6, 14.1 and 14.6 per hour; 9 and 10 in half an hour are 18 and 20.
    [Theory]
    [InlineData(27, "1 h 59 min", Standing.Met, "")]
    [InlineData(28, "1 h 59 min", Standing.Undetermined, "x-01 x-03")]
    [InlineData(29, "1 h 59 min", Standing.Undetermined, "x-01 x-03")]
    [InlineData(30, "1 h 59 min", Standing.Met, "")]
    [InlineData(28, "2 h", Standing.Met, "")]
    [InlineData(29, "2 h", Standing.Undetermined, "x-01")]
    [InlineData(14, "1 h", Standing.Met, "")]
    [InlineData(9, "38 min", Standing.NotMet, "")]
    [InlineData(10, "42 min", Standing.Undetermined, "x-01 x-03")]
    [InlineData(9, "30 min", Standing.NotMet, "")]
    [InlineData(10, "30 min", Standing.Undetermined, "x-03")]
    [InlineData(29, "1 h 50 min", Standing.Undetermined, "x-03")]
    public void ShortNight_AboveFourteenWithFewEvents_IsLeftToAPerson(int events, string hours, Standing expected, string questions)
    {
        var findings = Rate(events, hours).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("pap.sleep-test")).ShouldBe(questions);
    }

    // Two questions that arise together and were answered differently leave the finding open.
    [Theory]
    [InlineData("met", "met", Standing.Met)]
    [InlineData("not met", "not met", Standing.NotMet)]
    [InlineData("met", "not met", Standing.Undetermined)]
    [InlineData("not met", "met", Standing.Undetermined)]
    public void ShortNight_WithTwoLocalDecisions_IsDecidedOnlyWhenTheyAgree(string gap, string shortNight, Standing expected)
    {
        var findings = Rate(28, "1 h 59 min").Assess(
            new Overlay("medicare-pap", $"answer: x-01, of: pap.sleep-test, as: {gap}"),
            new Overlay("medicare-pap", $"answer: x-03, of: pap.sleep-test, as: {shortNight}"));

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    // The pieces matter only where the event minimum of the second route hangs on them.
    [Theory]
    [InlineData(29, "4 h", "yes", Standing.Undetermined)]
    [InlineData(30, "4 h", "yes", Standing.Met)]
    [InlineData(29, "4 h", "no", Standing.Met)]
    [InlineData(29, "4 h", null, Standing.Undetermined)]
    [InlineData(19, "4 h", "yes", Standing.NotMet)]
    [InlineData(20, "4 h", "yes", Standing.Undetermined)]
    [InlineData(28, "2 h", "yes", Standing.Undetermined)]
    [InlineData(10, "1 h", "yes", Standing.Undetermined)]
    [InlineData(9, "1 h", "yes", Standing.NotMet)]
    public void Fragments_OfANightWithFewEvents_AreLeftToAPerson(int events, string hours, string? fragments, Standing expected)
    {
        var findings = Rate(events, hours).With("nights.recording_in_fragments", fragments).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
        findings.Questions("pap.sleep-test").ShouldBe(expected == Standing.Undetermined && fragments is not null ? ["x-04"] : []);
    }

    // Source: L33718 definitions: without staged sleep the policy divides by recording time, a report by monitoring time.
    [Theory]
    [InlineData(90, "6 h", true, Standing.Met)]
    [InlineData(90, "6 h 1 min", true, Standing.Undetermined)]
    [InlineData(90, "6 h 1 min", false, Standing.Undetermined)]
    [InlineData(90, "6 h 25 min", true, Standing.Undetermined)]
    [InlineData(90, "6 h 26 min", true, Standing.Met)]
    [InlineData(90, "6 h 26 min", false, Standing.Undetermined)]
    [InlineData(90, "18 h", true, Standing.Met)]
    [InlineData(90, "18 h 1 min", true, Standing.Undetermined)]
    [InlineData(30, "6 h", true, Standing.Met)]
    [InlineData(30, "6 h 1 min", true, Standing.Undetermined)]
    [InlineData(30, "6 h 1 min", false, Standing.NotMet)]
    [InlineData(29, "9 h", true, Standing.NotMet)]
    public void Denominator_OnDifferentSidesOfAThreshold_IsLeftToAPerson(int events, string recorded, bool listed, Standing expected)
    {
        var text = Night.With("nights.recording_time", recorded).Index($"index: REI, hypopnea: 4 %, events: {events}, over: 6 h");

        var findings = (listed ? text : Unlisted(text)).Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
        findings.Questions("pap.sleep-test").ShouldBe(expected == Standing.Undetermined ? ["denominator"] : []);
    }

    // 30 and 10 events in two hours are 15 and 5 per hour, 84 in five are 16.8; over the recording: just under 15, just under 5, and 14.
    [Theory]
    [InlineData(30, "2 h", "2 h 1 min", Standing.Undetermined)]
    [InlineData(10, "2 h", "2 h 1 min", Standing.Undetermined)]
    [InlineData(84, "5 h", "6 h", Standing.Met)]
    [InlineData(84, "5 h", "5 h 59 min", Standing.Undetermined)]
    public void Denominator_AtTheBoundsOfBothRoutes_IsExact(int events, string monitored, string recorded, Standing expected)
    {
        var findings = Night.With("nights.recording_time", recorded).Index($"index: REI, hypopnea: 4 %, events: {events}, over: {monitored}").Assess();

        findings.Of("pap.sleep-test").ShouldBe(expected);
    }

    [Fact]
    public void Denominator_WithoutTheRecordingTime_AsksForIt()
    {
        var findings = Night.Without("nights.recording_time").Index("index: REI, hypopnea: 4 %, events: 120, over: 6 h").Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.sleep-test").ShouldBe(["recording_time"]);
    }

    [Fact]
    public void Denominator_OfAPayerRdi_IsTheRecordingTimeAlready()
    {
        var findings = Rate(90, "6 h").Assess();

        findings.Of("pap.sleep-test").ShouldBe(Standing.Met);
    }

    [Fact]
    public void Rate_OfAPatSet_CarriesACaution()
    {
        var findings = Rate(150, "10 h").With("nights.recorder", "PAT set").Assess();

        findings["pap.sleep-test"].Cautions.ShouldHaveSingleItem().ShouldStartWith("The policy accepts this kind of test");
    }

    // By recording time, as the policy defines its rate, so that no second denominator comes in.
    private static CaseText Rate(int events, string hours) =>
        Night.With("nights.recording_time", hours).Index($"index: payer RDI, hypopnea: 4 %, events: {events}, over: {hours}");

    private static CaseText Unlisted(CaseText text) => text
        .Without("intake.symptoms").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .Without("intake.conditions").With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician");
}

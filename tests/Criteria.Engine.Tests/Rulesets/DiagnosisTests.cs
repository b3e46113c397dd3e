using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class DiagnosisTests
{
    private static readonly CaseText HomeNight = CaseText.Complete.WithoutIndices();

    private static readonly CaseText StagedNight = HomeNight.With("nights.recorder", "type II")
        .With("nights.channels", "[eeg, eog, chin_emg, airflow, thoracic_effort, abdominal_effort, oximetry, heart_rate]");

    // Nine mild events an hour, and neither a symptom nor a condition.
    private static readonly CaseText MildWithoutAny = HomeNight
        .Index("index: REI, hypopnea: 4 %, events: 54, over: 6 h").Index("index: REI, hypopnea: 3 %, events: 60, over: 6 h")
        .Without("intake.symptoms").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .Without("intake.conditions").With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician");

    private static readonly Overlay FourPercent = new("osa-diagnosis", "set: hypopnea_rule, to: acceptable");

    // Source: ICSD-3 (2014), adult OSA, criteria B and C: 5 and 15 per hour, by monitoring time on a home test.
    public static TheoryData<int?, Standing, Standing> Thresholds => new()
    {
        { 29, Standing.NotMet, Standing.NotMet },
        { 30, Standing.Met, Standing.NotMet },
        { 31, Standing.Met, Standing.NotMet },
        { 89, Standing.Met, Standing.NotMet },
        { 90, Standing.Met, Standing.Met },
        { 91, Standing.Met, Standing.Met },
        { null, Standing.Undetermined, Standing.Undetermined },
    };

    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Index_OnAHomeTest_CountsByTheThreePercentRule(int? events, Standing five, Standing fifteen)
    {
        var text = HomeNight.Index("index: REI, hypopnea: 4 %, events: 6, over: 6 h");

        var findings = With(text, "index: REI, hypopnea: 3 %", events).Assess();

        findings.Of("osa.five-per-hour").ShouldBe(five);
        findings.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
    }

    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Index_WithTheFourPercentSetting_CountsByTheFourPercentRule(int? events, Standing five, Standing fifteen)
    {
        var text = HomeNight.Index("index: REI, hypopnea: 3 %, events: 200, over: 6 h");

        var findings = With(text, "index: REI, hypopnea: 4 %", events).Assess(FourPercent);

        findings.Of("osa.five-per-hour").ShouldBe(five);
        findings.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
    }

    // An event of the 4 % rule is one of the 3 % rule, so a 4 % index is enough; too few of them say nothing.
    [Theory]
    [InlineData(29, Standing.Undetermined, Standing.Undetermined)]
    [InlineData(30, Standing.Met, Standing.Undetermined)]
    [InlineData(89, Standing.Met, Standing.Undetermined)]
    [InlineData(90, Standing.Met, Standing.Met)]
    public void Index_OfTheFourPercentRuleAlone_IsEnoughButNeverTooLittle(int events, Standing five, Standing fifteen)
    {
        var home = HomeNight.Index($"index: REI, hypopnea: 4 %, events: {events}, over: 6 h").Assess();
        var staged = StagedNight.Index($"index: AHI, hypopnea: 4 %, events: {events}, over: 6 h").Assess();

        home.Of("osa.five-per-hour").ShouldBe(five);
        home.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
        staged.Of("osa.five-per-hour").ShouldBe(five);
        staged.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
    }

    // Source: ICSD-3 (2014), criterion B: effort-related arousals count where they can be seen.
    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Index_OnAStagedNight_CountsEffortRelatedArousals(int? events, Standing five, Standing fifteen)
    {
        var text = StagedNight.Index("index: AHI, hypopnea: 4 %, events: 6, over: 6 h").Index("index: AHI, hypopnea: 3 % or arousal, events: 6, over: 6 h");

        var findings = With(text, "index: RDI with arousals, hypopnea: 3 % or arousal", events).Assess();

        findings.Of("osa.five-per-hour").ShouldBe(five);
        findings.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
    }

    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Index_OnAStagedNightWithTheFourPercentSetting_CountsTheAhiByTheFourPercentRule(int? events, Standing five, Standing fifteen)
    {
        var text = StagedNight.Index("index: AHI, hypopnea: 3 % or arousal, events: 200, over: 6 h");

        var findings = With(text, "index: AHI, hypopnea: 4 %", events).Assess(FourPercent);

        findings.Of("osa.five-per-hour").ShouldBe(five);
        findings.Of("osa.fifteen-per-hour").ShouldBe(fifteen);
    }

    [Fact]
    public void Index_PrintedAtFive_AsksForCountAndTime()
    {
        var findings = HomeNight.Without("nights.monitoring_time").Index("index: REI, hypopnea: 4 %, per_hour: 4.0")
            .Index("index: REI, hypopnea: 3 %, per_hour: 5.0").Assess();

        findings.Of("osa.five-per-hour").ShouldBe(Standing.Undetermined);
        findings.Missing("osa.five-per-hour").ShouldBe(["rei_3.events", "rei_3.time"]);
    }

    [Theory]
    [InlineData("no", Standing.NotMet)]
    [InlineData("yes", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void Index_MainlyObstructive_IsTheReadersJudgement(string? obstructive, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.predominantly_obstructive", obstructive).Assess();

        findings.Of("osa.five-per-hour").ShouldBe(expected);
        findings.Of("osa.fifteen-per-hour").ShouldBe(expected);
    }

    // Source: position statement 2018: no diagnosis on automatically scored data alone.
    [Theory]
    [InlineData("nights.scoring", "automatic", Standing.NotApplicable)]
    [InlineData("nights.scoring", null, Standing.Undetermined)]
    [InlineData("nights.usable.oximetry", "3 h 59 min", Standing.NotApplicable)]
    [InlineData("nights.pap_used", "yes", Standing.NotApplicable)]
    public void Diagnosis_FromANightThatCannotCarryOne_IsWithheld(string place, string? value, Standing expected)
    {
        var findings = CaseText.Complete.With(place, value).Assess();

        findings.Of("osa.icsd-3").ShouldBe(expected);
        findings.Of("osa.icsd-3-tr").ShouldBe(expected);
    }

    // Source: ICSD-3 (2014), criterion A as reproduced; ICSD-3-TR (2023), criterion A (restated).
    [Theory]
    [InlineData("symptoms.daytime_sleepiness", true, true)]
    [InlineData("symptoms.fatigue", true, true)]
    [InlineData("symptoms.insomnia_complaint", true, true)]
    [InlineData("conditions.insomnia", true, true)]
    [InlineData("symptoms.nonrestorative_sleep", true, false)]
    [InlineData("symptoms.impaired_sleep_quality_of_life", false, true)]
    [InlineData("symptoms.gasping_choking", true, true)]
    [InlineData("symptoms.habitual_snoring", true, true)]
    [InlineData("symptoms.witnessed_apneas", true, true)]
    [InlineData("conditions.hypertension", true, false)]
    [InlineData("conditions.mood_disorder", true, false)]
    [InlineData("conditions.cognitive_dysfunction", true, false)]
    [InlineData("conditions.coronary_artery_disease", true, false)]
    [InlineData("conditions.stroke_history", true, false)]
    [InlineData("conditions.heart_failure", true, false)]
    [InlineData("conditions.atrial_fibrillation", true, false)]
    [InlineData("conditions.type_2_diabetes", true, false)]
    [InlineData("symptoms.morning_headache", false, false)]
    [InlineData("symptoms.impaired_cognition", false, false)]
    [InlineData("symptoms.nocturia", false, false)]
    [InlineData("conditions.anxiety_disorder", false, false)]
    [InlineData("conditions.tia_history", false, false)]
    public void MildIndex_WithOneSymptomOrCondition_CountsByTheEditionThatListsIt(string item, bool in2014, bool in2023)
    {
        var findings = MildWithoutAny.With($"intake.{item}", "yes").Assess();

        findings.Of("osa.icsd-3").ShouldBe(in2014 ? Standing.Met : Standing.NotMet);
        findings.Of("osa.icsd-3-tr").ShouldBe(in2023 ? Standing.Met : Standing.NotMet);
    }

    // Editions differ where a condition stands alone: clinical reference topic, criteria; ICSD-3 (2014).
    [Fact]
    public void Editions_WithHypertensionOnly_DisagreeAndSaySo()
    {
        var findings = MildWithoutAny.With("intake.conditions.hypertension", "yes").Assess();

        findings.Of("osa.icsd-3").ShouldBe(Standing.Met);
        findings.Of("osa.icsd-3-tr").ShouldBe(Standing.NotMet);
        findings.Of("osa.editions-disagree").ShouldBe(Standing.Met);
        findings["osa.editions-disagree"].ReadFirst.ShouldNotBeNull().ShouldStartWith("The editions of the diagnostic criteria disagree.");
    }

    [Theory]
    [InlineData("unknown")]
    [InlineData(null)]
    public void MildIndex_WithASymptomThatNobodyKnows_IsOpen(string? answer)
    {
        var text = MildWithoutAny.Without("intake.symptoms").With("intake.symptoms.daytime_sleepiness", answer).With("intake.symptoms.fatigue", "no");

        var findings = text.Assess();

        findings.Of("osa.icsd-3").ShouldBe(Standing.Undetermined);
        findings.Of("osa.icsd-3-tr").ShouldBe(Standing.Undetermined);
        findings.Missing("osa.icsd-3").ShouldContain("daytime_sleepiness");
        findings.Missing("osa.icsd-3").ShouldNotContain("fatigue");
    }

    // Source: ICSD-3 (2014), criterion C; ICSD-3-TR (2023), criteria C and D (restated).
    [Theory]
    [InlineData("yes", Standing.Met)]
    [InlineData("no", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void FifteenPerHour_WithoutAnySymptom_IsEnoughUnlessBetterExplained(string? notBetterExplained, Standing edition2023)
    {
        var findings = MildWithoutAny.WithoutIndices().Index("index: REI, hypopnea: 4 %, events: 90, over: 6 h")
            .With("intake.not_better_explained", notBetterExplained).Assess();

        findings.Of("osa.icsd-3").ShouldBe(Standing.Met);
        findings.Of("osa.icsd-3-tr").ShouldBe(edition2023);
    }

    private static CaseText With(CaseText text, string index, int? events) =>
        events is null ? text : text.Index($"{index}, events: {events}, over: 6 h");
}

using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class HomeTestTests
{
    private const string Snoring = "intake.symptoms.habitual_snoring";
    private const string Witnessed = "intake.symptoms.witnessed_apneas";
    private const string Gasping = "intake.symptoms.gasping_choking";
    private const string Done = "intake.home_test_done";
    private const string LaboratoryDone = "intake.laboratory_study_done";
    private const string Hypertension = "intake.conditions.hypertension";

    private static readonly CaseText Healthy = CaseText.Complete
        .Without("intake.symptoms").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .Without("intake.conditions").With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician");

    private static readonly CaseText Sleepy = Healthy.With("intake.symptoms.daytime_sleepiness", "yes");

    // Source: Kapur 2017, increased risk (restated): sleepiness and two of three.
    [Theory]
    [InlineData(new string[0], Standing.NotMet)]
    [InlineData(new[] { Snoring }, Standing.NotMet)]
    [InlineData(new[] { Witnessed }, Standing.NotMet)]
    [InlineData(new[] { Hypertension }, Standing.NotMet)]
    [InlineData(new[] { Witnessed, Gasping }, Standing.NotMet)]
    [InlineData(new[] { Snoring, Witnessed }, Standing.Met)]
    [InlineData(new[] { Snoring, Gasping }, Standing.Met)]
    [InlineData(new[] { Snoring, Hypertension }, Standing.Met)]
    [InlineData(new[] { Witnessed, Hypertension }, Standing.Met)]
    [InlineData(new[] { Snoring, Witnessed, Hypertension }, Standing.Met)]
    public void IncreasedRisk_OfASleepyPatient_NeedsTwoOfThree(string[] present, Standing expected)
    {
        var findings = present.Aggregate(Sleepy, (text, place) => text.With(place, "yes")).Assess();

        findings.Of("hsat.increased-risk").ShouldBe(expected);
    }

    [Theory]
    [InlineData("no", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    public void IncreasedRisk_WithoutSleepiness_IsNeverMet(string sleepy, Standing expected)
    {
        var findings = Healthy.With("intake.symptoms.daytime_sleepiness", sleepy).With(Snoring, "yes").With(Witnessed, "yes").With(Hypertension, "yes").Assess();

        findings.Of("hsat.increased-risk").ShouldBe(expected);
    }

    [Theory]
    [InlineData("unknown", "no", Standing.Undetermined)]
    [InlineData("unknown", "yes", Standing.Met)]
    public void IncreasedRisk_WithOneAnswerUnknown_IsOpenOnlyWhereItMatters(string witnessed, string hypertension, Standing expected)
    {
        var findings = Sleepy.With(Snoring, "yes").With(Witnessed, witnessed).With(Hypertension, hypertension).Assess();

        findings.Of("hsat.increased-risk").ShouldBe(expected);
    }

    // A reference table asks for snoring together with witnessed apnea: whoever passes by hypertension is told so.
    [Theory]
    [InlineData(new[] { Snoring, Hypertension }, 1)]
    [InlineData(new[] { Witnessed, Hypertension }, 1)]
    [InlineData(new[] { Snoring, Witnessed, Hypertension }, 0)]
    [InlineData(new[] { Snoring, Witnessed }, 0)]
    [InlineData(new[] { Hypertension }, 0)]
    public void IncreasedRisk_CarriedByHypertension_SaysSo(string[] present, int cautions)
    {
        var findings = present.Aggregate(Sleepy, (text, place) => text.With(place, "yes")).Assess();

        findings["hsat.increased-risk"].Cautions.Length.ShouldBe(cautions);
    }

    // Source: Kapur 2017, recommendation on complicating conditions, final list with history of stroke.
    [Theory]
    [InlineData("significant_cardiorespiratory_disease", true)]
    [InlineData("neuromuscular_weakness", true)]
    [InlineData("awake_hypoventilation", true)]
    [InlineData("suspected_sleep_hypoventilation", true)]
    [InlineData("chronic_opioid_use", true)]
    [InlineData("stroke_history", true)]
    [InlineData("severe_insomnia", true)]
    [InlineData("insomnia", false)]
    [InlineData("tia_history", false)]
    [InlineData("heart_failure", false)]
    [InlineData("hypertension", false)]
    public void ComplicatingCondition_EachAlone_CallsForTheLaboratoryIfListed(string condition, bool listed)
    {
        var findings = Healthy.With($"intake.conditions.{condition}", "yes").Assess();

        findings.Of("hsat.complicating-condition").ShouldBe(listed ? Standing.Met : Standing.NotMet);
        findings["hsat.option-laboratory"].Option!.For.Length.ShouldBe(listed ? 1 : 0);
    }

    [Theory]
    [InlineData("significant_cardiorespiratory_disease")]
    [InlineData("neuromuscular_weakness")]
    [InlineData("awake_hypoventilation")]
    [InlineData("suspected_sleep_hypoventilation")]
    [InlineData("chronic_opioid_use")]
    [InlineData("stroke_history")]
    [InlineData("severe_insomnia")]
    public void ComplicatingCondition_EachUnknown_LeavesItOpenAndIsAskedFor(string condition)
    {
        var findings = Healthy.With($"intake.conditions.{condition}", "unknown").Assess();

        findings.Of("hsat.complicating-condition").ShouldBe(Standing.Undetermined);
        findings.Missing("hsat.complicating-condition").ShouldBe([condition]);
    }

    // Source: Kapur 2017, remarks on uncomplicated patients (from memory).
    [Theory]
    [InlineData("intake.conditions.other_sleep_disorder_suspected", "yes", Standing.Met)]
    [InlineData("intake.home_circumstances_unsuitable", "yes", Standing.Met)]
    [InlineData("intake.home_circumstances_unsuitable", "no", Standing.NotMet)]
    [InlineData("intake.home_circumstances_unsuitable", null, Standing.Undetermined)]
    public void FurtherObstacle_EachAlone_IsEnough(string place, string? value, Standing expected)
    {
        var findings = Healthy.With(place, value).Assess();

        findings.Of("hsat.further-obstacle").ShouldBe(expected);
    }

    // Source: Kapur 2017, technically adequate devices (restated; both belts from memory).
    [Theory]
    [InlineData("[nasal_pressure, thoracic_effort, abdominal_effort, oximetry]", Standing.Met)]
    [InlineData("[thoracic_effort, abdominal_effort, oximetry]", Standing.NotMet)]
    [InlineData("[thermal_airflow, thoracic_effort, abdominal_effort, oximetry]", Standing.NotMet)]
    [InlineData("[nasal_pressure, abdominal_effort, oximetry]", Standing.NotMet)]
    [InlineData("[nasal_pressure, thoracic_effort, oximetry]", Standing.NotMet)]
    [InlineData("[nasal_pressure, thoracic_effort, abdominal_effort]", Standing.NotMet)]
    [InlineData("[pat, oximetry, actigraphy]", Standing.Met)]
    [InlineData("[oximetry, actigraphy]", Standing.NotMet)]
    [InlineData("[pat, actigraphy]", Standing.NotMet)]
    [InlineData("[pat, oximetry]", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void Sensors_EachOfASet_IsNeeded(string? channels, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.channels", channels).Assess();

        findings.Of("hsat.sensors").ShouldBe(expected);
        findings.Questions("hsat.sensors").ShouldBeEmpty();
    }

    [Fact]
    public void Sensors_WithAirflowByAnUnnamedSensor_AreLeftToAPerson()
    {
        var findings = CaseText.Complete.With("nights.channels", "[airflow, thoracic_effort, abdominal_effort, oximetry]").Assess();

        findings.Of("hsat.sensors").ShouldBe(Standing.Undetermined);
        findings.Questions("hsat.sensors").ShouldBe(["airflow-sensor"]);
    }

    // Source: Kapur 2017, recommendations on home test or laboratory study.
    [Fact]
    public void Options_ForAnUncomplicatedPatientAtRisk_SpeakForTheHomeTest()
    {
        var findings = Sleepy.With(Snoring, "yes").With(Witnessed, "yes").With(Done, "no").Assess();

        findings["hsat.option-home"].Option!.For.Length.ShouldBe(1);
        findings["hsat.option-home"].Option!.Against.ShouldBeEmpty();
        findings["hsat.option-laboratory"].Option!.For.ShouldBeEmpty();
        findings["hsat.option-laboratory"].Option!.Against.Length.ShouldBe(1);
    }

    // What was done is not offered again: the night of the case shows it, unless the case says otherwise.
    [Theory]
    [InlineData("type III", "", Standing.NotApplicable)]
    [InlineData("PAT set", "", Standing.NotApplicable)]
    [InlineData("type I", "", Standing.Undetermined)]
    [InlineData("type I", "no", Standing.Met)]
    [InlineData("type III", "no", Standing.Met)]
    [InlineData("type I", "yes", Standing.NotApplicable)]
    public void HomeTest_ThatTheCaseShowsAsDone_IsNotOffered(string recorder, string answer, Standing expected)
    {
        var text = Sleepy.With(Snoring, "yes").With(Witnessed, "yes").With("nights.recorder", recorder);

        var findings = (answer.Length == 0 ? text : text.With(Done, answer).With(LaboratoryDone, "no")).Assess();

        findings.Of("hsat.option-home").ShouldBe(expected);
        findings["hsat.option-laboratory"].Option!.Against.Length.ShouldBe((recorder == "type I" ? 1 : 0) + (expected == Standing.Met ? 1 : 0));
    }

    // Nor is a home test offered where a laboratory study has answered the question: per hour of sleep, just under and just over 5 with symptoms.
    [Theory]
    [InlineData("4.9", Standing.Met)]
    [InlineData("5.1", Standing.NotApplicable)]
    public void HomeTest_AfterALaboratoryStudy_IsOfferedUntilTheDiagnosisIsMade(string rate, Standing expected)
    {
        var text = Sleepy.With(Snoring, "yes").With(Done, "no").With("nights.recorder", "type I").With("nights.sleep_time", "6 h").WithoutIndices()
            .Index($"index: AHI, hypopnea: 3 % or arousal, per_hour: {rate}").Index($"index: RDI with arousals, hypopnea: 3 % or arousal, per_hour: {rate}");

        text.Assess().Of("hsat.option-home").ShouldBe(expected);
    }

    [Fact]
    public void Options_WithAnUnknownCondition_ShowItAsUnknown()
    {
        var findings = Sleepy.With(Snoring, "yes").With(Witnessed, "yes").With("intake.conditions.stroke_history", "unknown").With(Done, "no").Assess();

        findings["hsat.option-home"].Option!.Unknown.ShouldBe(["against: A condition for which the guideline asks for the laboratory."]);
    }

    // Source: position statement 2018: an examination face to face, telemedicine counts.
    [Theory]
    [InlineData("in_person: yes, date: 2026-06-02", Standing.Met)]
    [InlineData("in_person: yes, date: 2026-06-03", Standing.Met)]
    [InlineData("in_person: yes, date: 2026-06-04", Standing.NotMet)]
    [InlineData("in_person: no, telehealth: yes, date: 2026-06-02", Standing.Met)]
    [InlineData("in_person: no, telehealth: yes, date: 2026-06-03", Standing.Met)]
    [InlineData("in_person: no, telehealth: yes, date: 2026-06-04", Standing.NotMet)]
    [InlineData("in_person: no, telehealth: no, date: 2026-06-02", Standing.NotMet)]
    [InlineData("in_person: yes", Standing.Undetermined)]
    [InlineData("date: 2026-06-02", Standing.Undetermined)]
    public void Examination_AroundTheNight_ReachesToItsDate(string note, Standing expected)
    {
        var findings = CaseText.Complete.WithoutDocuments("clinical evaluation").Document($"id: note, kind: clinical evaluation, {note}").Assess();

        findings.Of("hsat.examination").ShouldBe(expected);
    }
}

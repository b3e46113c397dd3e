using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class AdequacyTests
{
    private static readonly CaseText PatNight = CaseText.Complete
        .With("nights.recorder", "PAT set").With("nights.channels", "[pat, oximetry, actigraphy]")
        .With("nights.usable.airflow", "not applicable").With("nights.usable.oximetry", "4 h").With("nights.usable.pat", "4 h");

    // Source: Kapur 2017, remarks (from memory): at least four hours of oximetry and airflow.
    [Theory]
    [InlineData("3 h 59 min", Standing.NotMet)]
    [InlineData("4 h", Standing.Met)]
    [InlineData("4 h 1 min", Standing.Met)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData(null, Standing.Undetermined)]
    public void Night_UsableAirflowAroundFourHours_IsInclusiveBelow(string? airflow, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.usable.airflow", airflow).Assess();

        findings.Of("adequacy.night").ShouldBe(expected);
    }

    // Source: Kapur 2017, remarks (from memory).
    [Theory]
    [InlineData("3 h 59 min", Standing.NotMet)]
    [InlineData("4 h", Standing.Met)]
    [InlineData("4 h 1 min", Standing.Met)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData(null, Standing.Undetermined)]
    public void Night_UsableOximetryAroundFourHours_IsInclusiveBelow(string? oximetry, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.usable.oximetry", oximetry).Assess();

        findings.Of("adequacy.night").ShouldBe(expected);
    }

    // Source: derived from Kapur 2017, remarks (from memory): the shorter of the two decides.
    [Theory]
    [InlineData("3 h 59 min", null, Standing.NotMet)]
    [InlineData(null, "3 h 59 min", Standing.NotMet)]
    [InlineData("3 h 59 min", "8 h", Standing.NotMet)]
    [InlineData("8 h", "3 h 59 min", Standing.NotMet)]
    [InlineData(null, null, Standing.Undetermined)]
    public void Night_OneShortChannel_Decides(string? airflow, string? oximetry, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.usable.airflow", airflow).With("nights.usable.oximetry", oximetry).Assess();

        findings.Of("adequacy.night").ShouldBe(expected);
    }

    // Source: Kapur 2017, remarks (from memory): an attempt to cover the usual sleep period.
    [Theory]
    [InlineData("yes", Standing.Met)]
    [InlineData("no", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void Night_UsualSleepPeriod_IsRequired(string? covers, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.covers_usual_sleep", covers).Assess();

        findings.Of("adequacy.night").ShouldBe(expected);
    }

    // Source: Kapur 2017, remarks (from memory): oximetry and airflow, not oximetry alone.
    [Fact]
    public void Night_WithoutAirflowSensor_IsNotMetByOximetryAlone()
    {
        var findings = CaseText.Complete.With("nights.channels", "[thoracic_effort, abdominal_effort, oximetry, heart_rate]")
            .With("nights.usable.airflow", "not applicable").Assess();

        findings.Of("adequacy.night").ShouldBe(Standing.NotMet);
    }

    [Theory]
    [InlineData("[airflow, oximetry]")]
    [InlineData("[nasal_pressure, oximetry]")]
    [InlineData("[thermal_airflow, oximetry]")]
    public void Night_AirflowByWhateverSensor_IsAirflow(string channels)
    {
        var findings = CaseText.Complete.With("nights.channels", channels).Assess();

        findings.Of("adequacy.night").ShouldBe(Standing.Met);
    }

    // The guideline names airflow; which signal stands in for it on a PAT set was seen in no text.
    [Fact]
    public void Night_OnPatSet_IsLeftToAPerson()
    {
        var findings = PatNight.Assess();

        findings.Of("adequacy.night").ShouldBe(Standing.Undetermined);
        findings.Questions("adequacy.night").ShouldBe(["pat-signal"]);
        findings.Missing("adequacy.night").ShouldBeEmpty();
    }

    [Theory]
    [InlineData("met", Standing.Met)]
    [InlineData("not met", Standing.NotMet)]
    public void Night_OnPatSetDecidedLocally_FollowsTheDecision(string answer, Standing expected)
    {
        var findings = PatNight.Assess(new Overlay("night-adequacy", $"answer: pat-signal, of: adequacy.night, as: {answer}"));

        findings.Of("adequacy.night").ShouldBe(expected);
        findings["adequacy.night"].DecidedLocally.ShouldHaveSingleItem().Id.ShouldBe("pat-signal");
    }

    [Theory]
    [InlineData("nights.usable.oximetry", "3 h 59 min", Standing.NotMet)]
    [InlineData("nights.usable.pat", "3 h 59 min", Standing.NotMet)]
    [InlineData("nights.usable.pat", null, Standing.Undetermined)]
    [InlineData("nights.covers_usual_sleep", "no", Standing.NotMet)]
    [InlineData("nights.channels", "[pat, oximetry, actigraphy, nasal_pressure]", Standing.Undetermined)]
    public void Night_OnPatSetWhereTheReadingsAgree_PutsNoQuestion(string place, string? value, Standing expected)
    {
        var findings = PatNight.With(place, value).Assess();

        findings.Of("adequacy.night").ShouldBe(expected);
        findings.Questions("adequacy.night").ShouldBeEmpty();
    }

    // Source: NCD 240.4 B.6, the two hours of payers; a caution only.
    [Theory]
    [InlineData("1 h 59 min", 1)]
    [InlineData("2 h", 0)]
    [InlineData("2 h 1 min", 0)]
    [InlineData(null, 0)]
    public void Night_BelowTwoHours_CarriesACaution(string? airflow, int cautions)
    {
        var findings = CaseText.Complete.With("nights.usable.airflow", airflow).Assess();

        findings["adequacy.night"].Cautions.Length.ShouldBe(cautions);
    }

    // Source: Sleep 2014;37:969, abstract.
    [Theory]
    [InlineData("4 h 59 min", Standing.NotMet, 1)]
    [InlineData("5 h", Standing.Met, 0)]
    [InlineData("5 h 1 min", Standing.Met, 0)]
    [InlineData(null, Standing.Undetermined, 0)]
    public void FiveHours_AroundTheMark_IsInclusiveBelow(string? recorded, Standing expected, int cautions)
    {
        var findings = CaseText.Complete.With("nights.recording_time", recorded).Assess();

        findings.Of("adequacy.five-hours").ShouldBe(expected);
        findings["adequacy.five-hours"].Cautions.Length.ShouldBe(cautions);
    }

    [Theory]
    [InlineData("no", Standing.Met)]
    [InlineData("yes", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void Gradable_PapDuringTheNight_IsAskedFor(string? used, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.pap_used", used).Assess();

        findings.Of("adequacy.without-pap").ShouldBe(expected);
        findings.Of("adequacy.gradable").ShouldBe(expected);
    }

    // Source: Kapur 2017, recommendation after a negative, inconclusive or inadequate home test.
    [Theory]
    [InlineData("6 h", "yes", Standing.NotMet)]
    [InlineData("6 h", "no", Standing.Met)]
    [InlineData("6 h", null, Standing.Undetermined)]
    [InlineData("3 h 59 min", "yes", Standing.Met)]
    [InlineData("3 h 59 min", null, Standing.Met)]
    public void Inadequate_ByMinutesOrByTheReader_IsMet(string airflow, string? verdict, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.usable.airflow", airflow).With("nights.technically_adequate", verdict).Assess();

        findings.Of("adequacy.inadequate").ShouldBe(expected);
    }

    // Source: Kapur 2017, recommendation after a home test: inadequate is neither negative nor normal.
    [Theory]
    [InlineData("yes", Standing.Met)]
    [InlineData("no", Standing.NotMet)]
    [InlineData(null, Standing.Undetermined)]
    public void Gradable_ReadersVerdict_IsAskedFor(string? verdict, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.technically_adequate", verdict).Assess();

        findings.Of("adequacy.gradable").ShouldBe(expected);
    }

    // Source: position statement 2018 on home tests, automatic scoring.
    [Theory]
    [InlineData("manual", Standing.NotMet)]
    [InlineData("edited", Standing.NotMet)]
    [InlineData("automatic", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void AutomaticOnly_EachScoring_IsToldApart(string? scoring, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.scoring", scoring).Assess();

        findings.Of("adequacy.automatic-only").ShouldBe(expected);
    }

    // Source: position statement 2018 on home tests; Kapur 2017.
    [Theory]
    [InlineData("nights.scoring", "automatic", Standing.NotMet)]
    [InlineData("nights.scoring", "edited", Standing.Met)]
    [InlineData("nights.scoring", null, Standing.Undetermined)]
    [InlineData("nights.raw_data_reviewed", "no", Standing.NotMet)]
    [InlineData("nights.raw_data_reviewed", null, Standing.Undetermined)]
    [InlineData("nights.interpreter_qualified", "no", Standing.NotMet)]
    [InlineData("nights.interpreter_qualified", null, Standing.Undetermined)]
    [InlineData("nights.technically_adequate", "no", Standing.NotMet)]
    [InlineData("nights.technically_adequate", null, Standing.Undetermined)]
    [InlineData("nights.pap_used", "yes", Standing.NotMet)]
    [InlineData("nights.usable.airflow", "3 h 59 min", Standing.NotMet)]
    public void FinalStatement_EachOfItsGrounds_IsNeeded(string place, string? value, Standing expected)
    {
        var findings = CaseText.Complete.With(place, value).Assess();

        findings.Of("adequacy.final-statement").ShouldBe(expected);
    }

    // Logic, not a threshold: the lowest value cannot lie above the mean.
    [Theory]
    [InlineData("92 %", "93 %", Standing.NotMet)]
    [InlineData("93 %", "93 %", Standing.NotMet)]
    [InlineData("94 %", "93 %", Standing.Met)]
    [InlineData(null, "93 %", Standing.Undetermined)]
    [InlineData("94 %", null, Standing.Undetermined)]
    public void SaturationContradiction_LowestAgainstMean_IsStrict(string? lowest, string? mean, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.spo2_lowest", lowest).With("nights.spo2_mean", mean).Assess();

        findings.Of("adequacy.saturation-contradiction").ShouldBe(expected);
    }
}

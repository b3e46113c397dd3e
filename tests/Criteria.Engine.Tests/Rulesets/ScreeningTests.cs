using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class ScreeningTests
{
    // A young, slim woman with nothing on any list: no point at all.
    private static readonly CaseText None = CaseText.Empty.With("patient.age", "30 years").With("patient.sex", "female")
        .With("intake.bmi", "22.0 kg/m2").With("intake.neck", "33 cm").With("intake.epworth_total", "3")
        .With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician");

    private static readonly (string Place, string Value)[] Points =
    [
        ("intake.symptoms.habitual_snoring", "yes"),
        ("intake.symptoms.fatigue", "yes"),
        ("intake.symptoms.witnessed_apneas", "yes"),
        ("intake.conditions.hypertension", "yes"),
        ("intake.bmi", "36.0 kg/m2"),
        ("patient.age", "51 years"),
        ("intake.neck", "44 cm"),
        ("patient.sex", "male"),
    ];

    // Source: STOP-Bang items (2008) as listed in 2022; classes (2012) as printed on the form: 0-2, 3-4, 5-8.
    [Theory]
    [InlineData(0, "low")]
    [InlineData(2, "low")]
    [InlineData(3, "intermediate")]
    [InlineData(4, "intermediate")]
    [InlineData(5, "high")]
    [InlineData(8, "high")]
    public void StopBang_AroundEachClass_HoldsBothEnds(int points, string expected)
    {
        var findings = Points.Take(points).Aggregate(None, (text, point) => text.With(point.Place, point.Value)).Assess();

        findings.Of("stopbang").ShouldBe(Standing.Met);
        findings.Band("stopbang").ShouldBe(expected);
        findings.Points("stopbang").ShouldBe($"{points}");
    }

    [Theory]
    [InlineData("intake.symptoms.habitual_snoring", "yes")]
    [InlineData("intake.symptoms.fatigue", "yes")]
    [InlineData("intake.symptoms.daytime_sleepiness", "yes")]
    [InlineData("intake.symptoms.witnessed_apneas", "yes")]
    [InlineData("intake.conditions.hypertension", "yes")]
    [InlineData("patient.sex", "male")]
    public void StopBang_EachAnswerAlone_IsOnePoint(string place, string value)
    {
        var findings = None.With(place, value).Assess();

        findings.Points("stopbang").ShouldBe("1");
        findings.Points("stopbang.original-neck").ShouldBe("1");
    }

    [Fact]
    public void StopBang_SleepinessAndFatigueTogether_AreOnePoint()
    {
        var findings = None.With("intake.symptoms.fatigue", "yes").With("intake.symptoms.daytime_sleepiness", "yes").Assess();

        findings.Points("stopbang").ShouldBe("1");
    }

    // Source: STOP-Bang items: BMI over 35, strictly. 35 kg/m2 exactly is 140 kg at 200 cm.
    [Theory]
    [InlineData("139.9 kg", "0")]
    [InlineData("140 kg", "0")]
    [InlineData("140.1 kg", "1")]
    public void StopBang_BmiAroundThirtyFive_IsStrict(string weight, string points)
    {
        var findings = None.Without("intake.bmi").With("intake.height", "200 cm").With("intake.weight", weight).Assess();

        findings.Points("stopbang").ShouldBe(points);
        findings.Points("stopbang.original-neck").ShouldBe(points);
    }

    [Theory]
    [InlineData("34.9 kg/m2", "0")]
    [InlineData("35.0 kg/m2", "0 to 1")]
    [InlineData("35 kg/m2", "0 to 1")]
    [InlineData("35.1 kg/m2", "1")]
    [InlineData(null, "0 to 1")]
    public void StopBang_BmiOnlyPrinted_IsOpenWhereTheFigureStraddles(string? bmi, string points)
    {
        var findings = None.With("intake.bmi", bmi).Assess();

        findings.Points("stopbang").ShouldBe(points);
    }

    // Source: STOP-Bang items: age over 50, strictly.
    [Theory]
    [InlineData("49 years", "0")]
    [InlineData("50 years", "0")]
    [InlineData("51 years", "1")]
    [InlineData(null, "0 to 1")]
    public void StopBang_AgeAroundFifty_IsStrict(string? age, string points)
    {
        var findings = None.With("patient.age", age).Assess();

        findings.Points("stopbang").ShouldBe(points);
        findings.Points("stopbang.original-neck").ShouldBe(points);
    }

    // Source: updated form: 43 cm for men, 41 cm for women, both included.
    [Theory]
    [InlineData("male", "42.9 cm", Standing.NotMet)]
    [InlineData("male", "43 cm", Standing.Met)]
    [InlineData("male", "43.1 cm", Standing.Met)]
    [InlineData("female", "40.9 cm", Standing.NotMet)]
    [InlineData("female", "41 cm", Standing.Met)]
    [InlineData("female", "41.1 cm", Standing.Met)]
    [InlineData("unknown", "40.9 cm", Standing.NotMet)]
    [InlineData("unknown", "41 cm", Standing.Undetermined)]
    [InlineData("unknown", "42.9 cm", Standing.Undetermined)]
    [InlineData("unknown", "43 cm", Standing.Met)]
    [InlineData("male", null, Standing.Undetermined)]
    [InlineData("female", null, Standing.Undetermined)]
    public void LargeNeck_InCentimetres_IsInclusiveBelow(string sex, string? neck, Standing expected)
    {
        var findings = None.With("patient.sex", sex).With("intake.neck", neck).Assess();

        findings.Of("stopbang.large-neck").ShouldBe(expected);
    }

    // Source: updated form: 17 in for men (43.18 cm), 16 in for women (40.64 cm).
    [Theory]
    [InlineData("male", "43.1 cm", Standing.NotMet)]
    [InlineData("male", "16.9 in", Standing.NotMet)]
    [InlineData("male", "17 in", Standing.Met)]
    [InlineData("male", "43.18 cm", Standing.Met)]
    [InlineData("female", "40.6 cm", Standing.NotMet)]
    [InlineData("female", "15.9 in", Standing.NotMet)]
    [InlineData("female", "16 in", Standing.Met)]
    [InlineData("female", "40.8 cm", Standing.Met)]
    [InlineData("female", null, Standing.Undetermined)]
    public void LargeNeck_InInches_IsAnotherLimit(string sex, string? neck, Standing expected)
    {
        var findings = None.With("patient.sex", sex).With("intake.neck", neck).Assess(new Overlay("sleep-apnea-screening", "set: neck_unit, to: inches"));

        findings.Of("stopbang.large-neck").ShouldBe(expected);
    }

    // Source: original item as printed in 2022: over 40 cm for either sex, strictly.
    [Theory]
    [InlineData("39.9 cm", "0")]
    [InlineData("40 cm", "0")]
    [InlineData("40.1 cm", "1")]
    [InlineData(null, "0 to 1")]
    public void OriginalNeck_AroundForty_IsStrict(string? neck, string points)
    {
        var findings = None.With("intake.neck", neck).Assess();

        findings.Points("stopbang.original-neck").ShouldBe(points);
    }

    // A woman with a neck of 40.5 cm has a point by one form and not by the other.
    [Theory]
    [InlineData(2, "40.5 cm", Standing.Met)]
    [InlineData(4, "40.5 cm", Standing.Met)]
    [InlineData(3, "40.5 cm", Standing.NotMet)]
    [InlineData(2, "40 cm", Standing.NotMet)]
    [InlineData(2, "41 cm", Standing.NotMet)]
    [InlineData(2, null, Standing.Undetermined)]
    [InlineData(3, null, Standing.NotMet)]
    public void FormsDiffer_WhereTheNeckMovesTheClass_IsMet(int otherPoints, string? neck, Standing expected)
    {
        var findings = Points.Take(otherPoints).Aggregate(None, (text, point) => text.With(point.Place, point.Value)).With("intake.neck", neck).Assess();

        findings.Of("stopbang.forms-differ").ShouldBe(expected);
    }

    // Known points give the lowest total, known and open points together the highest.
    [Theory]
    [InlineData(0, 2, Standing.Met, "low", "0 to 2")]
    [InlineData(0, 3, Standing.Undetermined, "", "0 to 3")]
    [InlineData(3, 1, Standing.Met, "intermediate", "3 to 4")]
    [InlineData(3, 2, Standing.Undetermined, "", "3 to 5")]
    [InlineData(5, 3, Standing.Met, "high", "5 to 8")]
    [InlineData(0, 8, Standing.Undetermined, "", "0 to 8")]
    public void StopBang_WithAnswersMissing_IsDecidedOnlyWhenBothEndsAgree(int known, int open, Standing standing, string band, string points)
    {
        var text = Points.Take(known).Aggregate(None, (given, point) => given.With(point.Place, point.Value));

        var findings = Points.Skip(known).Take(open).Aggregate(text, (given, point) => given.With(point.Place, "unknown"))
            .With("intake.symptoms.daytime_sleepiness", "no").Assess();

        findings.Of("stopbang").ShouldBe(standing);
        findings.Band("stopbang").ShouldBe(band);
        findings.Points("stopbang").ShouldBe(points);
        findings.Missing("stopbang").Length.ShouldBe(standing == Standing.Met ? 0 : open);
    }

    // Source: two-step rule (2014) as printed on the form: two of the first four, and one of three.
    [Theory]
    [InlineData(1, "patient.sex", "male", Standing.NotMet)]
    [InlineData(2, "patient.sex", "male", Standing.Met)]
    [InlineData(2, "intake.bmi", "35.1 kg/m2", Standing.Met)]
    [InlineData(2, "intake.bmi", "34.9 kg/m2", Standing.NotMet)]
    [InlineData(2, "intake.neck", "41 cm", Standing.Met)]
    [InlineData(2, "intake.neck", "40.9 cm", Standing.NotMet)]
    [InlineData(2, "patient.age", "80 years", Standing.NotMet)]
    [InlineData(4, "patient.sex", "female", Standing.NotMet)]
    [InlineData(2, "intake.neck", null, Standing.Undetermined)]
    public void TwoStep_EachSecondPartAlone_IsEnough(int firstPart, string place, string? value, Standing expected)
    {
        var findings = Points.Take(firstPart).Aggregate(None, (text, point) => text.With(point.Place, point.Value)).With(place, value).Assess();

        findings.Of("stopbang.two-step").ShouldBe(expected);
    }

    // 35 kg/m2 exactly is 140 kg at 200 cm.
    [Theory]
    [InlineData("140 kg", Standing.NotMet)]
    [InlineData("140.1 kg", Standing.Met)]
    public void TwoStep_BmiAroundThirtyFive_IsStrict(string weight, Standing expected)
    {
        var findings = Points.Take(2).Aggregate(None, (text, point) => text.With(point.Place, point.Value))
            .Without("intake.bmi").With("intake.height", "200 cm").With("intake.weight", weight).Assess();

        findings.Of("stopbang.two-step").ShouldBe(expected);
    }

    [Fact]
    public void TwoStep_WithUnknownAnswers_CountsOnlyWhatIsKnown()
    {
        var findings = None.With("patient.sex", "male").With("intake.symptoms.habitual_snoring", "yes").With("intake.conditions.hypertension", "unknown").Assess();

        findings.Of("stopbang.two-step").ShouldBe(Standing.Undetermined);
        findings.Missing("stopbang.two-step").ShouldBe(["hypertension"]);
    }

    // Source: Chest 2013;143:1284: a score of 3 or more, then bicarbonate of 28 or more.
    [Theory]
    [InlineData(3, "27 mmol/L", Standing.NotMet)]
    [InlineData(3, "27.9 mmol/L", Standing.NotMet)]
    [InlineData(3, "28 mmol/L", Standing.Met)]
    [InlineData(3, "28.1 mmol/L", Standing.Met)]
    [InlineData(2, "28 mmol/L", Standing.NotMet)]
    [InlineData(3, null, Standing.Undetermined)]
    [InlineData(2, null, Standing.NotMet)]
    public void Bicarbonate_AroundTwentyEight_IsInclusiveBelow(int points, string? bicarbonate, Standing expected)
    {
        var findings = Points.Take(points).Aggregate(None, (text, point) => text.With(point.Place, point.Value)).With("intake.bicarbonate", bicarbonate).Assess();

        findings.Of("stopbang.bicarbonate").ShouldBe(expected);
    }

    // Source: scoring instructions of the scale's owner: over 10.
    [Theory]
    [InlineData("9", Standing.NotMet)]
    [InlineData("10", Standing.NotMet)]
    [InlineData("11", Standing.Met)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData(null, Standing.Undetermined)]
    public void Epworth_AroundTen_IsStrict(string? total, Standing expected)
    {
        var findings = None.With("intake.epworth_total", total).Assess();

        findings.Of("epworth.excessive").ShouldBe(expected);
    }

    // Source: Kapur 2017, recommendation on questionnaires.
    [Fact]
    public void StopBang_Always_SaysThatItMakesNoDiagnosis()
    {
        var findings = None.Assess();

        findings["stopbang"].Cautions.ShouldBe(["A questionnaire must not be used to diagnose sleep apnea without an objective test."]);
    }
}

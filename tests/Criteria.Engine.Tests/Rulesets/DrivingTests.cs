using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class DrivingTests
{
    // Source: thoracic society guideline on driving (2013): unintended sleep, or a recent crash or near-miss.
    [Theory]
    [InlineData("no", "no", Standing.NotMet)]
    [InlineData("yes", "no", Standing.Met)]
    [InlineData("no", "yes", Standing.Met)]
    [InlineData("yes", null, Standing.Met)]
    [InlineData("no", "unknown", Standing.Undetermined)]
    [InlineData(null, null, Standing.Undetermined)]
    public void HighRisk_EitherAnswerAlone_IsEnough(string? sleep, string? crash, Standing expected)
    {
        var findings = CaseText.Complete.With("intake.drowsy_driving", sleep).With("intake.recent_crash_or_near_miss", crash).Assess();

        findings.Of("driving.high-risk").ShouldBe(expected);
    }

    [Theory]
    [InlineData("nights.usable.oximetry", "1 h")]
    [InlineData("nights.scoring", "automatic")]
    [InlineData("nights.pap_used", "yes")]
    [InlineData("nights.technically_adequate", "no")]
    public void HighRisk_WhateverTheNight_IsReadFirst(string place, string value)
    {
        var findings = CaseText.Complete.With("intake.drowsy_driving", "yes").With(place, value).Assess();

        findings["driving.high-risk"].ReadFirst.ShouldNotBeNull().ShouldContain("Warn about driving now");
    }

    [Fact]
    public void HighRisk_WithoutANight_IsDecidedAllTheSame()
    {
        var findings = CaseText.Empty.With("intake.drowsy_driving", "yes").Assess();

        findings.Of("driving.high-risk").ShouldBe(Standing.Met);
    }
}

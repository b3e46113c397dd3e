using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>Figures of one report that contradict each other. Logic and common practice, no threshold.</summary>
public sealed class AgreementTests
{
    // Source: hypopnea rules 1A and 1B (2013): an event with a fall of 4 % has one of 3 % too.
    [Theory]
    [InlineData(119, Standing.NotMet)]
    [InlineData(120, Standing.NotMet)]
    [InlineData(121, Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void RulesReversed_AroundEquality_IsFoundAbove(int? by4, Standing expected)
    {
        var text = CaseText.Complete.WithoutIndices().Index("index: REI, hypopnea: 3 %, events: 120, over: 6 h");

        var findings = (by4 is null ? text : text.Index($"index: REI, hypopnea: 4 %, events: {by4}, over: 6 h")).Assess();

        findings.Of("agreement.rules-reversed").ShouldBe(expected);
    }

    [Theory]
    [InlineData("7 h 11 min", Standing.NotMet)]
    [InlineData("7 h 12 min", Standing.NotMet)]
    [InlineData("7 h 13 min", Standing.Met)]
    [InlineData(null, Standing.Undetermined)]
    public void MonitoringTooLong_AroundTheRecording_IsFoundAbove(string? monitoring, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.monitoring_time", monitoring).Assess();

        findings.Of("agreement.monitoring-too-long").ShouldBe(expected);
    }

    [Theory]
    [InlineData("7 h 12 min", "7 h 12 min", Standing.NotMet)]
    [InlineData("7 h 13 min", "7 h 12 min", Standing.Met)]
    [InlineData("7 h 12 min", "7 h 13 min", Standing.Met)]
    [InlineData("7 h 13 min", null, Standing.Met)]
    [InlineData("7 h 12 min", null, Standing.Undetermined)]
    public void UsableTooLong_OfEitherSignal_IsFound(string airflow, string? oximetry, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.usable.airflow", airflow).With("nights.usable.oximetry", oximetry).Assess();

        findings.Of("agreement.usable-too-long").ShouldBe(expected);
    }

    [Fact]
    public void Contradictions_AreReadFirstWithBothFigures()
    {
        var findings = CaseText.Complete.With("nights.monitoring_time", "7 h 30 min").Assess();

        findings["agreement.monitoring-too-long"].ReadFirst.ShouldBe(
            "The monitoring time (7 h 30 min) is longer than the recording (7 h 12 min). Check both times; the index divides by one of them.");
    }
}

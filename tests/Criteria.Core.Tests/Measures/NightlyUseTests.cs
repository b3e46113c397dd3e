using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

/// <summary>The best three consecutive nights of the first five, four hours each.</summary>
public sealed class NightlyUseTests
{
    [Theory]
    [InlineData("4 h, 4 h, 4 h, 0 h, 0 h", 3, 3)]
    [InlineData("3 h 59 min, 4 h, 4 h 1 min, 0 h, 0 h", 2, 2)] // both sides of four hours
    [InlineData("4 h, 0 h, 4 h, 4 h, 0 h", 2, 2)] // a night without use stays in its run
    [InlineData("0 h, 0 h, 4 h, 4 h, 4 h", 3, 3)] // the last run that lies within
    [InlineData("0 h, 0 h, 0 h, 4 h, 4 h, 4 h", 2, 2)] // the sixth night is too late
    [InlineData("4 h, unknown, 4 h, 0 h, 0 h", 2, 3)]
    [InlineData("4 h, 4 h", 2, 3)] // what is not listed is unknown
    [InlineData("", 0, 3)]
    public void BestRun_OfNights_CountsThoseThatReachTheTime(string nights, int low, int high) =>
        Facts($"{{ id: a, kind: PAP, nightly_use: [{nights}] }}")["best_run"].Number.ShouldBe(Interval.Between(low, high));

    [Theory]
    [InlineData("")]
    [InlineData("{ id: a, kind: PAP }")]
    [InlineData("{ id: a, kind: oral appliance, nightly_use: [4 h, 4 h, 4 h] }")]
    [InlineData("{ id: a, kind: PAP, nightly_use: [4 h] }, { id: b, kind: PAP }")] // which of the two trials is meant
    public void BestRun_WithoutTheNightsOfOneTrial_IsWhatIsWritten(string trials)
    {
        Facts(trials)["best_run"].State.ShouldBe(FactState.Absent);
        Facts(trials, "2")["best_run"].Number.ShouldBe(Interval.Exactly(2));
    }

    [Theory]
    [InlineData("4 h, 4 h, unknown, 0 h, 0 h", "3", 3, 3)] // the written figure settles what the nights leave open
    [InlineData("4 h, 4 h, 0 h, 0 h, 0 h", "2", 2, 2)]
    [InlineData("4 h, 4 h, 0 h, 0 h, 0 h", "3", 2, 3)] // a contradiction: neither is taken
    public void BestRun_WithAWrittenFigure_IsThatFigureOrEverythingBetween(string nights, string written, int low, int high) =>
        Facts($"{{ id: a, kind: PAP, nightly_use: [{nights}] }}", written)["best_run"].Number.ShouldBe(Interval.Between(low, high));

    // A contradiction is warned of; it is a case all the same.
    private static FactSet Facts(string trials, string? written = null) =>
        Tiny.Read($"case: T-1\n{(written is null ? "" : $"intake: {{ best_run: {written} }}\n")}therapy: [{trials}]\n").Case!.Facts;
}

using Criteria.Core.BoundTests;
using Criteria.Core.Rulesets;
using Criteria.Engine.BoundTests;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.BoundTests;

/// <summary>The tests that stand beside the shipped rulesets.</summary>
public sealed class ShippedTests
{
    private static readonly BoundTestReading Reading = BoundTestReader.Read(ShippedRules.Files(), Rules.Library);
    private static readonly BoundTestRun Run = BoundTestRun.Of(Rules.Library, Reading.Tests);

    public static TheoryData<string> Rulesets() => [.. Rules.Library.Rulesets.Select(ruleset => ruleset.Id).Distinct()];

    [Fact]
    public void Tests_BesideTheRulesets_AreReadWithoutAProblem() => Reading.Problems.ShouldBeEmpty();

    [Fact]
    public void Tests_BesideTheRulesets_AllHold()
    {
        Run.Failures.Select(failure => failure.ToString()).ShouldBeEmpty();
        Run.Compared.ShouldBeGreaterThan(0);
    }

    [Theory]
    [MemberData(nameof(Rulesets))]
    public void Tests_OfARuleset_LeaveNothingOut(string ruleset) => Run.Gaps(ruleset, Reading.AcceptedGaps).Select(gap => gap.ToString()).ShouldBeEmpty();

    [Fact]
    public void AcceptedGaps_AreGaps()
    {
        var open = Rules.Library.Rulesets.SelectMany(ruleset => Run.Gaps(ruleset.Id, [])).Select(gap => (gap.Criterion.Id, gap.What)).ToHashSet();

        Reading.AcceptedGaps.Where(gap => !open.Contains((gap.Criterion, gap.What))).Select(gap => $"{gap.Criterion}: {gap.What}").ShouldBeEmpty();
    }
}

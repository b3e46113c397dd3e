using Criteria.Core.Rulesets;
using Criteria.Engine.Plans;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests;

/// <summary>The plan and the network come to the same, verdict by verdict.</summary>
public sealed class PlanTests
{
    private static readonly RulesInForce InForce = Rules.Library.InForce(Rules.Date, "medicare", "pap");
    private static readonly Plan Plan = new(InForce);

    [Fact]
    public void Run_OfRandomCases_GivesTheVerdictsOfAnAssessment() => RandomCases.Any.Sample(ShouldAgree, iter: Samples.Of(300));

    [Fact]
    public void Run_OfTheCompleteCase_GivesTheVerdictsOfAnAssessment() => ShouldAgree(CaseText.Complete.Read());

    [Fact]
    public void Run_OfTheEmptyCase_GivesTheVerdictsOfAnAssessment() =>
        ShouldAgree(CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "pap").Read());

    private static void ShouldAgree(Case subject)
    {
        var live = Rules.Assessor.Open(subject, Rules.Date);
        var sheet = Plan.Run(subject);

        // A refused case shows one finding; the plan has no opinion about showing.
        foreach (var finding in live.Assessment.Findings)
        {
            var night = subject.Nights.TakeWhile(each => each.Label != finding.Night).Count() % Math.Max(1, subject.Nights.Length);
            sheet[finding.Criterion.Index, night].ShouldBe(finding.Conclusion.Verdict, $"{finding.Id} {finding.Night}");
        }
    }
}

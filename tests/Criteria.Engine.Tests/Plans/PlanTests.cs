using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Plans;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Plans;

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

    public static TheoryData<string> Examples() => [.. ExampleCases.Names];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Run_OfAnExample_GivesTheVerdictsOfAnAssessment(string example)
    {
        var subject = ExampleCases.Read(example);
        var date = subject.RulesDate!.Value;

        ShouldAgree(subject, date, new Plan(Rules.Library.InForce(date, subject.Payer, subject.Item)));
    }

    // Under rules that nobody would write, conditions of every kind stand in every place.
    [Fact]
    public void Run_OfRandomRulesAndCases_GivesTheVerdictsOfEachCriterionAlone() => Gen.Select(RandomRules.Any, RandomCases.Any.Array[12]).Sample(
        (ruleset, cases) =>
        {
            var rules = ruleset.Rules;
            var plan = new Plan(rules);
            var sheet = plan.NewSheet();
            foreach (var subject in cases.Select(subject => RandomCases.In(rules.Vocabulary, subject)))
            {
                plan.Run(sheet, subject);
                ShouldBe(sheet, Weighed(rules, subject), rules);
            }
        },
        iter: Samples.Of(40));

    [Fact]
    public void Run_OfASheetUsedBefore_ForgetsTheCaseBefore() => RandomCases.Any.Array[2, 6].Sample(
        cases =>
        {
            var sheet = Plan.NewSheet();
            foreach (var subject in cases)
            {
                Plan.Run(sheet, subject);
                ShouldBe(sheet, Plan.Run(subject.Facts, [.. subject.Nights.Select(night => night.Facts)]), InForce);
            }
        },
        iter: Samples.Of(30));

    [Fact]
    public void Run_OfASheetOfAnotherPlan_IsRefused() =>
        Should.Throw<ArgumentException>(() => Plan.Run(new Plan(InForce).NewSheet(), CaseText.Complete.Read())).ParamName.ShouldBe("sheet");

    // The rules decide for themselves, one criterion after another over the exact numbers.
    private static Func<int, int, Verdict> Weighed(RulesInForce rules, Case subject)
    {
        var views = subject.Nights.IsEmpty ? [new View(subject.Facts, rules.Criteria.Length)] : subject.Nights.Select(night => new View(night.Facts, rules.Criteria.Length)).ToArray();
        var ofCase = new View(subject.Facts, rules.Criteria.Length);
        foreach (var criterion in rules.EvaluationOrder.Select(index => rules.Criteria[index]).OrderBy(criterion => criterion.PerNight))
        {
            foreach (var view in views)
            {
                view.Put(criterion.Index, criterion.Weigh(criterion.PerNight ? view : ofCase));
            }

            if (!criterion.PerNight)
            {
                ofCase.Put(criterion.Index, views[0].VerdictOf(criterion.Index));
            }
        }

        return (criterion, night) => views[night].VerdictOf(criterion);
    }

    private static void ShouldBe(VerdictSheet sheet, VerdictSheet expected, RulesInForce rules)
    {
        sheet.Nights.ShouldBe(expected.Nights);
        ShouldBe(sheet, (criterion, night) => expected[criterion, night], rules);
    }

    private static void ShouldBe(VerdictSheet sheet, Func<int, int, Verdict> expected, RulesInForce rules)
    {
        for (var night = 0; night < sheet.Nights; night++)
        {
            foreach (var criterion in rules.Criteria)
            {
                sheet[criterion.Index, night].ShouldBe(expected(criterion.Index, night), $"{criterion.Id} {night}");
            }
        }
    }

    private static void ShouldAgree(Case subject) => ShouldAgree(subject, Rules.Date, Plan);

    private static void ShouldAgree(Case subject, DateOnly date, Plan plan)
    {
        var live = Rules.Assessor.Open(subject, date);
        var sheet = plan.Run(subject);

        // A refused case shows one finding; the plan has no opinion about showing.
        live.Assessment.Findings.ShouldNotBeEmpty();
        foreach (var finding in live.Assessment.Findings)
        {
            var night = subject.Nights.TakeWhile(each => each.Label != finding.Night).Count() % Math.Max(1, subject.Nights.Length);
            sheet[finding.Criterion.Index, night].ShouldBe(finding.Conclusion.Verdict, $"{finding.Id} {finding.Night}");
        }
    }
}

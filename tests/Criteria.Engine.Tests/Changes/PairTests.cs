using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Changes;

/// <summary>The pairs of changes that turn a finding are exactly those that trying every two values finds.</summary>
public sealed class PairTests
{
    private const int MostValues = 4000;

    [Theory]
    [InlineData("oral.listed-condition", "hypertension", "daytime_sleepiness")]
    [InlineData("stopbang", "age", "snoring")]
    [InlineData("epworth.excessive", "epworth_total", "snoring")]
    public void Pairs_OfACompleteCase_AreThoseThatEveryTwoValuesGive(string finding, string first, string second)
    {
        var subject = CaseText.Complete.With("coverage.payer", "medicare").With("coverage.item", "oral appliance").Read();
        var assessment = Assess(subject);

        ShouldAgree(subject, assessment, assessment.Of(finding).Single(), Rules.Library.Vocabulary.Find(first)!, Rules.Library.Vocabulary.Find(second)!);
    }

    // Most random cases have no pair for the two facts that are picked; that there are some is tested on a case made for it.
    [Fact]
    public void Pairs_OfRandomCases_AreThoseThatEveryTwoValuesGive()
    {
        var compared = 0;
        Gen.Select(RandomCases.Any, Gen.Int[0, 10_000], Gen.Int[0, 10_000]).Sample(
            (subject, pick, which) =>
            {
                var assessment = Assess(subject);
                var findings = assessment.Findings.Where(finding => finding.Standing is Standing.Met or Standing.NotMet && !finding.Criterion.Impossible && IsOfTheFirstNight(subject, finding)).ToArray();
                if (assessment.Refusal is not null || findings.Length == 0)
                {
                    return;
                }

                var finding = findings[pick % findings.Length];
                var pairs = PairsToTry(subject, finding);
                if (pairs.Length > 0)
                {
                    var (first, second) = pairs[which % pairs.Length];
                    compared++;
                    ShouldAgree(subject, assessment, finding, first, second);
                }
            },
            iter: Samples.Of(60), threads: 1);
        compared.ShouldBeGreaterThan(0);
    }

    // Sleepiness and hypertension are each enough; both have to be absent.
    [Fact]
    public void Pairs_OfAlternatives_TakeBothAway()
    {
        var subject = Alternatives();
        var assessment = Assess(subject);

        var pairs = Rules.Assessor.PairsOf(subject, assessment, assessment.Of("oral.listed-condition").Single());

        pairs.ShouldContain(pair => pair.First.Fact == "daytime_sleepiness" && pair.Second.Fact == "hypertension" && pair.Turn.AfterWords == "not met");
        Rules.Assessor.OutlookOf(subject, assessment).Of("oral.listed-condition").ShouldBeEmpty();
        ShouldAgree(subject, assessment, assessment.Of("oral.listed-condition").Single(), Rules.Library.Vocabulary.Find("hypertension")!, Rules.Library.Vocabulary.Find("daytime_sleepiness")!)
            .ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Pairs_OfAnUndeterminedFinding_AreNone()
    {
        var subject = CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "oral appliance").Read();
        var assessment = Assess(subject);

        Rules.Assessor.PairsOf(subject, assessment, assessment.Of("oral.listed-condition").Single()).ShouldBeEmpty();
    }

    [Fact]
    public void Pairs_WhenStopped_EndTheSearch()
    {
        var subject = Alternatives();
        var assessment = Assess(subject);

        Should.Throw<OperationCanceledException>(() => Rules.Assessor.PairsOf(subject, assessment, assessment.Of("oral.listed-condition").Single(), new CancellationToken(canceled: true)));
    }

    private static Case Alternatives() => CaseText.Complete.With("coverage.payer", "medicare").With("coverage.item", "oral appliance")
        .With("intake.symptoms.daytime_sleepiness", "yes").With("intake.conditions.hypertension", "yes").Read();

    private static bool IsOfTheFirstNight(Case subject, Finding finding) => finding.Night is null || subject.Nights.IsEmpty || finding.Night == subject.Nights[0].Label;

    private static Assessment Assess(Case subject) => Rules.Assessor.Assess(subject, subject.RulesDate ?? Rules.Date);

    // Those that can be tried in full, and of which each turns the finding at values of its own.
    private static (FactDefinition First, FactDefinition Second)[] PairsToTry(Case subject, Finding finding)
    {
        var rules = Rules.Library.InForce(subject.RulesDate ?? Rules.Date, subject.Payer, subject.Item);
        var dependents = Dependents.Of(rules);
        var parts = Parts.Of(dependents, new Trial(rules, dependents, subject), subject, dependents.PathOf(finding.Criterion), finding.Criterion.PerNight ? 0 : null)
            .Where(part => rules.Vocabulary.Find(part.Id) is { } fact && (fact.Kind is FactKind.YesNo or FactKind.Choice or FactKind.Date || Grid.Of(fact, rules.Vocabulary) is not null)).ToArray();
        return
        [
            .. from i in Enumerable.Range(0, parts.Length)
               from j in Enumerable.Range(i + 1, parts.Length - i - 1)
               where !parts[i].Meets(parts[j], dependents)
               let first = rules.Vocabulary.Find(parts[i].Id)!
               let second = rules.Vocabulary.Find(parts[j].Id)!
               where BruteForce.Values(first).Count() * BruteForce.Values(second).Count() < MostValues
               select (first, second),
        ];
    }

    private static int ShouldAgree(Case subject, Assessment assessment, Finding finding, FactDefinition first, FactDefinition second)
    {
        var (one, other) = first.Slot < second.Slot ? (first, second) : (second, first);
        var found = Rules.Assessor.PairsOf(subject, assessment, finding).Where(pair => pair.First.Fact == one.Id && pair.Second.Fact == other.Id)
            .Select(pair => $"{pair.First.To}, {pair.Second.To}: {pair.Turn.AfterWords}").Order(StringComparer.Ordinal).ToArray();
        var rules = Rules.Library.InForce(subject.RulesDate ?? Rules.Date, subject.Payer, subject.Item);
        var tried = new BruteForce(rules, subject, settling: false).Pairs(one, other, finding.Criterion, 0);
        if (found.SequenceEqual(tried))
        {
            return found.Length;
        }

        // More is known, and seen to be impossible, where the completions of the case are tried. Only what differs is tried so: it takes long.
        var settling = new BruteForce(rules, subject, settling: true);
        var added = found.Except(tried).ToArray();
        added.ShouldAllBe(pair => settling.IsPair(pair, one, other, finding.Criterion, 0), $"{finding.Id}: {one.Id} and {other.Id}");
        if (added.Length == 0)
        {
            tried.Except(found).ShouldAllBe(pair => !settling.IsPair(pair, one, other, finding.Criterion, 0), $"{finding.Id}: {one.Id} and {other.Id}");
        }

        return found.Length;
    }
}

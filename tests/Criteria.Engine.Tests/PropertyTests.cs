using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Criteria.Engine.Plans;
using Criteria.Engine.Settling;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests;

/// <summary>What holds of every case, tried on random ones under the shipped rules.</summary>
public sealed class PropertyTests
{
    // Two ways to the same answer: the network, and a plain loop over the criteria in an order without loops.
    [Fact]
    public void Assess_AnyCase_GivesWhatAPlainLoopGives() => RandomCases.Any.Sample(
        subject =>
        {
            var assessed = Rules.Assessor.Open(subject, Rules.Date).Assessment;

            var looped = Loop(subject);

            if (assessed.Refusal is null)
            {
                assessed.Findings.Select(finding => Said(finding.Id, finding.Night, finding.Conclusion)).ShouldBe(looped);
            }
            else
            {
                looped.ShouldContain(Said(assessed.Refusal.Id, null, assessed.Refusal.Conclusion));
            }
        },
        iter: Samples.Of(300));

    [Fact]
    public void Update_AfterAnyChanges_GivesWhatAFreshAssessmentGives() => Gen.Select(RandomCases.Any, RandomCases.Change.Array[1, 6], RandomCases.Lists, Gen.Int[0, 1])
        .Sample(
            (subject, changes, lists, night) =>
            {
                var live = Rules.Assessor.Open(subject, Rules.Date);

                foreach (var change in changes.Where(change => !change.Definition.Id.StartsWith("coverage.", StringComparison.Ordinal)))
                {
                    if (change.Definition.Scope == FactScope.Case)
                    {
                        live.Update(change);
                    }
                    else if (night < live.Case.Nights.Length)
                    {
                        live.UpdateNight(night, change);
                    }

                    Print.Of(live.Assessment).ShouldBe(Print.Of(Rules.Assessor.Assess(live.Case, Rules.Date)));
                }

                live.Update(lists[0]);
                live.Update(lists[1]);
                Print.Of(live.Assessment).ShouldBe(Print.Of(Rules.Assessor.Assess(live.Case, Rules.Date)));
            },
            iter: Samples.Of(25));

    // What is decided stays decided, whatever else is learned, as long as no figure disagrees with another.
    [Fact]
    public void Assess_WhileACaseIsCompleted_KeepsEveryDecision() => Gen.Select(RandomCases.Consistent, Orders)
        .Sample((whole, order) => Complete(whole, order, (before, after) =>
            before.Standing == Standing.Undetermined || (before.Standing == after.Standing && SameBand(before, after))), iter: Samples.Of(25));

    // Where figures disagree a decision may be taken back, but it is never turned round.
    [Fact]
    public void Assess_WhileAContradictoryCaseIsCompleted_TurnsNoDecisionRound() => Gen.Select(RandomCases.Contradictory, Orders)
        .Sample((whole, order) => Complete(whole, order, (before, after) =>
            before.Standing == Standing.Undetermined || after.Standing == Standing.Undetermined || (before.Standing == after.Standing && SameBand(before, after))), iter: Samples.Of(25));

    private static Conclusion Settled(Criterion criterion, View view) => FindingBuilder.Build(criterion, view, null, Settler).Conclusion;

    private static readonly Settler Settler = new(Rules.Library.InForce(Rules.Date, "medicare", "pap"));

    private static readonly Plan WithoutSettling = Plan.WithoutSettling(Rules.Library.InForce(Rules.Date, "medicare", "pap"));

    // What the list of missing facts leaves out cannot settle the finding by itself.
    [Fact]
    public void Missing_OfAnOpenFinding_LeavesOutOnlyWhatCannotSettleItAlone() => Gen.Select(RandomCases.Consistent, Orders, Gen.Int[0, 1000], Gen.Int[0, 1000])
        .Sample(
            (whole, order, share, pick) =>
            {
                var names = Shuffled(whole.Names, order);
                var known = names.Take(names.Length * share / 1000).ToHashSet(StringComparer.Ordinal);
                var unknown = whole.Facts.Select(fact => fact.Definition.Id).Where(id => !known.Contains(id)).ToArray();
                if (unknown.Length == 0)
                {
                    return;
                }

                var learned = unknown[pick % unknown.Length];
                var subject = whole.Reveal(name => name == learned || known.Contains(name));

                // By Kleene logic: that all completions come to agree may need a fact more than the list has.
                var after = WithoutSettling.Run(subject);
                foreach (var finding in Findings(whole.Reveal(known.Contains)).Where(finding => finding.Standing == Standing.Undetermined))
                {
                    if (!finding.Missing.SelectMany(fact => WithInputs(fact.Fact)).Contains(learned))
                    {
                        var night = subject.Nights.TakeWhile(each => each.Label != finding.Night).Count() % Math.Max(1, subject.Nights.Length);
                        after[finding.Criterion.Index, night].Standing.ShouldBe(Standing.Undetermined, $"{finding.Id} was settled by {learned}");
                    }
                }
            },
            iter: Samples.Of(150));

    // When everything is known, a finding is open only because a source leaves a question open, here or further up, or because a
    // printed figure stands for a range on both sides of what it is compared with; then that figure is what is missing.
    [Fact]
    public void Assess_ACaseOfWhichAllIsKnown_LeavesOpenOnlyWhatASourceLeavesOpen() => RandomCases.WithEveryIndex.Sample(
        whole =>
        {
            var subject = whole.Reveal(_ => true);
            var facts = subject.Nights.Select(night => night.Facts).Append(subject.Facts).First();
            var findings = Findings(subject);
            var open = findings.Where(finding => finding.Standing == Standing.Undetermined).ToArray();
            var openIndices = open.Select(finding => finding.Criterion.Index).ToHashSet();

            foreach (var finding in open)
            {
                var rounded = finding.Missing.Where(missing => facts[facts.Vocabulary.Find(missing.Fact)!].Number is { IsExact: false }).ToArray();
                (finding.Silent.Length > 0 || rounded.Length > 0 || finding.Criterion.ReadsCriteria.Any(openIndices.Contains)).ShouldBeTrue(finding.Id);
                finding.Missing.Except(rounded).ShouldBeEmpty(finding.Id);
            }
        },
        iter: Samples.Of(150));

    [Fact]
    public void Assess_OnTwoThreads_GivesWhatOneThreadGives()
    {
        var assessor = new Assessor(Rules.Library);
        var cases = new List<Case>();
        RandomCases.Any.Sample(subject => { lock (cases) { cases.Add(subject); } }, iter: 40, seed: "0000000000001");
        var inTurn = cases.Select(subject => string.Join('\n', Print.Of(assessor.Assess(subject, Rules.Date)))).ToArray();

        var atOnce = new string[cases.Count];
        var fresh = new Assessor(Rules.Library);
        Parallel.For(0, cases.Count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => atOnce[i] = string.Join('\n', Print.Of(fresh.Assess(cases[i], Rules.Date))));

        atOnce.ShouldBe(inTurn);
    }

    private static Gen<int[]> Orders => Gen.Int[0, 1_000_000].Array[600];

    private static void Complete(WholeCase whole, int[] order, Func<Finding, Finding, bool> agrees)
    {
        var names = Shuffled(whole.Names, order);
        var known = new HashSet<string>(StringComparer.Ordinal);
        var before = Findings(whole.Reveal(known.Contains));
        foreach (var step in names.Chunk(8))
        {
            known.UnionWith(step);
            var after = Findings(whole.Reveal(known.Contains));
            foreach (var (earlier, later) in before.Zip(after))
            {
                agrees(earlier, later).ShouldBeTrue($"{earlier.Id}: {earlier.Standing} {earlier.Value?.Text}, then {later.Standing} {later.Value?.Text} after {string.Join(", ", step)}");
            }

            before = after;
        }
    }

    private static string[] Shuffled(string[] names, int[] order) => [.. names.Select((name, place) => (name, order[place])).OrderBy(pair => pair.Item2).Select(pair => pair.name)];

    private static Finding[] Findings(Case subject) => [.. Rules.Assessor.Assess(subject, Rules.Date).Findings];

    private static bool SameBand(Finding before, Finding after) => before.Standing != Standing.Met
        || (before.Conclusion.Verdict.LowestBand == after.Conclusion.Verdict.LowestBand && before.Conclusion.Verdict.HighestBand == after.Conclusion.Verdict.HighestBand);

    private static IEnumerable<string> WithInputs(string id)
    {
        var vocabulary = Rules.Library.Vocabulary;
        if (vocabulary.Indices.FirstOrDefault(index => index.Rate.Id == id || index.Events.Id == id || index.Time.Id == id) is { } index)
        {
            return index.Rate.Computed!.From.Prepend(index.Rate.Id);
        }

        // Of weight and height the missing one is asked for, though a written body mass index would do as well.
        var instead = vocabulary.Facts.Where(fact => fact is { At: not null, Computed: not null } && fact.Computed.From.Contains(id)).Select(fact => fact.Id);
        return vocabulary.Find(id)?.Computed is { } computed ? computed.From.SelectMany(WithInputs).Prepend(id) : instead.Prepend(id);
    }

    private static string[] Loop(Case subject)
    {
        var rules = Rules.Library.InForce(Rules.Date, subject.Payer, subject.Item);
        var ofCase = new View(subject.Facts, rules.Criteria.Length);
        (string? Label, View View)[] nights = subject.Nights.IsEmpty
            ? [(null, new View(subject.Facts, rules.Criteria.Length))]
            : [.. subject.Nights.Select(night => ((string?)night.Label, new View(night.Facts, rules.Criteria.Length)))];
        foreach (var index in rules.EvaluationOrder)
        {
            var criterion = rules.Criteria[index];
            if (criterion.PerNight)
            {
                foreach (var (_, view) in nights)
                {
                    view[index] = Settled(criterion, view);
                }

                continue;
            }

            ofCase[index] = Settled(criterion, ofCase);
            foreach (var (_, view) in nights)
            {
                view[index] = ofCase[index];
            }
        }

        return
        [
            .. rules.Criteria.SelectMany(criterion => criterion.PerNight
                ? nights.Select(night => Said(criterion.Id, night.Label, night.View[criterion.Index]))
                : [Said(criterion.Id, null, ofCase[criterion.Index])]),
        ];
    }

    private static string Said(string id, string? night, Conclusion conclusion) =>
        $"{id} [{night}] {conclusion.Standing} {conclusion.Value} {conclusion.Verdict.LowestBand} {conclusion.Verdict.HighestBand} {conclusion.Points} "
        + string.Join(' ', conclusion.Missing.Select(fact => fact.Fact));
}

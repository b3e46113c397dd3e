using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Settling;

/// <summary>What Kleene logic leaves open and every completion agrees on is settled, and nothing else.</summary>
public sealed class SettlerTests
{
    // A limit for each sex, made up for the test: above 17 in in men, above 16 in in women. Beyond both the sex does not matter.
    private const string NeckBySex = """
          - id: test.neck
            title: Large neck
            when: { any: [{ all: [sex is male, neck > 17 in] }, { all: [sex is female, neck > 16 in] }] }
            cites: [bbp-osa "criteria"]
          - id: test.score
            title: Score
            score: { items: [{ points: 1, when: test.neck, label: Neck }, { points: 1, when: snoring, label: Snoring }] }
            cites: [bbp-osa "criteria"]
        """;

    private static readonly RulesetLibrary Library =
        Rules.Load([.. RandomRules.Vocabulary, Rules.File("neck-by-sex.yaml", Rules.Ruleset("neck-by-sex", NeckBySex))]);

    [Theory]
    [InlineData("17.1 in", Standing.Met, true)]
    [InlineData("17 in", Standing.Undetermined, false)]
    [InlineData("16.1 in", Standing.Undetermined, false)]
    [InlineData("16 in", Standing.NotMet, false)] // Kleene logic alone: both limits are missed
    public void Assess_OfANeckWhoseSexIsUnknown_IsSettledBeyondBothLimits(string neck, Standing standing, bool whateverTheSex)
    {
        var assessment = new Assessor(Library).Assess(Neck(neck), Rules.Date);
        var finding = assessment.Of("test.neck").Single();

        finding.Standing.ShouldBe(standing);
        finding.Whatever.ToArray().ShouldBe(whateverTheSex ? ["Sex"] : []);
        finding.Missing.IsEmpty.ShouldBe(standing != Standing.Undetermined);
        finding.Because.Parts.Any(part => part.Kind == "whatever").ShouldBe(whateverTheSex);

        // What rests on it is settled with it.
        assessment.Of("test.score").Single().Conclusion.Points!.Value.Low.ShouldBe(standing == Standing.Met ? 1 : 0);
    }

    [Fact]
    public void Settle_OfRandomCriteria_IsWhatEveryCompletionSays() => Gen.Select(RandomRules.Any, RandomCases.Any.Array[4]).Sample(
        (ruleset, cases) =>
        {
            var rules = ruleset.Rules;
            var settler = new Settler(rules);
            var ordered = rules.EvaluationOrder.Select(index => rules.Criteria[index]).ToArray();
            foreach (var subject in cases.Select(subject => RandomCases.In(rules.Vocabulary, subject)))
            {
                var view = new View(subject.Facts, rules.Criteria.Length);
                foreach (var criterion in ordered)
                {
                    var open = criterion.Weigh(view);
                    view.Put(criterion.Index, open);
                    if (open.Standing == Standing.Undetermined && settler.Settle(criterion, view, open) is { IsTooLarge: false, Verdict: var settled })
                    {
                        view.Put(criterion.Index, settled);
                        foreach (var completion in Completions(settler.ReachOf(criterion.Index), subject.Facts))
                        {
                            var completed = new View(completion, rules.Criteria.Length);
                            Array.ForEach(ordered, each => completed.Put(each.Index, each.Weigh(completed)));
                            Agrees(completed.VerdictOf(criterion.Index), settled).ShouldBeTrue($"{criterion.Id}: {settled}, but {completed.VerdictOf(criterion.Index)}");
                        }
                    }
                }
            }
        },
        iter: Samples.Of(60));

    // A fact that pushes one way only leaves nothing to settle.
    [Theory]
    [InlineData("pap.evaluation-before-test")]
    [InlineData("hsat.increased-risk")]
    public void BothWaysOf_ACriterionOfOneWayFacts_IsEmpty(string id)
    {
        var rules = Rules.Library.InForce(Rules.Date, "medicare", "pap");

        Uses.BothWaysOf(rules.Find(id)!, rules, Reach.Of(rules)).ShouldBeEmpty();
    }

    [Fact]
    public void BothWaysOf_ANeckRuleBySex_IsTheSex()
    {
        var rules = Library.InForce(Rules.Date, null, null);

        Uses.BothWaysOf(rules.Find("test.neck")!, rules, Reach.Of(rules)).Select(one => one.Fact.Id).ShouldBe(["sex"]);
    }

    // Random completions of all that is unknown: far more than the cells, and not cut where the rules cut.
    private static IEnumerable<FactSet> Completions(Reach reach, FactSet facts)
    {
        var unknown = reach.Facts.Select(slot => facts[slot]).Where(fact => fact.State is FactState.Absent or FactState.Unknown && fact.Definition.Computed is null).ToArray();
        for (var number = 0; number < 40; number++)
        {
            yield return facts.With(unknown.Select((fact, place) => Value(fact.Definition, (number * 7919) + (place * 104_729))).OfType<Fact>());
        }
    }

    private static Fact? Value(FactDefinition fact, int code) => fact.Kind switch
    {
        FactKind.YesNo => Fact.Known(fact, new YesNoValue(code / 3 % 2 == 0), Provenance.Entered),
        FactKind.Choice => Fact.Known(fact, new ChoiceValue(fact.Choices[code / 5 % fact.Choices.Length]), Provenance.Entered),
        _ when fact.IsNumeric && fact.Range is { } range => Fact.Known(
            fact, new NumberValue(Interval.Exactly(decimal.Round(range.Low.Rounded + ((range.High.Rounded - range.Low.Rounded) * (code % 97) / 96m), fact.Kind == FactKind.Count ? 0 : 1))), Provenance.Entered),
        _ => null,
    };

    // A completion of some facts may leave others open: then its points are a range, and the settled one lies within reach of it.
    private static bool Agrees(Verdict completed, Verdict settled) =>
        completed.Standing == Standing.NotApplicable
            ? settled.Standing is Standing.Undetermined or Standing.NotApplicable
            : (settled.Standing == Standing.Undetermined || completed.Standing == Standing.Undetermined || completed.Standing == settled.Standing)
                && (settled.Points is not { } points || completed.Points is not { } found || (found.Low <= points.High && found.High >= points.Low));

    private static Case Neck(string neck) => Rules.Read($$"""
        case: HT-TEST
        assessed_on: 2026-06-18
        patient: { sex: unknown }
        intake: { neck: {{neck}} }
        """, Library);
}

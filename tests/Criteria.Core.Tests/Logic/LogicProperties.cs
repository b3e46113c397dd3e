using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;
using CsCheck;

namespace Criteria.Core.Tests.Logic;

/// <summary>Laws of conditions, held for random trees over the small vocabulary and random, partly unknown facts.</summary>
public sealed class LogicProperties
{
    private const int Runs = 600;

    private static readonly string[] Groups = ["hypertension", "stroke", "insomnia"];

    // `first supplied` and `only start of` choose among what is given and are left out: another choice is another question.
    private static readonly FactDefinition[] Open =
    [
        .. new[] { "hypertension", "stroke", "insomnia", "sex", "neck", "epworth", "height", "weight", "rei_4.printed", "rei_4.events", "rei_4.time" }
            .Select(id => Tiny.Vocabulary.Find(id)!),
    ];

    private static readonly Gen<Predicate> Leaf = Gen.OneOf(
        Gen.Select(Gen.Int[0, 2].Select(place => Groups[place]), Gen.Bool).Select((id, yes) => (Predicate)new YesNoLeaf(Fact(id), yes, Tiny.Vocabulary)),
        Gen.Bool.Select(negated => (Predicate)new ChoiceLeaf(Fact("sex"), ["male"], negated, Tiny.Vocabulary)),
        Gen.Select(Gen.Enum<Operator>(), Gen.Int[38, 46]).Select((comparison, bound) => Number("neck", comparison, bound)),
        Gen.Select(Gen.Enum<Operator>(), Gen.Int[8, 12]).Select((comparison, bound) => Number("epworth", comparison, bound)),
        Gen.Select(Gen.Enum<Operator>(), Gen.Int[20, 40]).Select((comparison, bound) => Number("bmi", comparison, bound)),
        Gen.Select(Gen.Enum<Operator>(), Gen.Int[12, 17]).Select((comparison, bound) => Number("rei_4", comparison, bound)),
        Gen.Enum<Operator>().Select(comparison => (Predicate)new NumberLeaf(Fact("neck"), comparison, (1, ""), Fact("height"), Rounding.None, Tiny.Vocabulary)),
        Gen.Int[0, 2].Select(kind => kind == 0 ? (Predicate)new RecordedLeaf(Fact("neck"), Tiny.Vocabulary) : kind == 1 ? Constant.Always : Constant.Never));

    private static readonly Gen<Predicate> Tree = Trees(3);

    private static readonly Gen<ImmutableArray<Fact>> Whole = Gen.Int[0, 99].Array[Open.Length].Select(choices =>
        choices.Select((choice, place) => Complete(Open[place], choice)).ToImmutableArray());

    // Which of the facts are known at first.
    private static readonly Gen<bool[]> Mask = Gen.Bool.Array[Open.Length];

    [Fact]
    public void Learning_AFact_NeverFlipsASettledTruth() =>
        Gen.Select(Tree, Whole, Mask, Mask).Sample((tree, whole, first, more) =>
        {
            var (before, after) = (View(whole, first), View(whole, [.. first.Zip(more, (a, b) => a || b)]));

            var (early, late) = (tree.Evaluate(before), tree.Evaluate(after));

            if (early != Truth.Unknown)
            {
                // Only a figure that disagrees with its own count and time opens a truth again; it never turns it round.
                late.ShouldBeOneOf(Disagrees(after) ? [early, Truth.Unknown] : [early]);
            }
        }, iter: Runs);

    [Fact]
    public void Reduce_OfACondition_IsEquivalentForEveryCompletion() =>
        Gen.Select(Tree, Whole, Mask).Sample((tree, whole, known) =>
        {
            var (now, completed) = (View(whole, known), View(whole, [.. known.Select(_ => true)]));

            var residual = tree.Reduce(now);

            residual.Evaluate(now).ShouldBe(tree.Evaluate(now), tree.Text);
            if (!Disagrees(completed))
            {
                residual.Evaluate(completed).ShouldBe(tree.Evaluate(completed), $"{tree.Text} reduced to {residual.Text}");
            }

            (residual is Constant).ShouldBe(tree.Evaluate(now) != Truth.Unknown, tree.Text);
        }, iter: Runs);

    [Fact]
    public void Reduce_OfWhatIsReduced_ChangesNothing() =>
        Gen.Select(Tree, Whole, Mask).Sample((tree, whole, known) =>
        {
            var now = View(whole, known);

            tree.Reduce(now).Reduce(now).Text.ShouldBe(tree.Reduce(now).Text);
        }, iter: Runs);

    [Fact]
    public void Missing_OfAnOpenCondition_IsNeverEmptyAndNeverKnownExactly() =>
        Gen.Select(Tree, Whole, Mask).Sample((tree, whole, known) =>
        {
            var now = View(whole, known);
            var missing = new MissingFacts();

            tree.Reduce(now).AddMissing(now, missing);

            missing.ToArray().IsEmpty.ShouldBe(tree.Evaluate(now) != Truth.Unknown, tree.Text);
            missing.ToArray().ShouldAllBe(fact => now.Facts[fact.Fact].State != FactState.NotApplicable);
        }, iter: Runs);

    [Fact]
    public void Explain_OfACondition_SaysWhatEvaluateSays() =>
        Gen.Select(Tree, Whole, Mask).Sample((tree, whole, known) => tree.Explain(View(whole, known)).Truth.ShouldBe(tree.Evaluate(View(whole, known))), iter: Runs);

    [Fact]
    public void Order_OfParts_ChangesNothing() =>
        Gen.Select(Leaf.Array[1, 6], Gen.Int[1, 6], Whole, Mask).SelectMany((parts, count, whole, known) =>
            Gen.Shuffle(parts).Select(shuffled => (parts, shuffled, Math.Min(count, parts.Length), whole, known))).Sample((parts, shuffled, count, whole, known) =>
        {
            var now = View(whole, known);

            new All([.. shuffled]).Evaluate(now).ShouldBe(new All([.. parts]).Evaluate(now));
            new Any([.. shuffled]).Evaluate(now).ShouldBe(new Any([.. parts]).Evaluate(now));
            new AtLeast(count, [.. shuffled]).Evaluate(now).ShouldBe(new AtLeast(count, [.. parts]).Evaluate(now));
        }, iter: Runs);

    [Fact]
    public void Groups_AreTheSameAsCounting() =>
        Gen.Select(Leaf.Array[1, 6], Whole, Mask).Sample((parts, whole, known) =>
        {
            var now = View(whole, known);

            new All([.. parts]).Evaluate(now).ShouldBe(new AtLeast(parts.Length, [.. parts]).Evaluate(now));
            new Any([.. parts]).Evaluate(now).ShouldBe(new AtLeast(1, [.. parts]).Evaluate(now));
            new Negation(new All([.. parts])).Evaluate(now).ShouldBe(new Any([.. parts.Select(part => new Negation(part))]).Evaluate(now));
        }, iter: Runs);

    [Fact]
    public void Score_WithUnknownItems_HoldsEveryCompletedScoreAndClass() =>
        Gen.Select(Gen.Select(Gen.Int[0, 5], Tree).Array[1, 5], Whole, Mask).Sample((items, whole, known) =>
        {
            var score = Score(items);
            var completed = View(whole, [.. known.Select(_ => true)]);
            var (open, closed) = (score.Evaluate(View(whole, known)), score.Evaluate(completed));

            if (!Disagrees(completed))
            {
                (open.Points!.Value.Low <= closed.Points!.Value.Low && closed.Points!.Value.High <= open.Points!.Value.High).ShouldBeTrue();
                closed.LowestBand.ShouldBeInRange(open.LowestBand, open.HighestBand);
                closed.HighestBand.ShouldBeInRange(open.LowestBand, open.HighestBand);
            }
        }, iter: Runs);

    [Fact]
    public void Grade_OfAPartlyKnownNumber_HoldsEveryCompletedGrade() =>
        Gen.Select(Gen.Int[11, 18].Array[1, 4], Gen.Bool.Array[4], Gen.Enum<Rounding>(), Whole, Mask).Sample((bounds, included, rounding, whole, known) =>
        {
            var grade = Grade([.. bounds.Distinct().Order()], included, rounding);
            var completed = View(whole, [.. known.Select(_ => true)]);

            var (open, closed) = (grade.Evaluate(View(whole, known)), grade.Evaluate(completed));

            if (!Disagrees(completed) && rounding != Rounding.AsPrinted)
            {
                closed.LowestBand.ShouldBeInRange(open.LowestBand, open.HighestBand);
                closed.HighestBand.ShouldBeInRange(open.LowestBand, open.HighestBand);
            }
        }, iter: Runs);

    [Fact]
    public void Grade_OfAnExactNumber_IsTheOneBandThatHoldsIt() =>
        Gen.Select(Gen.Int[1, 40].Array[1, 4], Gen.Bool.Array[4], Gen.Int[0, 90]).Sample((bounds, included, halves) =>
        {
            var grade = Grade([.. bounds.Distinct().Order()], included, Rounding.None);
            var value = halves / 2m;
            var facts = FactSet.Of(Tiny.Vocabulary, [Known("rei_4.events", value * 2), Known("rei_4.time", 120)]);

            var outcome = grade.Evaluate(new View(facts, 0));

            outcome.LowestBand.ShouldBe(outcome.HighestBand);
            grade.Bands.Where(band => Holds(band, value)).ShouldHaveSingleItem().ShouldBe(grade.Bands[outcome.LowestBand]);
        }, iter: Runs);

    private static Gen<Predicate> Trees(int depth) => depth == 0
        ? Leaf
        : Gen.Frequency(
            (2, Leaf),
            (2, Trees(depth - 1).Array[1, 4].Select(parts => (Predicate)new All([.. parts]))),
            (2, Trees(depth - 1).Array[1, 4].Select(parts => (Predicate)new Any([.. parts]))),
            (1, Trees(depth - 1).Select(part => (Predicate)new Negation(part))),
            (1, Gen.Select(Trees(depth - 1).Array[1, 4], Gen.Int[1, 4]).Select((parts, count) => (Predicate)new AtLeast(Math.Min(count, parts.Length), [.. parts]))));

    private static Predicate Number(string id, Operator comparison, int bound) =>
        new NumberLeaf(Fact(id), comparison, bound, $"{bound}", Rounding.None, Tiny.Vocabulary);

    // Values lie close to the bounds of the leaves; the printed rate is the true one, rounded, so that a case is consistent.
    private static Fact Complete(FactDefinition definition, int choice) => definition.Id switch
    {
        "hypertension" or "stroke" or "insomnia" => choice % 5 == 0
            ? new Fact(definition, FactState.NotApplicable, null, Provenance.Entered)
            : Core.Facts.Fact.Known(definition, new YesNoValue(choice % 2 == 0), Provenance.Entered),
        "sex" => Core.Facts.Fact.Known(definition, new ChoiceValue(definition.Choices[choice % 3]), Provenance.Entered),
        "neck" => Known(definition.Id, 38 + (choice % 9)),
        "epworth" => Known(definition.Id, choice % 25),
        "height" => Known(definition.Id, 150 + (choice % 40)),
        "weight" => Known(definition.Id, 60 + choice),
        "rei_4.events" => Known(definition.Id, 80 + (choice % 30)),
        "rei_4.time" => Known(definition.Id, 360 + (choice % 60)),
        _ => Known(definition.Id, 12 + (choice % 6)), // replaced by Consistent
    };

    private static View View(ImmutableArray<Fact> whole, bool[] known) =>
        new(FactSet.Of(Tiny.Vocabulary, Consistent(whole).Where((_, place) => known[place])), 0);

    private static IEnumerable<Fact> Consistent(ImmutableArray<Fact> whole)
    {
        var events = whole.Single(fact => fact.Definition.Id == "rei_4.events").Number!.Value.Low;
        var time = whole.Single(fact => fact.Definition.Id == "rei_4.time").Number!.Value.Low;
        foreach (var fact in whole)
        {
            if (fact.Definition.Id != "rei_4.printed")
            {
                yield return fact;
                continue;
            }

            // Every third printed rate is wrong by more than rounding: such a case is less decided once count and time are known.
            var rate = decimal.Round(events.Rounded * 60 / time.Rounded, 1, MidpointRounding.AwayFromZero) + (fact.Number!.Value.Low.Rounded % 3 == 0 ? 1.5m : 0);
            QuantityReader.Read(rate.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + " /h", out var quantity, out _, out _);
            yield return fact with { Value = new NumberValue(quantity!.Rounding, quantity.Base), Written = quantity.Written };
        }
    }

    private static bool Disagrees(View view) => view.Facts["rei_4"] is { Origin.Kind: OriginKind.Computed, Number.IsExact: false };

    private static ScoreBody Score((int Points, Predicate When)[] items)
    {
        var most = items.Sum(item => item.Points);
        var classes = ImmutableArray.CreateBuilder<ScoreClass>();
        for (var from = 0; from <= most; from += 3)
        {
            classes.Add(new ScoreClass($"class {from}", from, Math.Min(from + 2, most)));
        }

        return new ScoreBody([.. items.Select(item => new ScoreItem(item.Points, item.When, "item"))], classes.ToImmutable());
    }

    private static GradeBody Grade(int[] bounds, bool[] included, Rounding rounding)
    {
        var bands = ImmutableArray.CreateBuilder<Band>();
        for (var i = 0; i <= bounds.Length; i++)
        {
            bands.Add(new Band(
                $"grade {i}", i == 0 ? null : bounds[i - 1], i > 0 && included[i - 1],
                i == bounds.Length ? null : bounds[i], i < bounds.Length && !included[i], ""));
        }

        return new GradeBody(Fact("rei_4"), bands.ToImmutable(), rounding, Tiny.Vocabulary);
    }

    private static bool Holds(Band band, decimal value) =>
        (band.Lower is not { } lower || value > lower || (band.LowerIncluded && value == lower))
        && (band.Upper is not { } upper || value < upper || (band.UpperIncluded && value == upper));

    private static FactDefinition Fact(string id) => Tiny.Vocabulary.Find(id)!;

    private static Fact Known(string id, decimal value) =>
        Core.Facts.Fact.Known(Fact(id), new NumberValue(Interval.Exactly(value)), Provenance.Entered, $"{value}");
}

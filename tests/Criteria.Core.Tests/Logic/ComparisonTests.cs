using Criteria.Core.Facts;
using Criteria.Core.Logic;
using CsCheck;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

public sealed class ComparisonTests
{
    private static readonly Gen<Interval> AnyInterval =
        from low in Gen.Int[0, 12]
        from width in Gen.Int[0, 6]
        from closed in Gen.Bool
        select new Interval(low, low + width, closed || width == 0);

    [Theory]
    [InlineData(14, NotMet, NotMet, Met, Met, NotMet, Met)]
    [InlineData(15, Met, NotMet, Met, NotMet, Met, NotMet)]
    [InlineData(16, Met, Met, NotMet, NotMet, NotMet, Met)]
    public void Compare_AnExactNumberAround15_IsDecidedByEveryOperator(
        int number, Truth atLeast, Truth above, Truth atMost, Truth below, Truth equal, Truth different)
    {
        var left = Interval.Exactly(number);
        var right = Interval.Exactly(15);

        Comparison.Compare(left, Operator.AtLeast, right).ShouldBe(atLeast);
        Comparison.Compare(left, Operator.Above, right).ShouldBe(above);
        Comparison.Compare(left, Operator.AtMost, right).ShouldBe(atMost);
        Comparison.Compare(left, Operator.Below, right).ShouldBe(below);
        Comparison.Compare(left, Operator.Equal, right).ShouldBe(equal);
        Comparison.Compare(left, Operator.Different, right).ShouldBe(different);
    }

    [Theory]
    [InlineData("14.94", NotMet)] // 14.935 up to 14.945
    [InlineData("14.9", NotMet)] // 14.85 up to 14.95
    [InlineData("15", Unknown)] // 14.5 up to 15.5
    [InlineData("15.0", Unknown)] // 14.95 up to 15.05
    [InlineData("15.1", Met)] // 15.05 up to 15.15
    public void Compare_APrintedFigureWith15_IsDecidedOnlyWhenBothEndsAgree(string printed, Truth expected)
    {
        var range = Read(printed + " /h").Rounding;

        Comparison.Compare(range, Operator.AtLeast, Interval.Exactly(15)).ShouldBe(expected);
        Comparison.Compare(range, Operator.Below, Interval.Exactly(15)).ShouldBe(Truths.Not(expected));
    }

    [Fact]
    public void Compare_AnOpenUpperEndOnTheBound_DoesNotReachIt()
    {
        var range = Read("14.95 /h").Rounding with { Low = 14.9m, High = 15m };

        Comparison.Compare(range, Operator.Below, Interval.Exactly(15)).ShouldBe(Met);
        Comparison.Compare(range, Operator.AtLeast, Interval.Exactly(15)).ShouldBe(NotMet);
        Comparison.Compare(range, Operator.Equal, Interval.Exactly(15)).ShouldBe(NotMet);
        Comparison.Compare(range with { HighIncluded = true }, Operator.Below, Interval.Exactly(15)).ShouldBe(Unknown);
    }

    [Fact]
    public void Compare_AnIntervalThatStartsOnTheBound_IsAtLeastItAndPerhapsAboveIt()
    {
        var range = Interval.Between(15, 16);

        Comparison.Compare(range, Operator.AtLeast, Interval.Exactly(15)).ShouldBe(Met);
        Comparison.Compare(range, Operator.Above, Interval.Exactly(15)).ShouldBe(Unknown);
        Comparison.Compare(range, Operator.AtMost, Interval.Exactly(15)).ShouldBe(Unknown);
        Comparison.Compare(range, Operator.Equal, Interval.Exactly(15)).ShouldBe(Unknown);
    }

    [Fact]
    public void Compare_AnyTwoIntervals_IsSettledOnlyWhenEveryPairAgrees() =>
        Gen.Select(AnyInterval, AnyInterval, Gen.Enum<Operator>()).Sample((left, right, comparison) =>
        {
            var truth = Comparison.Compare(left, comparison, right);

            var answers = (from a in Points(left) from b in Points(right) select Holds(a, comparison, b)).Distinct().ToArray();
            if (truth != Unknown)
            {
                answers.ShouldBe([truth == Met], $"{left} {comparison.Sign()} {right}");
            }
        }, iter: 3000);

    [Fact]
    public void Compare_AnIntervalWithANumber_IsUnknownOnlyWhenPairsDisagree() =>
        Gen.Select(AnyInterval, Gen.Int[0, 18], Gen.Enum<Operator>()).Sample((left, bound, comparison) =>
        {
            var truth = Comparison.Compare(left, comparison, Interval.Exactly(bound));

            var answers = Points(left).Select(a => Holds(a, comparison, bound)).Distinct().ToArray();
            truth.ShouldBe(answers.Length == 2 ? Unknown : Truths.Of(answers[0]), $"{left} {comparison.Sign()} {bound}");
        }, iter: 3000);

    // Whole numbers, halves and a point just under an open end stand for all values: bounds are whole.
    private static IEnumerable<decimal> Points(Interval range)
    {
        for (var at = range.Low.Rounded; at <= range.High.Rounded; at += 0.5m)
        {
            if (range.Contains(at))
            {
                yield return at;
            }
        }
    }

    private static bool Holds(decimal left, Operator comparison, decimal right) => comparison switch
    {
        Operator.AtLeast => left >= right,
        Operator.Above => left > right,
        Operator.AtMost => left <= right,
        Operator.Below => left < right,
        Operator.Equal => left == right,
        _ => left != right,
    };

    private static Quantity Read(string text)
    {
        QuantityReader.Read(text, out var quantity, out _, out _).ShouldBe(QuantityFault.None);
        return quantity!;
    }
}

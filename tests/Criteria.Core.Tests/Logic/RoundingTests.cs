using Criteria.Core.Facts;
using Criteria.Core.Logic;
using static Criteria.Core.Logic.Rounding;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

/// <summary>The golden table of the three roundings around the thresholds 5, 14 and 15 per hour.</summary>
public sealed class RoundingTests
{
    // Exact rates (a count over a time): only rounding to whole numbers moves them, halves upwards.
    [Theory]
    [InlineData("4.49", None, NotMet, Met, NotMet)]
    [InlineData("4.50", None, NotMet, Met, NotMet)]
    [InlineData("4.99", None, NotMet, Met, NotMet)]
    [InlineData("5.00", None, Met, Met, NotMet)]
    [InlineData("14.00", None, Met, Met, NotMet)]
    [InlineData("14.01", None, Met, NotMet, NotMet)]
    [InlineData("14.49", None, Met, NotMet, NotMet)]
    [InlineData("14.50", None, Met, NotMet, NotMet)]
    [InlineData("14.99", None, Met, NotMet, NotMet)]
    [InlineData("15.00", None, Met, NotMet, Met)]
    [InlineData("4.49", AsPrinted, NotMet, Met, NotMet)]
    [InlineData("4.50", AsPrinted, NotMet, Met, NotMet)]
    [InlineData("4.99", AsPrinted, NotMet, Met, NotMet)]
    [InlineData("5.00", AsPrinted, Met, Met, NotMet)]
    [InlineData("14.00", AsPrinted, Met, Met, NotMet)]
    [InlineData("14.01", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("14.49", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("14.50", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("14.99", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("15.00", AsPrinted, Met, NotMet, Met)]
    [InlineData("4.49", ToWholeNumbers, NotMet, Met, NotMet)]
    [InlineData("4.50", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("4.99", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("5.00", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.00", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.01", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.49", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.50", ToWholeNumbers, Met, NotMet, Met)]
    [InlineData("14.99", ToWholeNumbers, Met, NotMet, Met)]
    [InlineData("15.00", ToWholeNumbers, Met, NotMet, Met)]
    public void Round_AnExactRate_FollowsTheDeclaredRounding(string rate, Rounding rounding, Truth atLeast5, Truth atMost14, Truth atLeast15)
    {
        var value = new NumberValue(Interval.Exactly(Read(rate).Base));

        var range = Comparison.Round(value, rounding);

        Verdicts(range).ShouldBe((atLeast5, atMost14, atLeast15));
    }

    // Printed rates (14.49 stands for 14.485 up to, not including, 14.495): what a rounding cannot settle stays unknown.
    [Theory]
    [InlineData("4.49", None, NotMet, Met, NotMet)]
    [InlineData("4.50", None, NotMet, Met, NotMet)]
    [InlineData("4.99", None, NotMet, Met, NotMet)]
    [InlineData("5.00", None, Unknown, Met, NotMet)]
    [InlineData("14.00", None, Met, Unknown, NotMet)]
    [InlineData("14.01", None, Met, NotMet, NotMet)]
    [InlineData("14.49", None, Met, NotMet, NotMet)]
    [InlineData("14.50", None, Met, NotMet, NotMet)]
    [InlineData("14.99", None, Met, NotMet, NotMet)]
    [InlineData("15.00", None, Met, NotMet, Unknown)]
    [InlineData("4.99", AsPrinted, NotMet, Met, NotMet)]
    [InlineData("5.00", AsPrinted, Met, Met, NotMet)]
    [InlineData("14.00", AsPrinted, Met, Met, NotMet)]
    [InlineData("14.01", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("14.99", AsPrinted, Met, NotMet, NotMet)]
    [InlineData("15.00", AsPrinted, Met, NotMet, Met)]
    [InlineData("4.49", ToWholeNumbers, NotMet, Met, NotMet)]
    [InlineData("4.50", ToWholeNumbers, Unknown, Met, NotMet)]
    [InlineData("4.99", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.49", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("14.50", ToWholeNumbers, Met, Unknown, Unknown)]
    [InlineData("14.99", ToWholeNumbers, Met, NotMet, Met)]
    [InlineData("14", ToWholeNumbers, Met, Met, NotMet)]
    [InlineData("15", ToWholeNumbers, Met, NotMet, Met)]
    public void Round_APrintedRate_FollowsTheDeclaredRounding(string rate, Rounding rounding, Truth atLeast5, Truth atMost14, Truth atLeast15)
    {
        var quantity = Read(rate);
        var value = new NumberValue(quantity.Rounding, quantity.Base);

        var range = Comparison.Round(value, rounding);

        Verdicts(range).ShouldBe((atLeast5, atMost14, atLeast15));
    }

    private static (Truth AtLeast5, Truth AtMost14, Truth AtLeast15) Verdicts(Interval range) => (
        Comparison.Compare(range, Operator.AtLeast, Interval.Exactly(5)),
        Comparison.Compare(range, Operator.AtMost, Interval.Exactly(14)),
        Comparison.Compare(range, Operator.AtLeast, Interval.Exactly(15)));

    private static Quantity Read(string rate)
    {
        QuantityReader.Read(rate + " /h", out var quantity, out _, out _).ShouldBe(QuantityFault.None);
        return quantity!;
    }
}

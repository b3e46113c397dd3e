using Criteria.Core.Facts;
using CsCheck;

namespace Criteria.Core.Tests.Facts;

public sealed class IntervalTests
{
    private static readonly Gen<Interval> Any =
        from low in Gen.Int[0, 9] from width in Gen.Int[0, 5] from closed in Gen.Bool select new Interval(low, low + width, closed || width == 0);

    [Theory]
    [InlineData("14.54", false)]
    [InlineData("14.55", true)]
    [InlineData("14.6", true)]
    [InlineData("14.6499", true)]
    [InlineData("14.65", false)]
    public void Rounding_Of14Point6_HoldsTheValuesThatRoundToIt(string value, bool expected)
    {
        QuantityReader.Read("14.6 /h", out var quantity, out _, out _);

        quantity!.Rounding.Contains(decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture)).ShouldBe(expected);
    }

    [Fact]
    public void Rounding_OfZero_DoesNotReachBelowZero()
    {
        QuantityReader.Read("0.0 /h", out var quantity, out _, out _);

        quantity!.Rounding.ShouldBe(new Interval(0, 0.05m, HighIncluded: false));
    }

    [Fact]
    public void HullWith_AnyOther_IsTheSmallestThatHoldsBoth() =>
        Gen.Select(Any, Any).Sample((left, right) =>
        {
            var hull = left.HullWith(right);

            hull.ShouldBe(right.HullWith(left));
            (hull.Low == left.Low || hull.Low == right.Low).ShouldBeTrue();
            (hull.High == left.High || hull.High == right.High).ShouldBeTrue();
            for (var at = 0m; at < 16; at += 0.5m)
            {
                if (left.Contains(at) || right.Contains(at))
                {
                    hull.Contains(at).ShouldBeTrue($"{at} in {hull} of {left} and {right}");
                }
            }

            hull.Contains(hull.High).ShouldBe(left.Contains(hull.High) || right.Contains(hull.High));
        }, iter: 2000);
}

using Criteria.Core.Facts;
using CsCheck;

namespace Criteria.Core.Tests.Facts;

public sealed class RatioTests
{
    [Theory]
    [InlineData(104, 416, 15, 0)] // 104 * 60 = 15 * 416
    [InlineData(103, 416, 15, -1)]
    [InlineData(105, 416, 15, 1)]
    [InlineData(5, 59, 5, 1)]
    [InlineData(5, 60, 5, 0)]
    [InlineData(5, 61, 5, -1)]
    public void CompareTo_EventsPerHour_IsExactOnTheThreshold(int events, int minutes, int threshold, int expected)
    {
        var rate = Ratio.Of(events * 60, minutes);

        rate.CompareTo(threshold).ShouldBe(expected);
    }

    [Fact]
    public void CompareTo_EventsPerHourAndAnyThreshold_AgreesWithWholeNumbers() =>
        Gen.Select(Gen.Int[0, 4000], Gen.Int[1, 1440], Gen.Int[0, 25000]).Sample((events, minutes, hundredths) =>
        {
            var rate = Ratio.Of(events * 60m, minutes);
            var threshold = (Ratio)(hundredths / 100m);

            // events / (minutes / 60) against hundredths / 100, in whole numbers only.
            var expected = ((long)events * 60 * 100).CompareTo((long)hundredths * minutes);
            Math.Sign(rate.CompareTo(threshold)).ShouldBe(expected);
        }, iter: 5000);

    [Fact]
    public void CompareTo_AQuotientThatNeverEnds_IsNotRounded()
    {
        var third = Ratio.Of(1, 3);

        (third < 0.3333333333333333333333333334m).ShouldBeTrue();
        (third > 0.3333333333333333333333333333m).ShouldBeTrue();
        (third == Ratio.Of(2, 6)).ShouldBeTrue();
        third.GetHashCode().ShouldBe(Ratio.Of(2, 6).GetHashCode());
    }

    [Fact]
    public void Default_IsZero() => (default(Ratio) == 0).ShouldBeTrue();

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Of_ADenominatorNotAboveZero_IsRefused(int denominator)
    {
        Action make = () => Ratio.Of(1, denominator);

        make.ShouldThrow<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Divide_ByZero_IsRefused()
    {
        Action divide = () => Ratio.Divide(1, 0);

        divide.ShouldThrow<ArgumentOutOfRangeException>();
    }

    [Theory]
    [InlineData(1, 8, 2, "0.13")] // halves away from zero
    [InlineData(1, 3, 2, "0.33")]
    [InlineData(30, 1, 2, "30")]
    [InlineData(29, 2, 1, "14.5")]
    public void ToText_HasNoMoreDecimalsThanAsked(int numerator, int denominator, int decimals, string expected) =>
        Ratio.Of(numerator, denominator).ToText(decimals).ShouldBe(expected);
}

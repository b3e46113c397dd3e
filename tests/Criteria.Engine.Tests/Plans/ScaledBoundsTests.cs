using Criteria.Core.Facts;
using Criteria.Engine.Plans;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Plans;

/// <summary>The cell of a number is what comparing quotients says, however the number is written.</summary>
public sealed class ScaledBoundsTests
{
    // Few digits often, so that numbers meet bounds; many sometimes, so that they do not fit into a whole number.
    private static readonly Gen<decimal> Numbers = Gen.OneOf(
        Gen.Int[0, 40].Select(whole => (decimal)whole),
        Gen.Int[0, 400].Select(tenths => tenths / 10m),
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[0, int.MaxValue], Gen.Int[0, 3], Gen.Int[0, 14]).Select((low, middle, high, decimals) => new decimal(low, middle, high, false, (byte)decimals)));

    private static readonly Gen<Ratio> Quotients = Gen.OneOf(
        Numbers.Select(number => (Ratio)number),
        Gen.Select(Gen.Int[0, 9_999_999], Gen.Int[1, 999]).Select((above, below) => Ratio.Of(above, below)),
        Gen.Select(Gen.Int[0, 999], Gen.Int[1, 9_999_999]).Select((above, below) => Ratio.Of(above * 60, below / 100m)));

    [Fact]
    public void CellOf_AnyNumber_IsWhatComparingQuotientsSays() => Gen.Select(Gen.OneOf(Gen.Int[0, 40].Select(whole => (decimal)whole), Gen.Int[0, 400].Select(tenths => tenths / 10m)).Array[1, ScaledBounds.Most], Quotients)
        .Sample(
            (ends, value) =>
            {
                Ratio[] bounds = [.. ends.Distinct().Order().Select(end => (Ratio)end)];

                var cell = new ScaledBounds(bounds).CellOf(value);

                cell.ShouldBe(bounds.Count(bound => value >= bound) + bounds.Count(bound => value > bound));
            },
            iter: Samples.Of(20_000));

    [Fact]
    public void ValueIn_EachCell_LiesInIt()
    {
        var bounds = new ScaledBounds([5, 14.6m, 15, 99_790.321m]);

        foreach (var cell in Enumerable.Range(0, bounds.CellCount))
        {
            bounds.CellOf(bounds.ValueIn(cell)).ShouldBe(cell);
        }
    }

    // Pounds in kilograms have eight decimals, a bound with more is compared as a quotient.
    [Theory]
    [InlineData("140.61362150", "140.6136215", 1)]
    [InlineData("140.61362149", "140.6136215", 0)]
    [InlineData("140.61362151", "140.6136215", 2)]
    [InlineData("0.12345678901", "0.123456789011", 0)]
    [InlineData("4294967295.5", "4294967295.5", 1)]
    [InlineData("99999999999.5", "99999999999.4", 2)]
    [InlineData("-1", "1", 0)]
    public void CellOf_NumbersOfManyDigits_IsExact(string value, string bound, int expected) =>
        new ScaledBounds([decimal.Parse(bound, System.Globalization.CultureInfo.InvariantCulture)])
            .CellOf(decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture)).ShouldBe(expected);
}

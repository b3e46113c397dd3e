using System.Globalization;
using Criteria.Core.Facts;
using CsCheck;

namespace Criteria.Core.Tests.Facts;

public sealed class QuantityReaderTests
{
    [Theory]
    [InlineData("178 cm", "178", Dimension.Length, "1")]
    [InlineData("178cm", "178", Dimension.Length, "1")]
    [InlineData("  178   cm  ", "178", Dimension.Length, "1")]
    [InlineData("1.78 m", "178", Dimension.Length, "1")]
    [InlineData("70 in", "177.8", Dimension.Length, "2.54")]
    [InlineData("5 ft 10 in", "177.8", Dimension.Length, "2.54")]
    [InlineData("5ft10in", "177.8", Dimension.Length, "2.54")]
    [InlineData("5 ft 10.5 in", "179.07", Dimension.Length, "0.254")]
    [InlineData("104 kg", "104", Dimension.Mass, "1")]
    [InlineData("229 lb", "103.87265273", Dimension.Mass, "0.45359237")]
    [InlineData("14.6 /h", "14.6", Dimension.Rate, "0.1")]
    [InlineData("14.6/h", "14.6", Dimension.Rate, "0.1")]
    [InlineData("14.60 /h", "14.6", Dimension.Rate, "0.01")]
    [InlineData("88 %", "88", Dimension.Share, "1")]
    [InlineData("88%", "88", Dimension.Share, "1")]
    [InlineData("0.88 fraction", "88", Dimension.Share, "1")]
    [InlineData("7 h 12 min", "432", Dimension.Duration, "1")]
    [InlineData("7h12min", "432", Dimension.Duration, "1")]
    [InlineData("7.2 h", "432", Dimension.Duration, "6")]
    [InlineData("432 min", "432", Dimension.Duration, "1")]
    [InlineData("35 kg/m2", "35", Dimension.BodyMassIndex, "1")]
    [InlineData("45 mmHg", "45", Dimension.Pressure, "1")]
    [InlineData("28 mmol/L", "28", Dimension.Concentration, "1")]
    [InlineData("52 years", "52", Dimension.Age, "1")]
    [InlineData("1 year", "1", Dimension.Age, "1")]
    [InlineData("101", "101", Dimension.None, "1")]
    [InlineData("3 points", "3", Dimension.None, "1")]
    [InlineData("0", "0", Dimension.None, "1")]
    [InlineData("9999999", "9999999", Dimension.None, "1")]
    public void Read_AGoodForm_GivesTheBaseValueAndTheStep(string text, string expected, Dimension dimension, string step)
    {
        var fault = QuantityReader.Read(text, out var quantity, out _, out _);

        fault.ShouldBe(QuantityFault.None);
        quantity.ShouldBe(new Quantity(Number(expected), dimension, Number(step), text.Trim()));
    }

    [Theory]
    [InlineData("", nameof(QuantityFault.NoNumber), 0, "")]
    [InlineData("   ", nameof(QuantityFault.NoNumber), 0, "   ")]
    [InlineData("tall", nameof(QuantityFault.NoNumber), 0, "tall")]
    [InlineData("about 43 cm", nameof(QuantityFault.NoNumber), 0, "about 43 cm")]
    [InlineData("14,6 /h", nameof(QuantityFault.DecimalComma), 0, "14,6")]
    [InlineData("1,234", nameof(QuantityFault.DecimalComma), 0, "1,234")]
    [InlineData("1.234,5", nameof(QuantityFault.DecimalComma), 0, "1.234,5")]
    [InlineData("-3 cm", nameof(QuantityFault.Negative), 0, "-3")]
    [InlineData("\u22123 cm", nameof(QuantityFault.Negative), 0, "\u22123")] // the minus sign of typesetters
    [InlineData("+3 cm", nameof(QuantityFault.NumberForm), 0, "+3")]
    [InlineData("1e3", nameof(QuantityFault.NumberForm), 0, "1")]
    [InlineData("1E3 cm", nameof(QuantityFault.NumberForm), 0, "1")]
    [InlineData("1.2.3", nameof(QuantityFault.NumberForm), 0, "1.2.3")]
    [InlineData("43-45 cm", nameof(QuantityFault.NumberForm), 0, "43-45")]
    [InlineData(".5 h", nameof(QuantityFault.NumberForm), 0, ".5")]
    [InlineData("5. h", nameof(QuantityFault.NumberForm), 0, "5.")]
    [InlineData(".", nameof(QuantityFault.NumberForm), 0, ".")]
    [InlineData("12345678 cm", nameof(QuantityFault.TooManyDigits), 0, "12345678")]
    [InlineData("1.2345678", nameof(QuantityFault.TooManyDigits), 0, "1.2345678")]
    [InlineData("43 centimetre", nameof(QuantityFault.UnknownUnit), 3, "centimetre")]
    [InlineData("43 CM", nameof(QuantityFault.UnknownUnit), 3, "CM")]
    [InlineData("5'10\"", nameof(QuantityFault.UnknownUnit), 1, "'10\"")]
    [InlineData("5 ft 3 kg", nameof(QuantityFault.MixedUnits), 5, "3 kg")]
    [InlineData("10 in 5 ft", nameof(QuantityFault.MixedUnits), 6, "5 ft")]
    [InlineData("5 ft 6 ft", nameof(QuantityFault.MixedUnits), 5, "6 ft")]
    [InlineData("5 ft 10", nameof(QuantityFault.MixedUnits), 5, "10")]
    [InlineData("1 000 cm", nameof(QuantityFault.NumberForm), 0, "1 000")]
    [InlineData("5 ft -3 in", nameof(QuantityFault.Negative), 5, "-3")]
    [InlineData("5 ft tall", nameof(QuantityFault.NoNumber), 5, "tall")]
    [InlineData("88 % 3 %", nameof(QuantityFault.MixedUnits), 5, "3 %")]
    [InlineData("\u0661\u0662 cm", nameof(QuantityFault.NoNumber), 0, "\u0661\u0662 cm")] // digits of another script
    public void Read_ABadForm_SaysWhatAndWhere(string text, string expected, int place, string faulty)
    {
        var fault = QuantityReader.Read(text, out var quantity, out var at, out var part);

        fault.ToString().ShouldBe(expected);
        quantity.ShouldBeNull();
        at.ShouldBe(place);
        part.ShouldBe(faulty);
    }

    [Fact]
    public void Read_AnyNumberOfAtMostSevenDigits_IsExact() =>
        Gen.Select(Gen.Int[1_000_000, 9_999_999], Gen.Int[0, 6]).Sample((digits, decimals) =>
        {
            var number = new decimal(digits, 0, 0, isNegative: false, (byte)decimals);
            var text = number.ToString("0." + new string('0', decimals), CultureInfo.InvariantCulture).TrimEnd('.');

            QuantityReader.Read(text + " cm", out var quantity, out _, out _).ShouldBe(QuantityFault.None);
            quantity!.Base.ShouldBe(number);
        }, iter: 1000);

    [Fact]
    public void Read_AnyText_NeverThrowsAndPointsInside() =>
        Gen.OneOf(Gen.String, Gen.String["0123456789.,-+ eE%/hftincmkgl\u2212b2"]).Sample(text =>
        {
            var fault = QuantityReader.Read(text, out var quantity, out var at, out var part);

            (quantity is null).ShouldBe(fault != QuantityFault.None);
            at.ShouldBeInRange(0, text.Length);
            (at + part.Length).ShouldBeLessThanOrEqualTo(text.Length);
        }, iter: 5000);

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}

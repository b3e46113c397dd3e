using Criteria.Core.Facts;
using CsCheck;
using UnitsNet;
using UnitsNet.Units;
using Duration = UnitsNet.Duration;

namespace Criteria.Core.Tests.Facts;

/// <summary>Conversions against the legal definitions, the UCUM check values and an independent library.</summary>
public sealed class UnitTests
{
    // The library computes in binary floating point; ours is exact.
    private const double Tolerance = 1e-12;

    private static readonly Dictionary<string, Func<double, double>> Reference = new(StringComparer.Ordinal)
    {
        ["mm"] = value => Length.From(value, LengthUnit.Millimeter).As(LengthUnit.Centimeter),
        ["cm"] = value => Length.From(value, LengthUnit.Centimeter).As(LengthUnit.Centimeter),
        ["m"] = value => Length.From(value, LengthUnit.Meter).As(LengthUnit.Centimeter),
        ["in"] = value => Length.From(value, LengthUnit.Inch).As(LengthUnit.Centimeter),
        ["inches"] = value => Length.From(value, LengthUnit.Inch).As(LengthUnit.Centimeter),
        ["ft"] = value => Length.From(value, LengthUnit.Foot).As(LengthUnit.Centimeter),
        ["kg"] = value => Mass.From(value, MassUnit.Kilogram).As(MassUnit.Kilogram),
        ["lb"] = value => Mass.From(value, MassUnit.Pound).As(MassUnit.Kilogram),
        ["lbs"] = value => Mass.From(value, MassUnit.Pound).As(MassUnit.Kilogram),
        ["min"] = value => Duration.From(value, DurationUnit.Minute).As(DurationUnit.Minute),
        ["minutes"] = value => Duration.From(value, DurationUnit.Minute).As(DurationUnit.Minute),
        ["h"] = value => Duration.From(value, DurationUnit.Hour).As(DurationUnit.Minute),
        ["hours"] = value => Duration.From(value, DurationUnit.Hour).As(DurationUnit.Minute),
        ["%"] = value => UnitsNet.Ratio.From(value, RatioUnit.Percent).As(RatioUnit.Percent),
        ["percent"] = value => UnitsNet.Ratio.From(value, RatioUnit.Percent).As(RatioUnit.Percent),
        ["fraction"] = value => UnitsNet.Ratio.From(value, RatioUnit.DecimalFraction).As(RatioUnit.Percent),
        ["/h"] = value => Frequency.From(value, FrequencyUnit.CyclePerHour).As(FrequencyUnit.CyclePerHour),
        ["mmHg"] = value => Pressure.From(value, PressureUnit.MillimeterOfMercury).As(PressureUnit.MillimeterOfMercury),
        ["mmol/L"] = value => Molarity.From(value, MolarityUnit.MillimolePerLiter).As(MolarityUnit.MillimolePerLiter),
        ["years"] = value => value,
        ["year"] = value => value,
        ["kg/m2"] = value => AreaDensity.From(value, AreaDensityUnit.KilogramPerSquareMeter).As(AreaDensityUnit.KilogramPerSquareMeter),
        ["points"] = value => value,
    };

    public static TheoryData<string> Symbols => [.. Units.Symbols];

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Find_EverySymbol_HasAReferenceThatAgrees(string symbol)
    {
        var unit = Units.Find(symbol).ShouldNotBeNull();
        var reference = Reference[symbol];

        Gen.Int[0, 9_999_999].Sample(number =>
        {
            var expected = reference(number / 1000.0);
            ((double)(number / 1000m * unit.Factor)).ShouldBe(expected, Math.Max(1, Math.Abs(expected)) * Tolerance);
        }, iter: 300);
    }

    // International yard and pound agreement of 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, exactly.
    [Theory]
    [InlineData("1 in", "2.54")]
    [InlineData("1 ft", "30.48")]
    [InlineData("3 ft", "91.44")]
    [InlineData("1 lb", "0.45359237")]
    // Check values of the UCUM specification's conversions.
    [InlineData("17 in", "43.18")]
    [InlineData("220 lb", "99.7903214")]
    [InlineData("7.5 h", "450")]
    public void Read_AWrittenQuantity_ConvertsExactly(string text, string expected)
    {
        QuantityReader.Read(text, out var quantity, out _, out _).ShouldBe(QuantityFault.None);

        quantity!.Base.ShouldBe(decimal.Parse(expected, System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Of_EveryDimension_HasASymbolButTheBareNumber()
    {
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            Units.Of(dimension).ShouldNotBeEmpty();
            Units.Of(dimension).ShouldAllBe(symbol => Units.Find(symbol)!.Dimension == dimension);
        }
    }

    [Theory]
    [InlineData("CM")]
    [InlineData("Kg")]
    [InlineData("")]
    [InlineData("stone")]
    public void Find_AnUnknownSymbol_IsNull(string symbol) => Units.Find(symbol).ShouldBeNull();
}

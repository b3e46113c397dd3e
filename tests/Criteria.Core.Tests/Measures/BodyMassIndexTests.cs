using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

public sealed class BodyMassIndexTests
{
    [Theory]
    [InlineData("height: 200 cm, weight: 140 kg", "35")]
    [InlineData("height: 2 m, weight: 140 kg", "35")]
    [InlineData("height: 200 cm, weight: 100.5 kg", "25.125")]
    public void Bmi_FromWeightAndHeight_IsExact(string intake, string expected)
    {
        var bmi = Bmi(intake);

        (bmi.Number!.Value.Low == decimal.Parse(expected, System.Globalization.CultureInfo.InvariantCulture)).ShouldBeTrue();
        bmi.Number!.Value.IsExact.ShouldBeTrue();
        bmi.Origin.Kind.ShouldBe(OriginKind.Computed);
    }

    [Fact]
    public void Bmi_FromPoundsAndInches_IsTheExactQuotient()
    {
        var bmi = Bmi("height: 70 in, weight: 229 lb");

        // 229 lb = 103.87265273 kg, 70 in = 1.778 m, by the definitions of 1959.
        (bmi.Number!.Value.Low == Ratio.Of(103.87265273m, 1.778m * 1.778m)).ShouldBeTrue();
    }

    [Theory]
    [InlineData("bmi: 32.8 kg/m2")]
    [InlineData("bmi: 32.8 kg/m2, height: 178 cm")]
    [InlineData("bmi: 32.8 kg/m2, weight: unknown, height: 178 cm")]
    public void Bmi_WrittenWithoutWeightOrHeight_StandsForWhatRoundsToIt(string intake)
    {
        var bmi = Bmi(intake);

        bmi.Number.ShouldBe(new Interval(32.75m, 32.85m, HighIncluded: false));
        bmi.Text.ShouldBe("32.8 kg/m2 as printed, which stands for 32.75 to below 32.85");
    }

    [Fact]
    public void Bmi_WrittenAsItIsComputed_IsExact() => Bmi("bmi: 32.8 kg/m2, height: 178 cm, weight: 104 kg").Number!.Value.IsExact.ShouldBeTrue();

    [Fact]
    public void Bmi_ThatDisagrees_IsEverythingFromOneToTheOther()
    {
        var bmi = Tiny.Read("case: T-1\nintake: { bmi: 36.0 kg/m2, height: 200 cm, weight: 140 kg }\n").Case!.Facts["bmi"];

        bmi.Number.ShouldBe(new Interval(35, 36.05m, HighIncluded: false));
        bmi.Origin.Text.ShouldBe("140 kg and 200 cm, which disagrees with the written 36.0 kg/m2");
    }

    [Fact]
    public void Bmi_WithNothing_IsUnknown() => Bmi("neck: 43 cm").State.ShouldBe(FactState.Absent);

    private static Fact Bmi(string intake) => Tiny.Case($"case: T-1\nintake: {{ {intake} }}\n").Facts["bmi"];
}

using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Body mass index: mass in kilograms over the square of height in metres.</summary>
internal static class BodyMassIndex
{
    private const int SquareCentimetresPerSquareMetre = 100 * 100;

    public static Fact Compute(FactDefinition definition, Fact? written, Fact weight, Fact height)
    {
        if (weight.Number is not { IsExact: true } mass || height.Number is not { IsExact: true } length || length.Low.Numerator == 0)
        {
            return written ?? Fact.Absent(definition);
        }

        var squared = Ratio.Multiply(length.Low, length.Low);
        var exact = Ratio.Divide(Ratio.Multiply(mass.Low, SquareCentimetresPerSquareMetre), squared);
        string From() => $"{weight.Text} and {height.Text}";
        return written?.Number is { } printed && !printed.Contains(exact)
            ? Measure.Number(definition, printed.HullWith(Interval.Exactly(exact)), () => $"{From()}, which disagrees with the written {written.Written}")
            : Measure.Number(definition, Interval.Exactly(exact), From);
    }
}

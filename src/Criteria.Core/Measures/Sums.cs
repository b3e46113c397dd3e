using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Sums of counts or of times.</summary>
internal static class Sums
{
    /// <summary>The sum. With a part missing it is at least what is known; a part that does not apply adds nothing.</summary>
    public static Fact Of(FactDefinition definition, IReadOnlyList<Fact> parts)
    {
        var counted = parts.Where(part => part.State != FactState.NotApplicable).ToArray();
        var known = counted.Where(part => part.Number is not null).ToArray();
        if (known.Length == 0)
        {
            return Fact.Absent(definition);
        }

        var low = Add(known.Select(part => part.Number!.Value.Low));
        var most = definition.Range!.Value.High;
        var high = known.Length == counted.Length ? Add(known.Select(part => part.Number!.Value.High)) : low > most ? low : most;
        string From() => string.Join(" + ", counted.Select(part => $"{part.Definition.Label.ToLowerInvariant()} {part.Text}"));
        return Measure.Number(definition, Interval.Between(low, high), From);
    }

    // Counts and times have no denominator, so the sum is exact.
    private static Ratio Add(IEnumerable<Ratio> numbers) => numbers.Sum(number => number.Rounded);
}

using Criteria.Core.Facts;

namespace Criteria.Engine.Settling;

/// <summary>One value of a fact for every cell in which nothing turns.</summary>
internal static class Cells
{
    /// <summary>The values.</summary>
    /// <param name="definition">The fact.</param>
    /// <param name="known">What is known of it.</param>
    /// <param name="bounds">The numbers at which something turns, lowest first.</param>
    public static Fact[] Of(FactDefinition definition, Fact known, Ratio[] bounds) => definition.Kind switch
    {
        FactKind.YesNo => [Value(definition, new YesNoValue(true)), Value(definition, new YesNoValue(false))],
        FactKind.Choice => [.. definition.Choices.Select(word => Value(definition, new ChoiceValue(word)))],
        _ when definition.IsNumeric && (known.Number ?? definition.Range) is { } range =>
            [.. Numbers(definition, range, bounds).Select(number => Value(definition, new NumberValue(Interval.Exactly(number))))],
        _ => [],
    };

    private static Fact Value(FactDefinition definition, FactValue value) => Fact.Known(definition, value, Provenance.Entered);

    private static IEnumerable<Ratio> Numbers(FactDefinition definition, Interval range, Ratio[] bounds)
    {
        var isWhole = definition.Kind == FactKind.Count;
        var ends = new List<Ratio> { range.Low };
        ends.AddRange(bounds.Where(bound => bound > range.Low && bound < range.High));
        ends.Add(range.High);
        var found = new SortedSet<Ratio>();
        for (var i = 0; i < ends.Count; i++)
        {
            Add(ends[i]);
            if (i + 1 < ends.Count)
            {
                // Between two ends: for whole numbers the next one, else the middle.
                Add(isWhole ? decimal.Floor(ends[i].Rounded) + 1 : (ends[i].Rounded + ends[i + 1].Rounded) / 2);
            }
        }

        return found;

        void Add(Ratio number)
        {
            if (range.Contains(number))
            {
                found.Add(isWhole ? decimal.Ceiling(number.Rounded) : number);
            }
        }
    }
}

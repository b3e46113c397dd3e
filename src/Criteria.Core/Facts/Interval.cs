namespace Criteria.Core.Facts;

/// <summary>Everything that a number may be: one value, or a range when only a rounded figure or a part is known.</summary>
/// <param name="Low">The lowest possible value, always included.</param>
/// <param name="High">The highest value.</param>
/// <param name="HighIncluded">Whether <paramref name="High"/> itself is possible. A figure rounded to 14.6 ends before 14.65.</param>
public readonly record struct Interval(Ratio Low, Ratio High, bool HighIncluded)
{
    /// <summary>Exactly one value.</summary>
    public static Interval Exactly(Ratio value) => new(value, value, true);

    /// <summary>From <paramref name="low"/> to <paramref name="high"/>, both possible.</summary>
    public static Interval Between(Ratio low, Ratio high) => new(low, high, true);

    /// <summary>Whether one value only is possible.</summary>
    public bool IsExact => Low == High;

    /// <summary>Whether <paramref name="value"/> is possible.</summary>
    public bool Contains(Ratio value) => value >= Low && (HighIncluded ? value <= High : value < High);

    /// <summary>Every value times a number that is not below zero.</summary>
    internal Interval Times(Ratio factor) =>
        factor == 1 ? this : new Interval(Ratio.Multiply(Low, factor), Ratio.Multiply(High, factor), HighIncluded);

    /// <summary>The smallest interval that holds both.</summary>
    public Interval HullWith(Interval other)
    {
        var low = Low <= other.Low ? Low : other.Low;
        return High.CompareTo(other.High) switch
        {
            > 0 => new Interval(low, High, HighIncluded),
            < 0 => new Interval(low, other.High, other.HighIncluded),
            _ => new Interval(low, High, HighIncluded || other.HighIncluded),
        };
    }
}

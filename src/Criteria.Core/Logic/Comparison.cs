using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>How two numbers are compared.</summary>
internal enum Operator
{
    /// <summary><c>&gt;=</c>, the bound included.</summary>
    AtLeast = 0,

    /// <summary><c>&gt;</c>, the bound not included.</summary>
    Above,

    /// <summary><c>&lt;=</c>, the bound included.</summary>
    AtMost,

    /// <summary><c>&lt;</c>, the bound not included.</summary>
    Below,

    /// <summary><c>=</c>.</summary>
    Equal,

    /// <summary><c>!=</c>.</summary>
    Different,
}

/// <summary>How a ruleset takes rounded figures.</summary>
public enum Rounding
{
    /// <summary>Unrounded values count; a printed figure stands for every value that rounds to it.</summary>
    None = 0,

    /// <summary>A printed figure counts as it stands.</summary>
    AsPrinted,

    /// <summary>Values are rounded to whole numbers first, halves upwards.</summary>
    ToWholeNumbers,
}

/// <summary>Compares numbers of which only an interval may be known.</summary>
internal static class Comparison
{
    /// <summary>Met when every possible pair compares so, not met when none does, else unknown.</summary>
    public static Truth Compare(Interval left, Operator comparison, Interval right) => comparison switch
    {
        Operator.AtLeast => Truths.Not(Compare(left, Operator.Below, right)),
        Operator.Above => Compare(right, Operator.Below, left),
        Operator.AtMost => Truths.Not(Compare(right, Operator.Below, left)),
        Operator.Below => Below(left, right),
        Operator.Equal => Equal(left, right),
        _ => Truths.Not(Equal(left, right)),
    };

    /// <summary>The number as a ruleset's rounding takes it.</summary>
    public static Interval Round(NumberValue value, Rounding rounding)
    {
        ArgumentNullException.ThrowIfNull(value);
        return rounding switch
        {
            Rounding.AsPrinted when value.Printed is { } printed => Interval.Exactly(printed),
            Rounding.ToWholeNumbers => ToWhole(value.Range),
            _ => value.Range,
        };
    }

    /// <summary>The sign of an operator.</summary>
    public static string Sign(this Operator comparison) => comparison switch
    {
        Operator.AtLeast => ">=",
        Operator.Above => ">",
        Operator.AtMost => "<=",
        Operator.Below => "<",
        Operator.Equal => "=",
        _ => "!=",
    };

    private static Truth Below(Interval left, Interval right)
    {
        // Always below: the highest left is under the lowest right, or touches it without being reached.
        if (left.High < right.Low || (left.High == right.Low && !left.HighIncluded))
        {
            return Truth.Met;
        }

        // Never below: the lowest left is at or over the highest right.
        return left.Low >= right.High ? Truth.NotMet : Truth.Unknown;
    }

    private static Truth Equal(Interval left, Interval right) =>
        left.IsExact && right.IsExact && left.Low == right.Low ? Truth.Met
        : Below(left, right) == Truth.Met || Below(right, left) == Truth.Met ? Truth.NotMet
        : Truth.Unknown;

    private static Interval ToWhole(Interval range)
    {
        var low = HalfUp(range.Low);
        var high = HalfUp(range.High);
        return range.HighIncluded || range.High.Rounded + 0.5m != decimal.Floor(range.High.Rounded + 0.5m)
            ? Interval.Between(low, high)
            : Interval.Between(low, Math.Max(low, high - 1));
    }

    private static decimal HalfUp(Ratio value) => decimal.Floor((value.Numerator / value.Denominator) + 0.5m);
}

using System.Globalization;

namespace Criteria.Core.Facts;

/// <summary>An exact quotient of two decimals, so that <c>events / hours</c> is compared without rounding.</summary>
/// <remarks>
/// Comparison multiplies crosswise: <c>events * 60</c> against <c>threshold * minutes</c>. Written numbers have at most
/// <see cref="MostDigits"/> digits, so the products stay within the 28 digits that a decimal holds exactly.
/// </remarks>
public readonly struct Ratio : IEquatable<Ratio>, IComparable<Ratio>
{
    /// <summary>Most significant digits that a number in a case or a ruleset may have.</summary>
    public const int MostDigits = 7;

    private readonly decimal _denominator;

    private Ratio(decimal numerator, decimal denominator)
    {
        Numerator = numerator;
        _denominator = denominator;
    }

    /// <summary>The number above the line.</summary>
    public decimal Numerator { get; }

    /// <summary>The number below the line, above zero.</summary>
    public decimal Denominator => _denominator == 0 ? 1 : _denominator;

    /// <summary>Whether it was written as one number, without a line.</summary>
    internal bool IsUndivided => _denominator == 0 || _denominator == 1;

    /// <summary>The quotient as a decimal, rounded to 28 digits: for printing, not for comparing.</summary>
    public decimal Rounded => Numerator / Denominator;

    /// <summary>A whole or decimal number.</summary>
    public static implicit operator Ratio(decimal value) => new(value, 1);

    /// <summary>A whole number.</summary>
    public static implicit operator Ratio(int value) => new(value, 1);

    /// <summary>The quotient of two decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="denominator"/> is not above zero.</exception>
    public static Ratio Of(decimal numerator, decimal denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        return new Ratio(numerator, denominator);
    }

    /// <summary>The quotient of two ratios.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is not above zero.</exception>
    public static Ratio Divide(Ratio dividend, Ratio divisor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(divisor.Numerator, 0);
        return new Ratio(dividend.Numerator * divisor.Denominator, dividend.Denominator * divisor.Numerator);
    }

    /// <summary>The product of two ratios.</summary>
    public static Ratio Multiply(Ratio left, Ratio right) =>
        new(left.Numerator * right.Numerator, left.Denominator * right.Denominator);

    /// <inheritdoc/>
    public int CompareTo(Ratio other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <inheritdoc/>
    public bool Equals(Ratio other) => CompareTo(other) == 0;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Ratio other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => decimal.Round(Rounded, 12).GetHashCode();

    /// <summary>The number with at most <paramref name="decimals"/> decimals, in the invariant culture.</summary>
    public string ToText(int decimals) =>
        decimal.Round(Rounded, decimals, MidpointRounding.AwayFromZero).ToString("0.############", CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    public override string ToString() => ToText(6);

    /// <summary>Whether both are the same number.</summary>
    public static bool operator ==(Ratio left, Ratio right) => left.Equals(right);

    /// <summary>Whether they differ.</summary>
    public static bool operator !=(Ratio left, Ratio right) => !left.Equals(right);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Ratio left, Ratio right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Ratio left, Ratio right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left is smaller or equal.</summary>
    public static bool operator <=(Ratio left, Ratio right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left is larger or equal.</summary>
    public static bool operator >=(Ratio left, Ratio right) => left.CompareTo(right) >= 0;
}

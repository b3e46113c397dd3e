namespace Criteria.Core.Facts;

/// <summary>What a number measures; only numbers of one dimension are compared.</summary>
public enum Dimension
{
    /// <summary>A bare number: a count or points.</summary>
    None = 0,

    /// <summary>Events per hour.</summary>
    Rate,

    /// <summary>A share, in percent.</summary>
    Share,

    /// <summary>A length.</summary>
    Length,

    /// <summary>A mass.</summary>
    Mass,

    /// <summary>Mass over squared height.</summary>
    BodyMassIndex,

    /// <summary>A time within a night.</summary>
    Duration,

    /// <summary>An age in years.</summary>
    Age,

    /// <summary>A pressure.</summary>
    Pressure,

    /// <summary>An amount of substance in a volume.</summary>
    Concentration,
}

/// <summary>A unit a number may be written in. All factors are exact by definition of the unit.</summary>
/// <param name="Symbol">How reports write it.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">How many of the dimension's base unit it is. Exact.</param>
public sealed record Unit(string Symbol, Dimension Dimension, decimal Factor)
{
    /// <inheritdoc/>
    public override string ToString() => Symbol;
}

/// <summary>The units that cases and rulesets may write.</summary>
/// <remarks>
/// The inch is 2.54 cm and the pound 0.45359237 kg exactly (international yard and pound agreement of 1959). Decimal
/// factors keep conversions exact; conversion libraries compute in binary floating point.
/// </remarks>
public static class Units
{
    /// <summary>The bare number.</summary>
    public static readonly Unit One = new("", Dimension.None, 1);

    /// <summary>Minutes, the base unit of durations.</summary>
    public static readonly Unit Minute = new("min", Dimension.Duration, 1);

    /// <summary>Hours.</summary>
    public static readonly Unit Hour = new("h", Dimension.Duration, 60);

    /// <summary>Events per hour.</summary>
    public static readonly Unit PerHour = new("/h", Dimension.Rate, 1);

    private static readonly Unit Inch = new("in", Dimension.Length, 2.54m);
    private static readonly Unit Foot = new("ft", Dimension.Length, 30.48m);
    private static readonly Unit Pound = new("lb", Dimension.Mass, 0.45359237m);
    private static readonly Unit Year = new("years", Dimension.Age, 1);
    private static readonly Unit Percent = new("%", Dimension.Share, 1);

    private static readonly Dictionary<string, Unit> BySymbol = new(StringComparer.Ordinal)
    {
        ["/h"] = PerHour,
        ["%"] = Percent,
        ["percent"] = Percent,
        ["fraction"] = new("fraction", Dimension.Share, 100),
        ["cm"] = new("cm", Dimension.Length, 1),
        ["mm"] = new("mm", Dimension.Length, 0.1m),
        ["m"] = new("m", Dimension.Length, 100),
        ["in"] = Inch,
        ["inches"] = Inch,
        ["ft"] = Foot,
        ["kg"] = new("kg", Dimension.Mass, 1),
        ["lb"] = Pound,
        ["lbs"] = Pound,
        ["kg/m2"] = new("kg/m2", Dimension.BodyMassIndex, 1),
        ["min"] = Minute,
        ["minutes"] = Minute,
        ["h"] = Hour,
        ["hours"] = Hour,
        ["years"] = Year,
        ["year"] = Year,
        ["mmHg"] = new("mmHg", Dimension.Pressure, 1),
        ["mmol/L"] = new("mmol/L", Dimension.Concentration, 1),
        ["points"] = new("points", Dimension.None, 1),
    };

    /// <summary>All symbols, for messages.</summary>
    public static IEnumerable<string> Symbols => BySymbol.Keys;

    /// <summary>The unit written so, or null.</summary>
    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);

    /// <summary>The symbols of one dimension, for messages.</summary>
    public static IEnumerable<string> Of(Dimension dimension) =>
        BySymbol.Where(pair => pair.Value.Dimension == dimension).Select(pair => pair.Key);
}

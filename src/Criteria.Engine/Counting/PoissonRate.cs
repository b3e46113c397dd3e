using MathNet.Numerics.Distributions;

namespace Criteria.Engine.Counting;

/// <summary>
/// What counting alone leaves open in a rate: the events of one night as a Poisson count. A floor, because real events
/// cluster by position and sleep stage; scorer, sensor and other nights are outside it too.
/// </summary>
/// <remarks>
/// Interval: Garwood 1936, exact and two-sided, as in R's <c>poisson.test</c>. Shares: Jeffreys prior, a gamma distribution of
/// shape events + 1/2. For words and figures only; nothing here decides a grade or a standing.
/// </remarks>
public static class PoissonRate
{
    private const double Half = 1d / 2;

    /// <summary>The exact two-sided interval of the rate per hour.</summary>
    /// <param name="events">The count, not below zero.</param>
    /// <param name="hours">The time, above zero.</param>
    /// <param name="level">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static (double Low, double High) Interval(int events, double hours, double level)
    {
        Check(events, hours);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(level, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(level, 1);
        var tail = (1 - level) * Half;
        var low = events == 0 ? 0 : Gamma.InvCDF(events, 1, tail);
        return (low / hours, Gamma.InvCDF(events + 1, 1, 1 - tail) / hours);
    }

    /// <summary>The share of the distribution that lies below a rate per hour, with the Jeffreys prior.</summary>
    /// <param name="events">The count, not below zero.</param>
    /// <param name="hours">The time, above zero.</param>
    /// <param name="rate">The rate per hour, not below zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double ShareBelow(int events, double hours, double rate)
    {
        Check(events, hours);
        ArgumentOutOfRangeException.ThrowIfNegative(rate);
        return rate == 0 ? 0 : Gamma.CDF(events + Half, 1, rate * hours);
    }

    private static void Check(int events, double hours)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hours);
    }
}

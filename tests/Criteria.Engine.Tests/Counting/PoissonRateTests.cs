using System.Globalization;
using Criteria.Engine.Counting;

namespace Criteria.Engine.Tests.Counting;

/// <summary>The interval and the shares against R's <c>poisson.test</c> (4.2.2) and against SciPy.</summary>
public sealed class PoissonRateTests
{
    // R prints four decimals.
    private const double AsPrinted = 0.00005;
    private const double SixDecimals = 0.0000005;

    [Theory]
    [InlineData(0, 6, 0.0000, 0.6148)]
    [InlineData(1, 6, 0.0042, 0.9286)]
    [InlineData(5, 6, 0.2706, 1.9447)]
    [InlineData(12, 6, 1.0334, 3.4936)]
    [InlineData(24, 6, 2.5629, 5.9517)]
    [InlineData(20, 4, 3.0541, 7.7221)]
    [InlineData(29, 6, 3.2370, 6.9415)]
    [InlineData(30, 6, 3.3735, 7.1378)]
    [InlineData(60, 4, 11.4466, 19.3080)]
    [InlineData(89, 6, 11.9124, 18.2537)]
    [InlineData(90, 6, 12.0618, 18.4375)]
    [InlineData(150, 5, 25.3912, 35.2034)]
    [InlineData(180, 6, 25.7773, 34.7171)]
    [InlineData(300, 5, 53.4019, 67.1882)]
    public void Interval_AtNinetyFivePerCent_IsThatOfPoissonTest(int events, double hours, double low, double high)
    {
        var interval = PoissonRate.Interval(events, hours, 0.95);

        interval.Low.ShouldBe(low, AsPrinted);
        interval.High.ShouldBe(high, AsPrinted);
    }

    [Theory]
    [InlineData(0.90, 12.4974, 17.8731)]
    [InlineData(0.99, 11.2404, 19.5742)]
    public void Interval_AtOtherLevels_IsThatOfPoissonTest(double level, double low, double high)
    {
        var interval = PoissonRate.Interval(90, 6, level);

        interval.Low.ShouldBe(low, AsPrinted);
        interval.High.ShouldBe(high, AsPrinted);
    }

    [Theory]
    [InlineData(30, 6, 5, 0.487815)]
    [InlineData(36, 6, 5, 0.137578)]
    [InlineData(28, 4, 5, 0.042604)]
    [InlineData(84, 6, 15, 0.732993)]
    [InlineData(90, 6, 15, 0.492982)]
    [InlineData(100, 6, 15, 0.146239)]
    [InlineData(180, 6, 30, 0.495041)]
    [InlineData(200, 6, 30, 0.069902)]
    public void ShareBelow_AThreshold_IsTheComputedOne(int events, double hours, double threshold, double share) =>
        PoissonRate.ShareBelow(events, hours, threshold).ShouldBe(share, SixDecimals);

    [Fact]
    public void IntervalAndShares_OfSixtyNights_AreThoseOfSciPy()
    {
        var rows = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Counting", "poisson-scipy.csv")).Skip(2)
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()).ToArray();

        rows.Length.ShouldBe(60);
        foreach (var row in rows)
        {
            var (events, hours) = ((int)row[0], row[1] / 60);
            var interval = PoissonRate.Interval(events, hours, 0.95);
            interval.Low.ShouldBe(row[2], 1e-6, $"{events} in {hours}");
            interval.High.ShouldBe(row[3], 1e-6, $"{events} in {hours}");
            PoissonRate.ShareBelow(events, hours, 5).ShouldBe(row[4], 1e-6);
            PoissonRate.ShareBelow(events, hours, 15).ShouldBe(row[5], 1e-6);
            PoissonRate.ShareBelow(events, hours, 30).ShouldBe(row[6], 1e-6);
        }
    }

    [Theory]
    [InlineData(-1, 6, 0.95)]
    [InlineData(1, 0, 0.95)]
    [InlineData(1, 6, 0)]
    [InlineData(1, 6, 1)]
    public void Interval_OfWhatCannotBe_IsRefused(int events, double hours, double level) =>
        Should.Throw<ArgumentOutOfRangeException>(() => PoissonRate.Interval(events, hours, level));
}

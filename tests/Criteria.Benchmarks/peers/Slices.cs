using System.Diagnostics;
using System.Globalization;

namespace Criteria.Benchmarks.Peers;

/// <summary>Times something in many short slices: the least of them was not interrupted by other work on the machine.</summary>
internal static class Slices
{
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(2);

    /// <summary>Nanoseconds a case, one for each slice; those of the first two seconds are not counted, while the runtime still compiles.</summary>
    public static double[] Time(int cases, int slices, Action slice)
    {
        var times = new double[slices];
        for (var begin = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(begin) < WarmUp;)
        {
            slice();
        }

        for (var i = 0; i < slices; i++)
        {
            var start = Stopwatch.GetTimestamp();
            slice();
            times[i] = Stopwatch.GetElapsedTime(start).TotalNanoseconds / cases;
        }

        return times;
    }

    /// <summary>The one in the middle.</summary>
    public static double Median(double[] times) => times.Order().ElementAt(times.Length / 2);

    /// <summary>A time in a unit that fits.</summary>
    public static string Text(double nanoseconds) =>
        nanoseconds < 1e6 ? string.Create(CultureInfo.InvariantCulture, $"{nanoseconds / 1e3:0.00} µs") : string.Create(CultureInfo.InvariantCulture, $"{nanoseconds / 1e6:0.0} ms");
}

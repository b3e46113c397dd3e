using System.Globalization;

namespace Criteria.Engine.Tests.Support;

/// <summary>How many random cases a property is tried on: more than usual with <c>CRITERIA_SAMPLES=20</c>.</summary>
internal static class Samples
{
    private static readonly int Times =
        int.TryParse(Environment.GetEnvironmentVariable("CRITERIA_SAMPLES"), CultureInfo.InvariantCulture, out var times) ? times : 1;

    public static int Of(int usual) => usual * Times;
}

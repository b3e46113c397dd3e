using System.Globalization;

namespace Criteria.Core.Facts;

/// <summary>Calendar dates as case files, traces and JSON write them.</summary>
public static class IsoDate
{
    /// <summary>Year, month and day (ISO 8601): <c>2026-06-03</c>, in every culture.</summary>
    public static string ToIso(this DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

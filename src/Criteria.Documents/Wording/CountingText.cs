using System.Globalization;
using Criteria.Core.Rulesets;
using Criteria.Engine.Counting;
using Humanizer;

namespace Criteria.Documents.Wording;

/// <summary>How near a grade lies to its boundaries, and what counting leaves open, in words.</summary>
internal static class CountingText
{
    /// <summary>3 more events, or 11 fewer minutes, reach moderate (15/h).</summary>
    public static string Nearest(Closeness closeness) =>
        closeness.Nearest is { } boundary ? Words.Sentence(Reach(boundary)) : "No boundary can be reached by one change of count or time.";

    /// <summary>Both boundaries, the one below first.</summary>
    public static IEnumerable<string> Boundaries(Closeness closeness) =>
        new[] { closeness.Below, closeness.Above }.OfType<Boundary>().Select(boundary => Words.Sentence(Reach(boundary)));

    /// <summary>What counting alone allows, and why that is too little.</summary>
    public static string Interval(Closeness closeness) =>
        $"Counting error alone allows {Rate(closeness.Low)} to {Rate(closeness.High)}/h ({Percent(closeness.Level)}, exact Poisson).";

    /// <summary>Why that is too little; read once.</summary>
    public const string Floor = "Counting error is a floor. Events cluster, scorers and nights differ, so the true spread is wider.";

    /// <summary>What was published on how much nights differ: another matter than counting, and so a line of its own.</summary>
    public static string Nights(NightFigure figure) => $"Night to night, published: {Share(figure)}.";

    /// <summary>The same without its label.</summary>
    public static string Share(NightFigure figure) =>
        $"about {(figure.LowPercent == figure.HighPercent ? "" : $"{Number(figure.LowPercent)} to ")}{Number(figure.HighPercent)} % of {figure.Of}";

    /// <summary>Which share of that lies in which band, as far as it shows in whole per cent.</summary>
    public static string Shares(Closeness closeness)
    {
        var shares = closeness.Shares.Where(share => share.Share * 100 >= 1).Select(share => $"{Percent(share.Share)} in {share.Grade}");
        return $"Of what counting alone allows (Jeffreys prior): {Words.List(shares)}.";
    }

    private static string Number(decimal number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Rate(double rate) => rate.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Percent(double share) => Math.Round(share * 100).ToString("0", CultureInfo.InvariantCulture) + " %";

    private static string Reach(Boundary boundary)
    {
        var ways = new List<string>();
        if (boundary.Events is { } events)
        {
            ways.Add($"{events.ToString(CultureInfo.InvariantCulture)} {(boundary.Above ? "more" : "fewer")} {(events == 1 ? "event" : "events")}");
        }

        if (boundary.Minutes is { } minutes)
        {
            ways.Add($"{minutes.ToString(CultureInfo.InvariantCulture)} {(boundary.Above ? "fewer" : "more")} {(minutes == 1 ? "minute" : "minutes")}");
        }

        var target = boundary.Grade.Any(char.IsAsciiDigit) ? boundary.Grade : $"{boundary.Grade} ({(boundary.Above ? "" : "boundary ")}{boundary.At.ToText(1)}/h)";
        return ways.Count == 0 ? $"nothing of one kind reaches {target}" : $"{ways.Humanize(way => way, "or")} would reach {target}";
    }
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Engine.Counting;

/// <summary>What it takes to reach the grade on the other side of a boundary, one change at a time.</summary>
/// <param name="At">The boundary, per hour.</param>
/// <param name="Grade">The grade on the other side.</param>
/// <param name="Above">Whether that grade is the more severe one.</param>
/// <param name="Events">So many more events reach it, or fewer where it lies below; null where no count does.</param>
/// <param name="Minutes">So many fewer minutes of the denominator reach it, or more where it lies below; null where no plausible time does.</param>
public sealed record Boundary(Ratio At, string Grade, bool Above, int? Events, int? Minutes);

/// <summary>The share of what counting alone leaves open that lies in one band.</summary>
public sealed record BandShare(string Grade, double Share);

/// <summary>How near a graded rate lies to its boundaries, and what counting alone leaves open. Never changes the grade.</summary>
/// <param name="Events">The count.</param>
/// <param name="Minutes">The denominator.</param>
/// <param name="Below">The nearest boundary below, or null in the mildest band.</param>
/// <param name="Above">The nearest boundary above, or null in the most severe band.</param>
/// <param name="Level">The confidence level of the interval.</param>
/// <param name="Low">The low end of the exact interval, per hour.</param>
/// <param name="High">The high end of the exact interval, per hour.</param>
/// <param name="Shares">The share in each band, mildest first.</param>
public sealed record Closeness(
    int Events, decimal Minutes, Boundary? Below, Boundary? Above, double Level, double Low, double High, ImmutableArray<BandShare> Shares)
{
    /// <summary>The level that reports use.</summary>
    public const double UsualLevel = 0.95;

    private const int MinutesPerHour = 60;

    /// <summary>The boundary that the fewest events reach; the other one where only that can be reached.</summary>
    public Boundary? Nearest => (Below, Above) switch
    {
        ({ Events: { } fewer } below, { Events: { } more } above) => fewer < more ? below : above,
        ({ Events: not null } below, _) => below,
        var (below, above) => above ?? below,
    };

    /// <summary>Whether a boundary is no further than one standard error of the count, its square root.</summary>
    public bool IsNear => Nearest?.Events is { } events && events * events <= Events;

    /// <summary>Whether the counting interval reaches beyond the grade's own band.</summary>
    public bool Straddles => (Below is not null && Low < (double)Below.At.Rounded) || (Above is not null && High >= (double)Above.At.Rounded);

    /// <summary>That of a grade of an index of which count and time are known exactly; null for any other.</summary>
    public static Closeness? Of(GradeBody grade, BodyOutcome outcome, FactSet facts)
    {
        ArgumentNullException.ThrowIfNull(grade);
        ArgumentNullException.ThrowIfNull(facts);
        if (outcome.Truth != Truth.Met || facts[grade.Of].Number is not { IsExact: true } || Counts(grade.Of, facts) is not var (events, minutes, plausible))
        {
            return null;
        }

        var band = outcome.LowestBand;
        var hours = (double)(minutes / MinutesPerHour);
        var (low, high) = PoissonRate.Interval(events, hours, UsualLevel);
        return new Closeness(
            events, minutes,
            band == 0 ? null : Reach(grade.Bands, band - 1, above: false, events, minutes, plausible),
            band == grade.Bands.Length - 1 ? null : Reach(grade.Bands, band + 1, above: true, events, minutes, plausible),
            UsualLevel, low, high, SharesOf(grade.Bands, events, hours));
    }

    private static (int Events, decimal Minutes, Interval? Plausible)? Counts(FactDefinition rate, FactSet facts)
    {
        if (facts.Vocabulary.Indices.FirstOrDefault(index => ReferenceEquals(index.Rate, rate)) is not { } index || facts[index.Events].Number is not { IsExact: true } count)
        {
            return null;
        }

        var own = facts[index.Time];
        var ofNight = facts[rate.Computed!.From[^1]];
        var time = own.IsKnown ? own : ofNight;
        return time.Number is { IsExact: true, Low: var minutes } && minutes.Numerator > 0
            ? ((int)count.Low.Rounded, minutes.Rounded, ofNight.Definition.Plausible)
            : null;
    }

    private static Boundary Reach(ImmutableArray<Band> bands, int target, bool above, int events, decimal minutes, Interval? plausible)
    {
        var edge = above ? bands[target].Lower!.Value : bands[target].Upper!.Value;
        var included = above ? bands[target].LowerIncluded : bands[target].UpperIncluded;

        // events * 60 against edge * minutes: the first whole number on the other side.
        var needed = edge.Rounded * minutes / MinutesPerHour;
        var count = above ? FirstAtOrAbove(needed, included) : LastAtOrBelow(needed, included);
        var limit = edge.Numerator == 0 ? 0 : events * MinutesPerHour / edge.Rounded;
        var time = above ? LastAtOrBelow(limit, included) : FirstAtOrAbove(limit, included);
        return new Boundary(
            edge, bands[target].Grade, above,
            count < 0 ? null : (int)Math.Abs(count - events),
            events == 0 || time <= 0 || plausible is { } times && !times.Contains(time) ? null : (int)decimal.Ceiling(Math.Abs(time - minutes)));
    }

    private static decimal FirstAtOrAbove(decimal limit, bool included) =>
        included ? decimal.Ceiling(limit) : decimal.Floor(limit) + 1;

    private static decimal LastAtOrBelow(decimal limit, bool included) =>
        included ? decimal.Floor(limit) : decimal.Ceiling(limit) - 1;

    private static ImmutableArray<BandShare> SharesOf(ImmutableArray<Band> bands, int events, double hours)
    {
        var shares = ImmutableArray.CreateBuilder<BandShare>(bands.Length);
        var below = 0d;
        foreach (var band in bands)
        {
            var upTo = band.Upper is { } upper ? PoissonRate.ShareBelow(events, hours, (double)upper.Rounded) : 1;
            shares.Add(new BandShare(band.Grade, upTo - below));
            below = upTo;
        }

        return shares.MoveToImmutable();
    }
}

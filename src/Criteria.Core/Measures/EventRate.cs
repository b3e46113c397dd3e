using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Events per hour from a count and a time, exact; else what a printed figure may stand for.</summary>
internal static class EventRate
{
    private const int MinutesPerHour = 60;
    private const decimal HalfMinute = 1m / 2;

    public static Fact Compute(FactDefinition definition, Fact events, Fact time, Fact printed, Fact nightTime)
    {
        var denominator = time.IsKnown ? time : nightTime;
        if (Exact(events, denominator) is not { } exact)
        {
            return printed.Number is { } range
                ? new Fact(definition, FactState.Known, printed.Value, printed.Origin, printed.Written)
                : printed.State == FactState.Absent ? Fact.Absent(definition) : new Fact(definition, printed.State, null, printed.Origin);
        }

        string From() => $"{events.Text} events in {denominator.Text}";
        if (printed.Number is { } figure && !figure.Contains(exact))
        {
            return Measure.Number(
                definition, figure.HullWith(Interval.Exactly(exact)), () => $"{From()}, which disagrees with the printed {printed.Written}", Figure(printed));
        }

        return Measure.Number(definition, Interval.Exactly(exact), From, Figure(printed));
    }

    /// <summary>Events per hour of a time, from and to what the count may be.</summary>
    public static Fact Over(FactDefinition definition, Fact events, Fact time)
    {
        if (events.Number is not { } count || time.Number is not { IsExact: true } minutes || minutes.Low.Numerator == 0)
        {
            return Fact.Absent(definition);
        }

        return Measure.Number(
            definition,
            new Interval(PerHour(count.Low, minutes.Low), PerHour(count.High, minutes.Low), count.HighIncluded),
            () => $"{events.Text} events in {time.Text}");
    }

    /// <summary>The rates that a count and a time written to the minute allow; the exact quotient stands as its figure.</summary>
    public static Fact Counted(FactDefinition definition, Fact events, Fact time, Fact nightTime)
    {
        var denominator = time.IsKnown ? time : nightTime;
        return Exact(events, denominator) is { } exact
            ? Measure.Number(definition, Allowed(events, denominator), () => $"{events.Text} events in {denominator.Text}", exact)
            : Fact.Absent(definition);
    }

    // A time written to the minute stands for half a minute less up to half a minute more.
    private static Interval Allowed(Fact events, Fact time)
    {
        var (count, minutes) = (events.Number!.Value.Low, time.Number!.Value.Low.Rounded);
        return minutes <= HalfMinute
            ? Interval.Exactly(PerHour(count, minutes))
            : Interval.Between(PerHour(count, minutes + HalfMinute), PerHour(count, minutes - HalfMinute));
    }

    private static Ratio? Exact(Fact events, Fact time) =>
        events.Number is { IsExact: true } count && time.Number is { IsExact: true } minutes && minutes.Low.Numerator > 0
            ? PerHour(count.Low, minutes.Low)
            : null;

    private static Ratio PerHour(Ratio count, Ratio minutes) => Ratio.Divide(Ratio.Multiply(count, MinutesPerHour), minutes);

    private static Ratio? Figure(Fact printed) => (printed.Value as NumberValue)?.Printed;
}

using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>The first index in a list that the case supplies, its count and its denominator: one choice for all three.</summary>
internal static class SuppliedIndex
{
    private const int MinutesPerHour = 60;

    public static Fact Rate(FactDefinition definition, FactSet facts)
    {
        if (Chosen(definition, facts) is not { } index)
        {
            return Fact.Absent(definition);
        }

        var rate = facts[index.Rate];
        var value = (NumberValue)rate.Value!;
        string From() => rate.Origin.Kind == OriginKind.Computed ? $"{index.Rate.Label}: {rate.Origin.Text}" : index.Rate.Label;
        return Measure.Number(definition, value.Range, From, value.Printed, rate.Written);
    }

    public static Fact Events(FactDefinition definition, FactSet facts)
    {
        if (Chosen(definition, facts) is not { } index)
        {
            return Fact.Absent(definition);
        }

        if (facts[index.Events].Number is { } count)
        {
            return Disagree(index, facts) && Allowed(facts[index.Printed].Number, index, facts) is { } printed
                ? Measure.Number(definition, count.HullWith(printed), () => $"{count.Low.ToText(0)} events, which disagrees with the printed {facts[index.Printed].Written}")
                : Measure.Number(definition, count, () => index.Rate.Label);
        }

        return Allowed(facts[index.Rate].Number, index, facts) is { } allowed
            ? Measure.Number(definition, allowed, () => $"{facts[index.Rate].Text} over {Denominator(index, facts).Text}")
            : Fact.Absent(definition);
    }

    public static Fact Time(FactDefinition definition, FactSet facts)
    {
        if (Chosen(definition, facts) is not { } index)
        {
            return Fact.Absent(definition);
        }

        // Not printed: the times that the count and the printed rate allow.
        var time = Denominator(index, facts);
        var implied = Implied(index, facts);
        if (time.Number is { } minutes)
        {
            return Disagree(index, facts) && implied is { } other
                ? Measure.Number(definition, minutes.HullWith(other), () => $"{time.Text}, which disagrees with the printed {facts[index.Printed].Written}")
                : Measure.Number(definition, minutes, () => index.Rate.Label);
        }

        return implied is { } range
            ? Measure.Number(definition, range, () => $"{facts[index.Events].Text} events at {facts[index.Printed].Text}")
            : Fact.Absent(definition);
    }

    // INVARIANT: count and time follow the rate. Where the printed rate disagrees with them, they too are everything from
    // one to the other, so that no threshold between is decided and no further figure turns a decision round.
    private static bool Disagree(IndexDefinition index, FactSet facts) =>
        facts[index.Printed].Number is { } printed && facts[index.Events].Number is { IsExact: true } count
        && Denominator(index, facts).Number is { IsExact: true } minutes && minutes.Low.Numerator > 0
        && !printed.Contains(Ratio.Divide(Ratio.Multiply(count.Low, MinutesPerHour), minutes.Low));

    // The whole numbers of events that a rate and the time allow. Printed times are rounded too: where no whole number fits, the nearest do.
    private static Interval? Allowed(Interval? rate, IndexDefinition index, FactSet facts)
    {
        if (rate is not { } perHour || Denominator(index, facts).Number is not { IsExact: true } minutes)
        {
            return null;
        }

        var low = Ratio.Divide(Ratio.Multiply(perHour.Low, minutes.Low), MinutesPerHour).Rounded;
        var high = Ratio.Divide(Ratio.Multiply(perHour.High, minutes.Low), MinutesPerHour).Rounded;
        var lowest = decimal.Ceiling(low);
        var highest = decimal.Floor(high);
        if (!perHour.HighIncluded && highest == high)
        {
            highest--;
        }

        return highest < lowest ? Interval.Between(decimal.Floor(low), decimal.Ceiling(high)) : Interval.Between(lowest, highest);
    }

    // The times that a count and a printed rate allow.
    private static Interval? Implied(IndexDefinition index, FactSet facts)
    {
        if (facts[index.Printed].Number is not { } rate || facts[index.Events].Number is not { IsExact: true } count
            || rate.Low.Numerator <= 0 || count.Low.Numerator == 0)
        {
            return null;
        }

        var events = Ratio.Multiply(count.Low, MinutesPerHour);
        return Interval.Between(Ratio.Divide(events, rate.High), Ratio.Divide(events, rate.Low));
    }

    private static IndexDefinition? Chosen(FactDefinition definition, FactSet facts)
    {
        foreach (var id in definition.Computed!.From)
        {
            if (facts.Vocabulary.IndexOf(id) is { } index && facts[index.Rate].IsKnown)
            {
                return index;
            }
        }

        return null;
    }

    private static Fact Denominator(IndexDefinition index, FactSet facts)
    {
        var own = facts[index.Time];
        return own.IsKnown ? own : facts[index.Rate.Computed!.From[3]];
    }
}

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
        var from = rate.Origin.Kind == OriginKind.Computed ? $"{index.Rate.Label}: {rate.Origin.Text}" : index.Rate.Label;
        return Measure.Number(definition, value.Range, from, value.Printed, rate.Written);
    }

    public static Fact Events(FactDefinition definition, FactSet facts)
    {
        if (Chosen(definition, facts) is not { } index)
        {
            return Fact.Absent(definition);
        }

        if (facts[index.Events].Number is { } count)
        {
            return Measure.Number(definition, count, index.Rate.Label);
        }

        // Not printed: the whole numbers that the printed rate and the time allow.
        if (facts[index.Rate].Number is not { } rate || Denominator(index, facts).Number is not { IsExact: true } minutes)
        {
            return Fact.Absent(definition);
        }

        var low = decimal.Ceiling(Ratio.Divide(Ratio.Multiply(rate.Low, minutes.Low), MinutesPerHour).Rounded);
        var high = Ratio.Divide(Ratio.Multiply(rate.High, minutes.Low), MinutesPerHour).Rounded;
        var highest = decimal.Floor(high);
        if (!rate.HighIncluded && highest == high)
        {
            highest--;
        }

        return highest < low
            ? Fact.Absent(definition)
            : Measure.Number(definition, Interval.Between(low, highest), $"{facts[index.Rate].Text} over {Denominator(index, facts).Text}");
    }

    public static Fact Time(FactDefinition definition, FactSet facts)
    {
        if (Chosen(definition, facts) is not { } index)
        {
            return Fact.Absent(definition);
        }

        var time = Denominator(index, facts);
        if (time.Number is { } minutes)
        {
            return Measure.Number(definition, minutes, index.Rate.Label);
        }

        // Not printed: the times that the count and the printed rate allow.
        if (facts[index.Rate].Number is not { } rate || facts[index.Events].Number is not { IsExact: true } count
            || rate.Low.Numerator <= 0 || count.Low.Numerator == 0)
        {
            return Fact.Absent(definition);
        }

        var events = Ratio.Multiply(count.Low, MinutesPerHour);
        return Measure.Number(
            definition, Interval.Between(Ratio.Divide(events, rate.High), Ratio.Divide(events, rate.Low)),
            $"{count.Low.ToText(0)} events at {facts[index.Rate].Text}");
    }

    private static IndexDefinition? Chosen(FactDefinition definition, FactSet facts)
    {
        foreach (var id in definition.Computed!.From)
        {
            var index = facts.Vocabulary.Indices.FirstOrDefault(candidate => candidate.Rate.Id == id);
            if (index is not null && facts[index.Rate].IsKnown)
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

using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Computes the facts that are computed. The only arithmetic there is.</summary>
internal static class Measure
{
    /// <summary>The fact, from those before it in <paramref name="facts"/>; a written value helps where the inputs are missing.</summary>
    public static Fact Compute(FactDefinition definition, Fact? written, FactSet facts)
    {
        var inputs = definition.Computed!.From;
        return definition.Computed.Measure switch
        {
            MeasureNames.BodyMassIndex => BodyMassIndex.Compute(definition, written, facts[inputs[0]], facts[inputs[1]]),
            MeasureNames.ShortestOf => Durations.Shortest(definition, [.. inputs.Select(input => facts[input])]),
            MeasureNames.EventRate => EventRate.Compute(definition, facts[inputs[0]], facts[inputs[1]], facts[inputs[2]], facts[inputs[3]]),
            MeasureNames.FirstSupplied => SuppliedIndex.Rate(definition, facts),
            MeasureNames.EventsOf => SuppliedIndex.Events(definition, facts),
            MeasureNames.TimeOf => SuppliedIndex.Time(definition, facts),
            MeasureNames.RateOver => EventRate.Over(definition, facts[inputs[0]], facts[inputs[1]]),
            MeasureNames.CountedRate => EventRate.Counted(definition, facts[inputs[0]], facts[inputs[1]], facts[inputs[2]]),
            MeasureNames.SumOf => Sums.Of(definition, [.. inputs.Select(input => facts[input])]),
            MeasureNames.PartOf => Durations.PartOf(definition, facts[inputs[0]], facts[inputs[1]]),
            MeasureNames.OnlyStartOf => Durations.OnlyStart(definition, facts, inputs[0], inputs[1]),
            MeasureNames.BestRun => NightlyUse.BestRun(definition, written, facts),
            MeasureNames.RateBefore => BeforeTherapy.Rate(definition, written, facts),
            MeasureNames.SameTypeBefore => BeforeTherapy.SameType(definition, written, facts),
            MeasureNames.SameWordBefore => BeforeTherapy.SameWord(definition, written, facts),
            MeasureNames.NightWith => NightsOnRecord.With(definition, written, facts),
            var other => throw new InvalidOperationException($"no measure `{other}`"),
        };
    }

    /// <summary>A computed number and what it was computed from.</summary>
    public static Fact Number(FactDefinition definition, Interval range, Func<string> from, Ratio? printed = null, string? written = null) =>
        Fact.Known(definition, new NumberValue(range, printed), new Provenance(from), written);
}

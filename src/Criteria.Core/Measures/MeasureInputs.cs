using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Checks that a computed fact has the inputs that its measure takes, so that computing never fails.</summary>
internal static class MeasureInputs
{
    /// <summary>What is wrong with a computed fact, or null.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="find">Finds a fact of the case or of a night, not an attribute of a record.</param>
    /// <param name="isRate">Whether an id is that of the rate of an index.</param>
    /// <param name="has">Whether a record list of that key has that kind and an attribute of that name and form.</param>
    public static string? Fault(
        FactDefinition fact, Func<string, FactDefinition?> find, Predicate<string> isRate, Func<string, string, string, FactKind, bool> has)
    {
        var computed = fact.Computed!;
        var from = computed.From;
        bool Is(int input, Dimension dimension) => find(from[input]) is { IsNumeric: true } found && found.Unit.Dimension == dimension;

        bool IsKind(int input, FactKind kind) => find(from[input])?.Kind == kind;

        if (computed.Measure == MeasureNames.NightWith)
        {
            return from.Length > 1 && find(from[0]) is { Kind: FactKind.Choice, Scope: FactScope.Night } choice && from.Skip(1).All(choice.Choices.Contains)
                ? fact.Kind == FactKind.YesNo ? null : $"`{computed.Measure}` gives yes or no"
                : $"`{computed.Measure}` takes a choice of a night and words of it";
        }

        if (MeasureNames.OverNights.Contains(computed.Measure))
        {
            var isWord = computed.Measure == MeasureNames.SameWordBefore;
            var fitsNights = from.Length > 2 && IsKind(0, FactKind.Choice) && IsKind(1, FactKind.YesNo) && (isWord ? from.Length == 3 && IsKind(2, FactKind.Choice) : from.Skip(2).All(id => isRate(id)));
            var fitsFact = computed.Measure == MeasureNames.RateBefore ? fact.IsNumeric && fact.Unit.Dimension == Dimension.Rate : fact.Kind == FactKind.YesNo;
            return !fitsNights ? $"`{computed.Measure}` takes a choice of the case, a yes/no fact of a night and {(isWord ? "a choice of a night" : "indices")}"
                : fitsFact ? null : $"`{computed.Measure}` gives another kind of value or another unit";
        }

        var (takes, fits, gives) = computed.Measure switch
        {
            MeasureNames.BodyMassIndex => ("a mass and a length", from.Length == 2 && Is(0, Dimension.Mass) && Is(1, Dimension.Length), Dimension.BodyMassIndex),
            MeasureNames.ShortestOf => ("durations", from.Length > 0 && Enumerable.Range(0, from.Length).All(input => Is(input, Dimension.Duration)), Dimension.Duration),
            MeasureNames.RateOver => ("a count and a duration", from.Length == 2 && Is(0, Dimension.None) && Is(1, Dimension.Duration), Dimension.Rate),
            MeasureNames.PartOf => ("a duration and the one that it is a part of", from.Length == 2 && Is(0, Dimension.Duration) && Is(1, Dimension.Duration), Dimension.Duration),
            MeasureNames.OnlyStartOf => ("a record list with a `start` and one of its kinds", from.Length == 2 && has(from[0], from[1], "start", FactKind.Date), (Dimension?)null),
            MeasureNames.BestRun => (
                "a record list, one of its kinds and its list of times, with `run`, `at_least` and `within`, the run no longer than the nights it lies within",
                from.Length == 3 && has(from[0], from[1], from[2], FactKind.Durations) && computed.Run is { } run && run.Length > 0 && run.Length <= run.Within,
                Dimension.None),
            MeasureNames.SumOf => (
                "counts, or durations",
                from.Length > 1 && fact.IsNumeric && fact.Unit.Dimension is Dimension.None or Dimension.Duration
                    && Enumerable.Range(0, from.Length).All(input => Is(input, fact.Unit.Dimension)),
                fact.Unit.Dimension),
            MeasureNames.CountedRate => ("a count and durations", Is(0, Dimension.None) && Is(1, Dimension.Duration) && Is(2, Dimension.Duration), Dimension.Rate),
            MeasureNames.EventsOf => ("indices", from.Length > 0 && from.All(id => isRate(id)), Dimension.None),
            MeasureNames.TimeOf => ("indices", from.Length > 0 && from.All(id => isRate(id)), Dimension.Duration),
            MeasureNames.FirstSupplied => ("indices", from.Length > 0 && from.All(id => isRate(id)), Dimension.Rate),
            _ => ("a duration as its time", Is(3, Dimension.Duration), Dimension.Rate),
        };
        if (!fits)
        {
            return $"`{computed.Measure}` takes {takes}";
        }

        var fitsResult = gives is { } dimension ? fact.IsNumeric && fact.Unit.Dimension == dimension : fact.Kind == FactKind.Date;
        return fitsResult ? null : $"`{computed.Measure}` gives another kind of value or another unit";
    }
}

using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>The values that a number is changed to: whole events, whole minutes, tenths of other units, where they are plausible.</summary>
internal sealed class Grid
{
    private const int StepsPerUnit = 10;

    private readonly FactDefinition _fact;
    private readonly Ratio _step;

    private Grid(FactDefinition fact, Ratio step, long first, long last) => (_fact, _step, First, Last) = (fact, step, first, last);

    /// <summary>The first step, and the last.</summary>
    public long First { get; }

    /// <summary>The last step.</summary>
    public long Last { get; }

    /// <summary>The grid of a numeric fact; null when it has none.</summary>
    public static Grid? Of(FactDefinition fact, Vocabulary vocabulary)
    {
        // What is plausible of the time of the night is plausible of the time that an index of it is divided by.
        var time = vocabulary.Indices.FirstOrDefault(index => index.Time == fact) is { } index ? vocabulary.Find(index.Rate.Computed!.From[^1]) : null;
        if (!fact.IsNumeric || (fact.Plausible ?? time?.Plausible ?? fact.Range) is not { } range)
        {
            return null;
        }

        var isWhole = fact.Kind is FactKind.Count or FactKind.Duration || fact.Unit.Dimension is Dimension.None or Dimension.Age;
        var step = fact.Kind == FactKind.Duration ? 1 : Ratio.Divide(fact.Unit.Factor, isWhole ? 1 : StepsPerUnit);
        return new Grid(fact, step, (long)decimal.Ceiling(Ratio.Divide(range.Low, step).Rounded), (long)decimal.Floor(Ratio.Divide(range.High, step).Rounded));
    }

    /// <summary>The step at or under a value; it may lie outside.</summary>
    public long Under(Ratio value) => (long)decimal.Floor(Ratio.Divide(value, _step).Rounded);

    /// <summary>The fact with the value of a step, as somebody would write it.</summary>
    public Fact At(long step)
    {
        var value = Ratio.Multiply(_step, step);
        if (!_fact.Rounded)
        {
            return Fact.Known(_fact, new NumberValue(Interval.Exactly(value)), Provenance.Entered, QuantityText.Of(value, _fact.Unit));
        }

        var half = Ratio.Divide(_step, 2);
        var range = new Interval(Math.Max(0, value.Rounded - half.Rounded), value.Rounded + half.Rounded, false);
        return Fact.Known(_fact, new NumberValue(range, value), Provenance.Entered, QuantityText.Of(value, _fact.Unit));
    }
}

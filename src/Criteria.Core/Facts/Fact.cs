using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>What is known of a fact.</summary>
public enum FactState
{
    /// <summary>The case does not mention it. Unknown, never no.</summary>
    Absent = 0,

    /// <summary>The case says that it is unknown.</summary>
    Unknown,

    /// <summary>The case says that it does not apply.</summary>
    NotApplicable,

    /// <summary>It has a value.</summary>
    Known,
}

/// <summary>One named, typed value with where it came from.</summary>
/// <param name="Definition">Its entry in the vocabulary.</param>
/// <param name="State">What is known of it.</param>
/// <param name="Value">The value, when known.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Written">The value as somebody wrote it, when it was written.</param>
public sealed record Fact(FactDefinition Definition, FactState State, FactValue? Value, Provenance Origin, string? Written = null)
{
    /// <summary>A fact that the case does not mention.</summary>
    public static Fact Absent(FactDefinition definition)
    {
        ArgumentNullException.ThrowIfNull(definition);

        // One for all cases: most facts of most cases are absent.
        return definition.Absent ??= new Fact(definition, FactState.Absent, null, Provenance.Entered);
    }

    /// <summary>A known fact.</summary>
    public static Fact Known(FactDefinition definition, FactValue value, Provenance origin, string? written = null) =>
        new(definition, FactState.Known, value, origin, written);

    /// <summary>Whether it has a value.</summary>
    public bool IsKnown => State == FactState.Known;

    /// <summary>The number, when it is known and a number.</summary>
    public Interval? Number => (Value as NumberValue)?.Range;

    /// <summary>The value in words: <c>14.6/h</c>, <c>yes</c>, <c>unknown</c>.</summary>
    public string Text => State switch
    {
        FactState.Absent => "not in the case",
        FactState.Unknown => "unknown",
        FactState.NotApplicable => "does not apply",
        _ => ValueText(),
    };

    /// <summary>The value as a sentence carries it: a printed figure as printed, without the range it stands for.</summary>
    public string BriefText => Value is NumberValue { Printed: { } printed, Range.IsExact: false } && Written is { } figure
        ? Definition.Unit.Dimension == Dimension.Rate ? QuantityText.Of(printed, Definition.Unit) : figure
        : Text;

    private string ValueText() => Value switch
    {
        NumberValue { Range: var range } => NumberText(range),
        DateValue { Date: var date } => date.ToIso(),
        YesNoValue { Yes: var yes } => yes ? "yes" : "no",
        ChoiceValue { Word: var word } => word,
        CodeValue { Code: var code } => code,
        DurationsValue { Times: var times } => NightsText(times),
        TextValue { Text: var text } => text,
        _ => "",
    };

    private static string NightsText(ImmutableArray<Ratio?> times)
    {
        var unknown = times.Count(time => time is null);
        return unknown == 0 ? $"{times.Length} nights" : $"{times.Length} nights, {unknown} of them unknown";
    }

    private string NumberText(Interval range)
    {
        if (range.IsExact)
        {
            var text = QuantityText.Of(range.Low, Definition.Unit);
            var inOtherUnit = Written is not null && Definition.Unit.Dimension is Dimension.Length or Dimension.Mass
                && !Written!.EndsWith(Definition.Unit.Symbol, StringComparison.Ordinal);
            return inOtherUnit ? $"{text} ({Written})" : text;
        }

        if (Written is not null)
        {
            return $"{Written} as printed, which stands for {range.Low.ToText(4)} to {(range.HighIncluded ? "" : "below ")}{range.High.ToText(4)}";
        }

        // What is only known from below: its upper end is where the vocabulary ends, and says nothing of the case.
        if (Definition.Range is { } possible && range.High >= possible.High && range.Low.Numerator > 0)
        {
            return $"at least {QuantityText.Of(range.Low, Definition.Unit)}";
        }

        return range.Low.Numerator == 0
            ? $"at most {QuantityText.Of(range.High, Definition.Unit)}"
            : $"{QuantityText.Of(range.Low, Definition.Unit)} to {QuantityText.Of(range.High, Definition.Unit)}";
    }
}

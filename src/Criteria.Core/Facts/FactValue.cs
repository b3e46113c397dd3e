using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>The value of a known fact.</summary>
public abstract record FactValue;

/// <summary>A number, count or duration in the base unit of its dimension.</summary>
/// <param name="Range">Everything it may be.</param>
/// <param name="Printed">The figure as printed, when the number was read from a rounded figure.</param>
public sealed record NumberValue(Interval Range, Ratio? Printed = null) : FactValue;

/// <summary>A calendar date.</summary>
public sealed record DateValue(DateOnly Date) : FactValue;

/// <summary>Yes or no.</summary>
public sealed record YesNoValue(bool Yes) : FactValue;

/// <summary>One of the vocabulary's words.</summary>
public sealed record ChoiceValue(string Word) : FactValue;

/// <summary>Times in minutes, one a calendar night in order; null for a night of which nothing is known.</summary>
public sealed record DurationsValue(ImmutableArray<Ratio?> Times) : FactValue;

/// <summary>A code, as its coding system writes it.</summary>
public sealed record CodeValue(string Code) : FactValue;

/// <summary>Free text.</summary>
public sealed record TextValue(string Text) : FactValue;

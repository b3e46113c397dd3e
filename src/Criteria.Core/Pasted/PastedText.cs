using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>What a pasted text may say of facts: proposals, none of which is a fact before a person has taken it.</summary>
/// <param name="Values">Every figure that stands with words that name a fact, in the order of the text.</param>
/// <param name="LeftOut">Figures that stand with such words and are not proposed, each with the reason.</param>
/// <param name="Nights">The nights that the text parts, in its order; empty when it speaks of one.</param>
public sealed record PastedText(ImmutableArray<PastedValue> Values, ImmutableArray<PastedLeftOut> LeftOut, ImmutableArray<string> Nights);

/// <summary>One figure of a pasted text with what it may mean.</summary>
/// <param name="Place">Where the figure stands.</param>
/// <param name="Line">The whole line, for the eyes of whoever confirms; it may name a person and is never written anywhere.</param>
/// <param name="Words">The figure with the words that led to its meaning, and no other word of the line.</param>
/// <param name="Night">The night it belongs to, one of <see cref="PastedText.Nights"/>; null when the text has one night or does not tell.</param>
/// <param name="Readings">What it may mean, at least one.</param>
/// <param name="Doubts">Why it needs an answer even where there is one reading.</param>
public sealed record PastedValue(
    SourceSpan Place, string Line, string Words, string? Night, ImmutableArray<PastedReading> Readings, ImmutableArray<string> Doubts)
{
    /// <summary>Whether the text leaves nothing to ask. Even then a person has to confirm it.</summary>
    public bool IsClear => Readings.Length == 1 && Doubts.IsEmpty;
}

/// <summary>One thing that a figure may mean.</summary>
/// <param name="Fact">The fact, as a case file would give it.</param>
public sealed record PastedReading(Fact Fact)
{
    /// <summary>The value as a case file writes it.</summary>
    public string Value => Fact.Written ?? Fact.Text;

    /// <summary>What it is taken for: <c>REI, 3 % rule, per hour of monitoring time</c>.</summary>
    public string Meaning => Fact.Definition.Index is { } index
        ? $"{index.Index}, {index.Rule} rule, per hour of {index.Per}"
        : char.ToLowerInvariant(Fact.Definition.Label[0]) + Fact.Definition.Label[1..];
}

/// <summary>A figure that is not proposed.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Words">The figure with the words of the vocabulary beside it.</param>
/// <param name="Why">Why it is left out.</param>
public sealed record PastedLeftOut(SourceSpan Place, string Words, string Why);

/// <summary>What reading a pasted text gave.</summary>
/// <param name="Text">What it may say, or null when it cannot be read.</param>
/// <param name="Problems">Every problem of its form.</param>
public sealed record PastedReadingResult(PastedText? Text, ImmutableArray<Diagnostic> Problems);

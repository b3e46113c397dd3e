using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>What the nights of a case show to have been done.</summary>
/// <remarks>
/// INVARIANT: learning more turns nothing round. A written answer stands, and from a case without such a night nothing is concluded: a test
/// may have been done that the file does not hold.
/// </remarks>
internal static class NightsOnRecord
{
    /// <summary>Yes when a night has one of the words.</summary>
    public static Fact With(FactDefinition definition, Fact? written, FactSet facts)
    {
        if (written is { IsKnown: true })
        {
            return written;
        }

        var from = definition.Computed!.From;
        var words = from.AsSpan()[1..].ToArray();
        return facts.Nights.FirstOrDefault(night => night[from[0]].Value is ChoiceValue { Word: var word } && words.Contains(word)) is { } found
            ? Fact.Known(definition, new YesNoValue(true), new Provenance(OriginKind.Computed, $"{found[from[0]].Text}, {BeforeTherapy.Name(found)}"))
            : written ?? Fact.Absent(definition);
    }
}

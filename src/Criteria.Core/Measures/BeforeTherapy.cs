using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>What the night without therapy supplies to the comparison with a test on therapy.</summary>
/// <remarks>
/// INVARIANT: learning more turns nothing round. The night is taken only when it is known of every night whether it was treated and
/// one alone was not; an index that the night lacks may still be supplied, so that nothing is concluded from its absence.
/// </remarks>
internal static class BeforeTherapy
{
    private const int Treated = 1;

    /// <summary>The rate of that night by the type of the index on therapy; a written figure that disagrees makes it everything from one to the other.</summary>
    public static Fact Rate(FactDefinition definition, Fact? written, FactSet facts)
    {
        if (Match(definition, facts) is not var (night, index))
        {
            return written ?? Fact.Absent(definition);
        }

        var rate = (NumberValue)night[index.Rate].Value!;
        var from = $"{index.Rate.Label}, {Name(night)}";
        return written?.Number is not { } figure ? Measure.Number(definition, rate.Range, () => from, rate.Printed, night[index.Rate].Written)
            : figure.Contains(rate.Range.Low) && figure.Contains(rate.Range.High) ? Measure.Number(definition, rate.Range, () => from, rate.Printed, written.Written)
            : Measure.Number(definition, figure.HullWith(rate.Range), () => $"{from}, which disagrees with the written {written.Text}");
    }

    /// <summary>Yes when that night has an index of the same type; an entered no stands.</summary>
    public static Fact SameType(FactDefinition definition, Fact? written, FactSet facts) =>
        Match(definition, facts) is var (night, index) ? Agreed(definition, written, yes: true, $"{index.Rate.Label}, {Name(night)}") : written ?? Fact.Absent(definition);

    /// <summary>Whether that night and the test on therapy have the same word; an entered no stands.</summary>
    public static Fact SameWord(FactDefinition definition, Fact? written, FactSet facts)
    {
        var from = definition.Computed!.From;
        return facts[from[0]].Value is ChoiceValue { Word: var word } && Untreated(from[Treated], facts) is { } night && night[from[^1]].Value is ChoiceValue { Word: var before }
            ? Agreed(definition, written, word == before, $"{before}, {Name(night)}; {word} on therapy")
            : written ?? Fact.Absent(definition);
    }

    private static Fact Agreed(FactDefinition definition, Fact? written, bool yes, string from) =>
        written?.Value is YesNoValue { Yes: false } ? written : Fact.Known(definition, new YesNoValue(yes), new Provenance(OriginKind.Computed, from));

    private static (FactSet Night, IndexDefinition Index)? Match(FactDefinition definition, FactSet facts)
    {
        var from = definition.Computed!.From;
        if (facts[from[0]].Value is not ChoiceValue { Word: var type } || Untreated(from[Treated], facts) is not { } night)
        {
            return null;
        }

        var index = facts.Vocabulary.Indices.FirstOrDefault(index => $"{index.Type.Index} by {index.Type.Rule}" == type);
        return index is not null && from.Contains(index.Rate.Id) && night[index.Rate].IsKnown ? (night, index) : null;
    }

    private static FactSet? Untreated(string treated, FactSet facts) =>
        facts.Nights.All(night => night[treated].IsKnown) && facts.Nights.Where(night => night[treated].Value is YesNoValue { Yes: false }).ToArray() is [var only] ? only : null;

    /// <summary>A night in words.</summary>
    public static string Name(FactSet night) =>
        night.Vocabulary.At($"{Vocabulary.NightPlace}.date") is { } date && night[date].IsKnown ? $"night of {night[date].Text}" : "the night without therapy";
}

using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>What is taken out with a change: figures that somebody computed from what is changed would now be wrong.</summary>
internal static class Companions
{
    /// <summary>What no longer holds beside another value of a fact, as facts that are not there.</summary>
    public static ImmutableArray<Fact> Of(FactDefinition changed, FactSet facts) => [.. Outdated(changed, facts).Select(Fact.Absent)];

    /// <summary>Whether a fact is a figure that the case also gives the parts of: the parts decide it, and are what changes.</summary>
    public static bool IsDecidedByItsParts(FactDefinition fact, FactSet facts)
    {
        if (facts.Vocabulary.Indices.FirstOrDefault(index => index.Printed == fact) is { } printed)
        {
            return IsCounted(printed, facts);
        }

        return fact.Computed is { } computed && facts.Vocabulary.Indices.All(index => index.Rate != fact)
            && computed.From.Select(facts.Vocabulary.Find).OfType<FactDefinition>().ToArray() is { Length: > 0 } parts && parts.All(part => facts[part].IsKnown);
    }

    private static IEnumerable<FactDefinition> Outdated(FactDefinition changed, FactSet facts)
    {
        foreach (var index in facts.Vocabulary.Indices.Where(index => facts[index.Printed].IsKnown && IsCounted(index, facts)))
        {
            if (changed == index.Events || changed == index.Time || (!facts[index.Time].IsKnown && IsOrMakes(changed, index.Rate.Computed!.From[^1], facts.Vocabulary)))
            {
                yield return index.Printed;
            }
        }

        foreach (var computed in facts.Vocabulary.ComputedFrom(changed))
        {
            if (computed.At is not null && IsDecidedByItsParts(computed, facts))
            {
                yield return computed;
            }
        }
    }

    private static bool IsOrMakes(FactDefinition changed, string time, Vocabulary vocabulary) =>
        changed.Id == time || (vocabulary.Find(time) is { } definition && vocabulary.ComputedFrom(changed).Contains(definition));

    private static bool IsCounted(IndexDefinition index, FactSet facts) => facts[index.Events].Number is { IsExact: true }
        && (facts[index.Time].IsKnown ? facts[index.Time] : facts[index.Rate.Computed!.From[^1]]).Number is { IsExact: true, Low.Numerator: > 0 };
}

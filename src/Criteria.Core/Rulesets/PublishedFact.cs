using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Criteria.Core.Rulesets;

/// <summary>How far a published fact was verified.</summary>
public enum FactBasis
{
    /// <summary>From memory; nobody has checked it. Zero, so that a forgotten level claims nothing.</summary>
    Memory = 0,

    /// <summary>A fact of the trade that no document states.</summary>
    CommonPractice,

    /// <summary>Worked out from other rows; no text states it.</summary>
    Derived,

    /// <summary>Read in a text that restates it.</summary>
    Restated,

    /// <summary>The text itself was read.</summary>
    Read,
}

/// <summary>The words for how far a fact was verified.</summary>
public static class FactBases
{
    private static readonly FrozenDictionary<string, FactBasis> ByWord = new Dictionary<string, FactBasis>(StringComparer.Ordinal)
    {
        ["memory"] = FactBasis.Memory,
        ["common practice"] = FactBasis.CommonPractice,
        ["derived"] = FactBasis.Derived,
        ["restated"] = FactBasis.Restated,
        ["read"] = FactBasis.Read,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The words, for messages; the best first.</summary>
    public static IReadOnlyCollection<string> All => ["read", "restated", "memory", "derived", "common practice"];

    /// <summary>The level of a word, or null.</summary>
    public static FactBasis? Find(string word) => ByWord.TryGetValue(word, out var basis) ? basis : null;

    /// <summary>The word of a level.</summary>
    public static string Words(this FactBasis basis) => ByWord.First(pair => pair.Value == basis).Key;
}

/// <summary>Something other than a criterion that uses a published fact.</summary>
/// <param name="What">Its kind: vocabulary, measure, setting, caution, report or program.</param>
/// <param name="Names">Its names.</param>
public sealed record FactUse(string What, ImmutableArray<string> Names)
{
    /// <inheritdoc/>
    public override string ToString() => $"{What} {string.Join(", ", Names)}";
}

/// <summary>A row of the register of published facts. Criteria name the rows that they rest on.</summary>
public sealed record PublishedFact
{
    /// <summary>Its name, as in <c>SEV-02</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it says, in a few words.</summary>
    public required string Says { get; init; }

    /// <summary>How far it was verified.</summary>
    public required FactBasis Verified { get; init; }

    /// <summary>How far its weaker part was verified, if one part is weaker than the rest.</summary>
    public FactBasis? InPart { get; init; }

    /// <summary>The documents that state it, as far as the register of sources has them.</summary>
    public ImmutableArray<Source> Sources { get; init; } = [];

    /// <summary>What uses it besides criteria.</summary>
    public ImmutableArray<FactUse> UsedBy { get; init; } = [];

    /// <summary>The rows that say all that it says.</summary>
    public ImmutableArray<string> CarriedBy { get; init; } = [];

    /// <summary>Why no criterion rests on it, or null.</summary>
    public string? NotACriterion { get; init; }

    /// <summary>How far it was verified, in words.</summary>
    public string VerifiedWords => InPart is { } part ? $"{Verified.Words()}, in part {part.Words()}" : Verified.Words();
}

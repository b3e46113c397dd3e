using System.Collections.Frozen;

namespace Criteria.Core.Rulesets;

/// <summary>How far a source, or a section of it, was verified.</summary>
public enum Verification
{
    /// <summary>From memory; nobody has checked it. Zero, so that a forgotten level claims nothing.</summary>
    Memory = 0,

    /// <summary>A fact of the trade that no document states.</summary>
    CommonPractice,

    /// <summary>Read in a text that restates it.</summary>
    Restated,

    /// <summary>The text itself was read.</summary>
    Read,
}

/// <summary>The words for verification levels.</summary>
public static class Verifications
{
    private static readonly FrozenDictionary<string, Verification> ByWord = new Dictionary<string, Verification>(StringComparer.Ordinal)
    {
        ["memory"] = Verification.Memory,
        ["common practice"] = Verification.CommonPractice,
        ["restated"] = Verification.Restated,
        ["read"] = Verification.Read,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The words, for messages.</summary>
    public static IReadOnlyCollection<string> All => ["read", "restated", "memory", "common practice"];

    /// <summary>The level of a word, or null.</summary>
    public static Verification? Find(string word) => ByWord.TryGetValue(word, out var level) ? level : null;

    /// <summary>The word for files and JSON.</summary>
    public static string Words(this Verification level) => level switch
    {
        Verification.Read => "read",
        Verification.Restated => "restated",
        Verification.CommonPractice => "common practice",
        _ => "memory",
    };

    /// <summary>The words for a reader of reports.</summary>
    public static string Sentence(this Verification level) => level switch
    {
        Verification.Read => "read",
        Verification.Restated => "read in a restatement",
        Verification.CommonPractice => "common practice, no document",
        _ => "from memory, not checked",
    };
}

/// <summary>A published document that criteria cite.</summary>
public sealed record Source
{
    /// <summary>The name citations use.</summary>
    public required string Id { get; init; }

    /// <summary>Who issued it.</summary>
    public required string Issuer { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>Its number, if it has one.</summary>
    public string? Number { get; init; }

    /// <summary>Its version or year.</summary>
    public string? Version { get; init; }

    /// <summary>From when it was in effect.</summary>
    public DateOnly? Effective { get; init; }

    /// <summary>Where it can be read.</summary>
    public string? Address { get; init; }

    /// <summary>How far it was verified.</summary>
    public required Verification Verified { get; init; }

    /// <summary>When it was verified.</summary>
    public DateOnly? VerifiedOn { get; init; }

    /// <summary>The last day by which it is to be looked at again: its own, else that of its file.</summary>
    public DateOnly? ReviewBy { get; init; }

    /// <summary>Anything else worth knowing.</summary>
    public string? Note { get; init; }

    /// <summary>Whether, on a date, the day by which it was to be looked at again has passed.</summary>
    public bool IsReviewOverdue(DateOnly on) => ReviewBy is { } reviewBy && on > reviewBy;

    /// <summary>The short name for reports: issuer, number or title, and version.</summary>
    public string ShortName
    {
        get
        {
            var name = Number ?? Title;
            var version = Version is null || name.Contains(Version, StringComparison.Ordinal) ? "" : $" ({Version})";
            return name.StartsWith(Issuer, StringComparison.OrdinalIgnoreCase) ? $"{name}{version}" : $"{Issuer}, {name}{version}";
        }
    }
}

/// <summary>A source and a section of it.</summary>
/// <param name="Source">The source.</param>
/// <param name="Section">The section.</param>
/// <param name="Verified">How far this section was verified.</param>
public sealed record Citation(Source Source, string Section, Verification Verified)
{
    /// <inheritdoc/>
    public override string ToString() => Section.Length == 0 ? Source.ShortName : $"{Source.ShortName}, {Section}";
}

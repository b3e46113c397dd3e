using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>What a finding says.</summary>
public enum Standing
{
    /// <summary>Open. Zero, so that a forgotten standing never reads as an answer.</summary>
    Undetermined = 0,

    /// <summary>The criterion is not met.</summary>
    NotMet,

    /// <summary>The criterion is met; for a grade or a score, it is decided.</summary>
    Met,

    /// <summary>The criterion does not apply to this case.</summary>
    NotApplicable,
}

/// <summary>The words for standings.</summary>
public static class Standings
{
    /// <summary>The word for reports.</summary>
    public static string Words(this Standing standing) => standing switch
    {
        Standing.Met => "met",
        Standing.NotMet => "not met",
        Standing.NotApplicable => "not applicable",
        _ => "undetermined",
    };

    /// <summary>The word for JSON.</summary>
    public static string Code(this Standing standing) => standing.Words().Replace(' ', '-');
}

/// <summary>A fact that could still decide something.</summary>
/// <param name="Fact">Its id, or the document looked for.</param>
/// <param name="Label">A few words.</param>
/// <param name="Ask">One sentence to ask; empty when the criterion itself says what to ask.</param>
/// <param name="Owner">Who can supply it; empty when the criterion itself says whom to ask.</param>
public sealed record MissingFact(string Fact, string Label, string Ask, string Owner);

/// <summary>What other criteria may know of a finding, with the words for traces.</summary>
/// <param name="Verdict">What it comes to.</param>
/// <param name="Value">The value in words, for traces and placeholders.</param>
/// <param name="Missing">The facts that could still decide it.</param>
public sealed record Conclusion(Verdict Verdict, string Value, ImmutableArray<MissingFact> Missing)
{
    /// <summary>The facts that could still rule out a grade or points while it is open whether there are any.</summary>
    public ImmutableArray<MissingFact> MissingOfValue { get; init; } = [];

    /// <summary>The standing.</summary>
    public Standing Standing => Verdict.Standing;

    /// <summary>The possible points of a score.</summary>
    public PointRange? Points => Verdict.Points;

    /// <summary>Whether both say the same to whoever reads them; where the words come from does not count.</summary>
    public bool SameAs(Conclusion other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Verdict == other.Verdict && Value == other.Value && Missing.SequenceEqual(other.Missing) && MissingOfValue.SequenceEqual(other.MissingOfValue);
    }
}

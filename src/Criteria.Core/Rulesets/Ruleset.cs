using System.Collections.Immutable;
using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>Which of the two functions a ruleset serves. They are never mixed.</summary>
public enum RulesetFunction
{
    /// <summary>The clinical draft.</summary>
    Clinical = 0,

    /// <summary>The coverage check.</summary>
    Coverage,
}

/// <summary>Where a ruleset stands in its life.</summary>
public enum RulesetStatus
{
    /// <summary>Being written.</summary>
    Draft = 0,

    /// <summary>Approved, not yet in use.</summary>
    Approved,

    /// <summary>In use.</summary>
    Active,

    /// <summary>No longer in use.</summary>
    Retired,
}

/// <summary>A named choice where sources differ or are silent.</summary>
/// <param name="Name">The name.</param>
/// <param name="Is">What it is set to.</param>
/// <param name="Allowed">What it may be set to.</param>
/// <param name="Why">Why there is a choice.</param>
/// <param name="Cites">The sources that differ.</param>
public sealed record Setting(string Name, string Is, ImmutableArray<string> Allowed, string Why, ImmutableArray<Citation> Cites);

/// <summary>One difference of a local overlay from its base.</summary>
/// <param name="Overlay">The overlay.</param>
/// <param name="What">What differs, in one line.</param>
/// <param name="Reason">Why.</param>
/// <param name="ApprovedBy">Who approved it.</param>
/// <param name="ApprovedOn">When.</param>
public sealed record LocalDifference(string Overlay, string What, string Reason, string ApprovedBy, DateOnly ApprovedOn);

/// <summary>Criteria with a version, a status, effective dates and declared conventions.</summary>
public sealed record Ruleset
{
    /// <summary>The name.</summary>
    public required string Id { get; init; }

    /// <summary>The title.</summary>
    public required string Title { get; init; }

    /// <summary>The heading of its findings in a report.</summary>
    public required string Heading { get; init; }

    /// <summary>Where its findings stand in a report; lower first.</summary>
    public required int Order { get; init; }

    /// <summary>Which function it serves.</summary>
    public required RulesetFunction Function { get; init; }

    /// <summary>The version; with overlays, theirs too.</summary>
    public required string Version { get; init; }

    /// <summary>Where it stands in its life.</summary>
    public required RulesetStatus Status { get; init; }

    /// <summary>First day in force, or null when it does not say.</summary>
    public DateOnly? EffectiveFrom { get; init; }

    /// <summary>First day no longer in force, or null.</summary>
    public DateOnly? EffectiveUntil { get; init; }

    /// <summary>The payer, for coverage.</summary>
    public string? Payer { get; init; }

    /// <summary>The item, for coverage.</summary>
    public string? Item { get; init; }

    /// <summary>How rounded figures are taken.</summary>
    public required Rounding Rounding { get; init; }

    /// <summary>The number of the first day of a window, or null when it is not declared.</summary>
    public int? NumberOfStartDay { get; init; }

    /// <summary>When it is to be reviewed.</summary>
    public DateOnly? ReviewBy { get; init; }

    /// <summary>Its settings.</summary>
    public ImmutableArray<Setting> Settings { get; init; } = [];

    /// <summary>Published figures on how much nights differ, set beside its grades.</summary>
    public ImmutableArray<NightFigure> NightToNight { get; init; } = [];

    /// <summary>What its grades mean, in words for the patient.</summary>
    public ImmutableArray<PlainGrade> PlainGrades { get; init; } = [];

    /// <summary>Every difference that local overlays make.</summary>
    public ImmutableArray<LocalDifference> Differences { get; init; } = [];

    /// <summary>SHA-256 over the ruleset file and its overlays, with <c>\n</c> line ends.</summary>
    public required string Digest { get; init; }

    /// <summary>Whether it counts on a date.</summary>
    public bool IsInForce(DateOnly date) => Status == RulesetStatus.Active
        && (EffectiveFrom is not { } from || date >= from) && (EffectiveUntil is not { } until || date < until);
}

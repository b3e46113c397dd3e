using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Findings;

/// <summary>All findings of one case under named ruleset versions, at a stated date.</summary>
public sealed record Assessment
{
    /// <summary>The case key.</summary>
    public required string Case { get; init; }

    /// <summary>The date whose rules were used.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The nights, in order.</summary>
    public required ImmutableArray<string> Nights { get; init; }

    /// <summary>The payer asked about, or null.</summary>
    public string? Payer { get; init; }

    /// <summary>The item asked about, or null.</summary>
    public string? Item { get; init; }

    /// <summary>The date of service, or null.</summary>
    public DateOnly? ServiceDate { get; init; }

    /// <summary>How the case says that its nights are read together, or null.</summary>
    public NightsDeclaration? NightsDeclared { get; init; }

    /// <summary>The rulesets used, in report order.</summary>
    public required ImmutableArray<Ruleset> Rulesets { get; init; }

    /// <summary>SHA-256 over the vocabulary.</summary>
    public required string VocabularyDigest { get; init; }

    /// <summary>One digest of the rules used: what <c>rules list</c> and the policy book print for the same date, payer and item.</summary>
    public string RulesDigest => RulesInForce.DigestOf(VocabularyDigest, Rulesets);

    /// <summary>The findings, in report order, nights in their order.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>The finding that puts the case outside the program's scope, or null. Then it is the only finding.</summary>
    public Finding? Refusal { get; init; }

    /// <summary>Problems of the case file, and what could not be assessed.</summary>
    public required ImmutableArray<Diagnostic> Problems { get; init; }

    /// <summary>Each graded index over several nights; empty for a case of one.</summary>
    public ImmutableArray<NightsTogether> NightsTogether => Findings.IsDefault ? [] : Engine.Findings.NightsTogether.Of(this);

    /// <summary>The findings of that criterion, one for each night it is about.</summary>
    public IEnumerable<Finding> Of(string criterion) => Findings.Where(finding => finding.Id == criterion);
}

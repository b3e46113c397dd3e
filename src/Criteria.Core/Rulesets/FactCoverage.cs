using System.Collections.Immutable;

namespace Criteria.Core.Rulesets;

/// <summary>What became of a published fact.</summary>
public enum FactUsage
{
    /// <summary>Nothing yet: no criterion, no other use, no reason. Zero, so that a forgotten row shows.</summary>
    Open = 0,

    /// <summary>Criteria rest on it.</summary>
    Criteria,

    /// <summary>Something other than a criterion uses it.</summary>
    OtherUse,

    /// <summary>Other rows, none of them open, say all that it says.</summary>
    Carried,

    /// <summary>It is no criterion, and it says why.</summary>
    NotACriterion,
}

/// <summary>A published fact and what rests on it.</summary>
/// <param name="Fact">The row.</param>
/// <param name="Criteria">The criteria that name it, in report order.</param>
/// <param name="Usage">What became of it.</param>
public sealed record CoveredFact(PublishedFact Fact, ImmutableArray<Criterion> Criteria, FactUsage Usage);

/// <summary>Sets the rows of the register of published facts beside the criteria that rest on them.</summary>
public static class FactCoverage
{
    /// <summary>Every row in the order of the register; none when the rules have no register.</summary>
    /// <param name="library">Rules with every payer and item, each ruleset in its newest version.</param>
    public static ImmutableArray<CoveredFact> Of(RulesetLibrary library)
    {
        ArgumentNullException.ThrowIfNull(library);
        var resting = library.All.Criteria.SelectMany(criterion => criterion.RestsOn.Distinct().Select(row => (Row: row, Criterion: criterion))).ToLookup(pair => pair.Row, pair => pair.Criterion);
        var rows = library.PublishedFacts?.Rows ?? [];
        var own = rows.ToDictionary(row => row.Id, row => OwnUsage(row, resting.Contains(row.Id)), StringComparer.Ordinal);
        return [.. rows.Select(row => new CoveredFact(row, [.. resting[row.Id]], UsageOf(row)))];

        FactUsage UsageOf(PublishedFact row) =>
            own[row.Id] == FactUsage.Open && !row.CarriedBy.IsEmpty && row.CarriedBy.All(carrier => own[carrier] != FactUsage.Open) ? FactUsage.Carried : own[row.Id];
    }

    private static FactUsage OwnUsage(PublishedFact row, bool hasCriteria) => (hasCriteria, row) switch
    {
        (true, _) => FactUsage.Criteria,
        (_, { UsedBy.IsEmpty: false }) => FactUsage.OtherUse,
        (_, { NotACriterion: not null }) => FactUsage.NotACriterion,
        _ => FactUsage.Open,
    };
}

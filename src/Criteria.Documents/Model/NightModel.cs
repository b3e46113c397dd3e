namespace Criteria.Documents.Model;

/// <summary>One night.</summary>
internal sealed class NightModel(string label, FindingTable findings, FactTable facts, IReadOnlyList<FindingModel> grades)
{
    /// <summary>The night in words: <c>night of 3 June 2026</c>.</summary>
    [Untraced]
    public string Label { get; } = label;

    /// <summary>Its findings, and those of the case, by name.</summary>
    public FindingTable Findings { get; } = findings;

    /// <summary>Its facts, and those of the case, by name.</summary>
    public FactTable Facts { get; } = facts;

    /// <summary>Every grade of the night that is decided, one for each index and scoring rule.</summary>
    public IReadOnlyList<FindingModel> Grades { get; } = grades;
}

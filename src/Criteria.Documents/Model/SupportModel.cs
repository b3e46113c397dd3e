namespace Criteria.Documents.Model;

/// <summary>A criterion that is met and rests on one document.</summary>
internal sealed class SupportModel(FindingModel finding, IReadOnlyList<string> places)
{
    /// <summary>The criterion.</summary>
    public FindingModel Finding { get; } = finding;

    /// <summary>The pages that the case names, as it writes them; empty when it names none.</summary>
    public string Pages { get; } = string.Join(", ", places.Where(place => place.Length > 0));

    internal bool IsAny { get; } = places.Count > 0;
}

using Criteria.Core.Logic;

namespace Criteria.Documents.Wording;

/// <summary>The words for facts that are missing.</summary>
internal static class MissingText
{
    // A fact of a document or a trial is named by the id of that and its own: `visit-note: document.signed`.
    private const string Between = ": ";

    /// <summary>One sentence for what is missing in the case, and one for each document of which something is not known; empty when nothing is missing.</summary>
    public static string Of(IReadOnlyCollection<MissingFact> missing) => string.Join(' ', missing
        .GroupBy(Item, StringComparer.Ordinal)
        .Select(group => group.Key.Length == 0
            ? $"Missing: {string.Join("; ", group.Select(fact => Words.Small(fact.Label)))}."
            : $"Not known of {group.Key}: {string.Join("; ", group.Select(fact => Words.Small(Alone(fact, group.Key))))}."));

    private static string Item(MissingFact fact)
    {
        var end = fact.Fact.IndexOf(Between, StringComparison.Ordinal);
        return end > 0 && fact.Label.EndsWith($" of {fact.Fact[..end]}", StringComparison.Ordinal) ? fact.Fact[..end] : "";
    }

    private static string Alone(MissingFact fact, string item) => fact.Label[..^$" of {item}".Length];
}

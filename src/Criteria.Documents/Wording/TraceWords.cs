using Criteria.Core.Logic;

namespace Criteria.Documents.Wording;

/// <summary>What a document says of a trace: the facts with their values and origins, and the pages they point to.</summary>
internal static class TraceWords
{
    private const int MostFacts = 12;

    /// <summary>The facts that a finding rests on, each once, decisive ones first.</summary>
    public static IReadOnlyList<string> Facts(TraceNode trace)
    {
        var all = Leaves(trace).Where(leaf => leaf.Kind is not "silent").Select(Line).Where(line => line.Length > 0).Distinct(StringComparer.Ordinal).ToArray();
        return all.Length <= MostFacts ? all : [.. all.Take(MostFacts), $"and {all.Length - MostFacts} more"];
    }

    /// <summary>The documents with pages that stand behind what is so, each once.</summary>
    public static IReadOnlyList<string> Pointers(TraceNode trace) =>
        [.. Leaves(trace).Where(leaf => leaf.Truth == Truth.Met).Select(Pointer).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>Where in one document that stands which is so, each place once; empty when nothing of it rests on that document.</summary>
    public static IReadOnlyList<string> PlacesIn(string document, TraceNode trace) =>
        [.. Leaves(trace).Where(leaf => leaf.Truth == Truth.Met).SelectMany(Places).Where(place => place == document || place.StartsWith(document + " ", StringComparison.Ordinal))
            .Select(place => place[document.Length..].Trim()).Select(place => place.StartsWith('(') ? "" : place).Distinct(StringComparer.Ordinal)];

    // Every document that fits supports what is so, not only the first.
    private static IEnumerable<string> Places(TraceNode leaf) => leaf.Kind == "documents"
        ? leaf.Parts.Where(part => part.Truth == Truth.Met).Select(part => part.Text)
        : Pointer(leaf) is { } pointer ? [pointer] : [];

    private static string? Pointer(TraceNode leaf) => leaf switch
    {
        { Kind: "documents", Parts: var parts } when parts.FirstOrDefault(part => part.Truth == Truth.Met) is { } fitting => fitting.Text,
        { Kind: "fact", From: { } from } when !from.StartsWith("computed", StringComparison.Ordinal) && !from.StartsWith("list closed", StringComparison.Ordinal) => from,
        _ => null,
    };

    private static string Line(TraceNode leaf) => Words.Capital(Words.Step(leaf));

    private static IEnumerable<TraceNode> Leaves(TraceNode node) => node.Kind is "documents" or "score" or "band" || node.Parts.IsEmpty
        ? [node]
        : node.Parts.SelectMany(Leaves);
}

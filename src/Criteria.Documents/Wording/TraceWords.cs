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

    private static string? Pointer(TraceNode leaf) => leaf switch
    {
        { Kind: "documents", Parts: var parts } when parts.FirstOrDefault(part => part.Truth == Truth.Met) is { } fitting => fitting.Text,
        { Kind: "fact", From: { } from } when !from.StartsWith("computed", StringComparison.Ordinal) && !from.StartsWith("list closed", StringComparison.Ordinal) => from,
        _ => null,
    };

    // A point of an option is a sentence of its own.
    private static string Line(TraceNode leaf) => Words.Capital(Words.Step(leaf)).Replace(".: ", ": ", StringComparison.Ordinal);

    private static IEnumerable<TraceNode> Leaves(TraceNode node) => node.Kind is "documents" or "score" or "band" || node.Parts.IsEmpty
        ? [node]
        : node.Parts.SelectMany(Leaves);
}

using System.Collections.Immutable;

namespace Criteria.Documents.Sharing;

/// <summary>What a de-identified file says of itself, and what remains to be judged by a person.</summary>
public static class ResidualRisk
{
    /// <summary>The words, line by line.</summary>
    public static ImmutableArray<string> Lines { get; } =
    [
        "De-identified for sharing, by the Safe Harbor classes of the HIPAA privacy rule. Taken out: names, places, numbers that stand for",
        "somebody or something, free text, the names of documents, codes that no list knows, and every day. A remark gives the year of a day.",
        "Rules that compare days cannot be answered from this file; nights stand in their order.",
        "What is left may still be known to somebody who knows the patient: an unusual age, size, disease or therapy, several such facts",
        "together, or this file beside another list. The program cannot judge that. Somebody has to, before the file is handed on.",
    ];
}

namespace Criteria.Documents.Renderers;

/// <summary>The last line of a document.</summary>
internal static class Foot
{
    /// <summary>The rules that the text rests on, and the program.</summary>
    public static string Of(DocumentPage page) =>
        page.Rulesets.IsEmpty ? $"{page.Program}." : $"Rules: {string.Join(", ", page.Rulesets)}. {page.Program}.";
}

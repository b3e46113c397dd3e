using System.Text.RegularExpressions;

namespace Criteria.Documents.Tests.Support;

/// <summary>The marked sentences of a document, each with the ids that its marks stand for.</summary>
internal static partial class Sentences
{
    public static IReadOnlyList<(string Sentence, string[] Ids)> Of(DocumentPage page)
    {
        var body = page.Markdown.Split("\n## Sign-off\n")[0];
        var ids = Note().Matches(page.Markdown).ToDictionary(note => note.Groups[1].Value, note => note.Groups[2].Value.Replace("\\", "", StringComparison.Ordinal));
        return [.. body.Split('\n').SelectMany(line => Marked().Matches(line)).Select(match => (
            match.Groups[1].Value.Trim(), Mark().Matches(match.Groups[2].Value).SelectMany(mark => ids[mark.Groups[1].Value].Split("; ")).ToArray()))];
    }

    [GeneratedRegex(@"^\[\^(\d+)\]: \*\*.*?\*\* \(([^),]+)", RegexOptions.Multiline)]
    private static partial Regex Note();

    [GeneratedRegex(@"(.*?)((?:\[\^\d+\] ?)+)")]
    private static partial Regex Marked();

    [GeneratedRegex(@"\[\^(\d+)\]")]
    private static partial Regex Mark();
}

using System.Globalization;

namespace Criteria.Core.Reading;

/// <summary>Small helpers for the wording of messages.</summary>
internal static class Wording
{
    private const int MostShown = 12;
    private const int LongestShown = 60;

    /// <summary>`a`, `b` and `c`, cut short when there are many.</summary>
    public static string List(IEnumerable<string> words)
    {
        var all = words.ToArray();
        var shown = string.Join(", ", all.Take(MostShown).Select(word => $"`{word}`"));
        return all.Length > MostShown ? $"{shown} and {all.Length - MostShown} more" : shown;
    }

    /// <summary>The user's text, on one line and not too long.</summary>
    public static string Quote(string text, int longest = LongestShown)
    {
        var flat = text.Length > longest + 1 ? text[..(longest + 1)] : text;
        if (flat.Any(BreaksLines))
        {
            flat = string.Concat(flat.Select(c => BreaksLines(c) ? ' ' : c));
        }

        return flat.Length > longest ? flat[..(char.IsHighSurrogate(flat[longest - 1]) ? longest - 1 : longest)] + "..." : flat;
    }

    // Line and paragraph separators, and the marks that turn the direction of writing, break or hide text as control characters do.
    private static bool BreaksLines(char c) => char.IsControl(c)
        || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Format;
}

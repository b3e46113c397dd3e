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
        var flat = string.Concat(text.Take(longest + 1).Select(c => char.IsControl(c) ? ' ' : c));
        return flat.Length > longest ? flat[..longest] + "..." : flat;
    }
}

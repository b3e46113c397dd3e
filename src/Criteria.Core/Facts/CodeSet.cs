using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>One code and the days on which it belongs to its set.</summary>
/// <param name="Code">The code, as its coding system writes it.</param>
/// <param name="Label">What it stands for, in a few words of our own.</param>
/// <param name="From">The first day, or null when it was always in the set.</param>
/// <param name="Until">The last day, or null while it stays in the set.</param>
public sealed record DatedCode(string Code, string Label, DateOnly? From, DateOnly? Until)
{
    /// <summary>Whether the code is in the set on that day.</summary>
    public bool IsIn(DateOnly day) => (From is null || day >= From) && (Until is null || day <= Until);
}

/// <summary>The codes that stand for one thing, each with its days.</summary>
/// <param name="Id">The name rules use.</param>
/// <param name="System">The coding system.</param>
/// <param name="Label">A few words for reports.</param>
/// <param name="Codes">The codes. One may stand in it more than once, with other days.</param>
public sealed record CodeSet(string Id, string System, string Label, ImmutableArray<DatedCode> Codes)
{
    /// <summary>Whether a text has the form of a code: capital letters and digits, with dots or hyphens between them.</summary>
    public static bool IsCode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && char.IsAsciiLetterOrDigit(text[0]) && char.IsAsciiLetterOrDigit(text[^1])
            && text.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c is '.' or '-');
    }
}

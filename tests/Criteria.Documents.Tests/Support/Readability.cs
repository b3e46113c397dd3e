using System.Text.RegularExpressions;

namespace Criteria.Documents.Tests.Support;

/// <summary>How many years of school a text asks for.</summary>
internal static partial class Readability
{
    /// <summary>Eight years of school, the usual bound for what patients are handed.</summary>
    public const double ForPatients = 8;

    // Flesch-Kincaid grade: 0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid and others, 1975).
    public static double Grade(string text)
    {
        var sentences = SentenceEnd().Split(text).Select(part => Word().Matches(part).Select(match => match.Value).ToArray()).Where(words => words.Length > 0).ToArray();
        var words = sentences.SelectMany(sentence => sentence).ToArray();
        return (0.39 * words.Length / sentences.Length) + (11.8 * words.Sum(Syllables) / words.Length) - 15.59;
    }

    // Groups of vowels, less a silent e at the end; a rough count that errs on both sides.
    private static int Syllables(string word) =>
        Math.Max(1, Vowels().Count(word) - (word.EndsWith('e') && !word.EndsWith("le", StringComparison.Ordinal) ? 1 : 0));

    [GeneratedRegex(@"[.?!:](?=\s)|\n")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex("[A-Za-z]+")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouy]+", RegexOptions.IgnoreCase)]
    private static partial Regex Vowels();
}

using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads the words after <c>is</c>: one, or several with <c>or</c> between them. A word may have spaces in it.</summary>
internal static class WordList
{
    private const string Between = " or ";

    /// <summary>Takes a <c>not</c> that turns the comparison round; one that starts an allowed word (<c>not tolerated</c>) stays.</summary>
    public static bool TakeNot(LeafCursor cursor, ImmutableArray<string> allowed) => !allowed.Contains(cursor.PeekRest()) && cursor.TakeWords("not");

    /// <summary>The words, or default (and a diagnostic).</summary>
    public static ImmutableArray<string> Read(LeafCursor cursor, string name, ImmutableArray<string> allowed, DiagnosticBag bag)
    {
        var (rest, start) = cursor.Rest();
        if (allowed.Contains(rest))
        {
            return [rest];
        }

        var words = ImmutableArray.CreateBuilder<string>();
        var faulty = false;
        var at = 0;
        foreach (var part in rest.Split(Between))
        {
            var word = part.Trim();
            if (allowed.Contains(word))
            {
                words.Add(word);
            }
            else
            {
                bag.Add(RulesetDiagnostics.UnknownWord(
                    word, name, NearestName.Of(word, allowed), allowed, cursor.Part(start + rest.IndexOf(word, at, StringComparison.Ordinal), word.Length)));
                faulty = true;
            }

            at += part.Length + Between.Length;
        }

        return faulty ? default : words.ToImmutable();
    }
}

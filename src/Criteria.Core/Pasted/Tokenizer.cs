using System.Text;
using System.Text.RegularExpressions;

namespace Criteria.Core.Pasted;

/// <summary>Cuts a line into tokens. Phrases of the vocabulary are cut in the same way, so that both can be compared.</summary>
internal static partial class Tokenizer
{
    public static List<Token> Cut(string line)
    {
        var text = Plain(line);
        var tokens = new List<Token>();
        for (var position = 0; position < text.Length;)
        {
            var start = position;
            position = text[start] switch
            {
                var space when char.IsWhiteSpace(space) => Spaces(text, start, tokens),
                '|' or '¦' or ';' => Add(TokenKind.Border, start + 1),
                var letter when char.IsLetter(letter) => Add(TokenKind.Word, Run(text, start, char.IsLetter)),
                var digit when char.IsAsciiDigit(digit) => Digits(),
                _ => Sign(),
            };

            int Add(TokenKind kind, int end, string? as_ = null)
            {
                var isGlued = start > 0 && char.IsLetterOrDigit(text[start - 1]);
                tokens.Add(new Token(kind, as_ ?? text[start..end], start, end, isGlued));
                return end;
            }

            int Digits()
            {
                foreach (var (kind, pattern) in Patterns)
                {
                    if (pattern.Match(text, start) is { Success: true, Length: var length })
                    {
                        return Add(kind, start + length);
                    }
                }

                return Add(TokenKind.Number, start + 1);
            }

            int Sign()
            {
                var two = start + 1 < text.Length && text[start + 1] == '=';
                return text[start] switch
                {
                    '<' when two => Add(TokenKind.Sign, start + 2, "≤"),
                    '>' when two => Add(TokenKind.Sign, start + 2, "≥"),
                    '−' or '–' or '—' or '‐' or '‑' => Add(TokenKind.Sign, start + 1, "-"),
                    _ => Add(TokenKind.Sign, start + 1),
                };
            }
        }

        // A hyphen within a word is no sign: `non-supine` and `non supine` are the same words.
        return [.. tokens.Where((token, place) => !IsHyphen(tokens, place))];
    }

    private static readonly (TokenKind Kind, Regex Pattern)[] Patterns =
    [
        (TokenKind.Date, DatePattern()), (TokenKind.Clock, ClockPattern()), (TokenKind.Number, NumberPattern()),
    ];

    private static bool IsHyphen(List<Token> tokens, int place) => tokens[place].Is("-")
        && place > 0 && tokens[place - 1] is { Kind: TokenKind.Word } before && before.End == tokens[place].Start
        && place + 1 < tokens.Count && tokens[place + 1] is { Kind: TokenKind.Word } after && after.Start == tokens[place].End;

    private static int Spaces(string text, int start, List<Token> tokens)
    {
        var end = Run(text, start, char.IsWhiteSpace);
        if ((end - start > 1 || text[start] == '\t') && start > 0 && end < text.Length)
        {
            tokens.Add(new Token(TokenKind.Border, " ", start, end, false));
        }

        return end;
    }

    private static int Run(string text, int start, Func<char, bool> belongs)
    {
        var end = start;
        while (end < text.Length && belongs(text[end]))
        {
            end++;
        }

        return end;
    }

    // Sign by sign, so that places in the plain text are those in the line: SpO₂ becomes spo2, a wide % a plain one.
    private static string Plain(string line)
    {
        var plain = new StringBuilder(line.Length);
        foreach (var sign in line)
        {
            plain.Append(sign switch
            {
                >= '\u2080' and <= '\u2089' => (char)('0' + (sign - '\u2080')),
                '\u00B2' => '2',
                '\uFF05' => '%',
                '\uFF1A' => ':',
                _ => char.ToLowerInvariant(sign),
            });
        }

        return plain.ToString();
    }

    [GeneratedRegex(@"\G(?:\d{4}-\d{1,2}-\d{1,2}|\d{4}/\d{1,2}/\d{1,2}|\d{1,2}[./-]\d{1,2}[./-]\d{4}|\d{1,2}/\d{1,2}/\d{2})(?![\d.,/:-]*\d)", RegexOptions.CultureInvariant)]
    private static partial Regex DatePattern();

    [GeneratedRegex(@"\G\d{1,3}:\d{2}(?::\d{2})?(?![\d:])", RegexOptions.CultureInvariant)]
    private static partial Regex ClockPattern();

    [GeneratedRegex(@"\G\d+(?:[.,]\d+)*", RegexOptions.CultureInvariant)]
    private static partial Regex NumberPattern();
}

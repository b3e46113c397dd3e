using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Criteria.Documents.Renderers;

/// <summary>Any text in seven bits. What has no spelling is written as its code point: nothing is dropped.</summary>
internal static class SevenBits
{
    private static readonly FrozenDictionary<int, string> Spelling = Spellings().ToFrozenDictionary(pair => pair.Letter, pair => pair.Text);

    /// <summary>The text with nothing but printable characters of seven bits, and line ends.</summary>
    public static string Of(string text)
    {
        var result = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.IsAscii && (rune.Value >= ' ' && rune.Value < Delete || rune.Value == '\n'))
            {
                result.Append((char)rune.Value);
            }
            else
            {
                result.Append(Spelling.TryGetValue(rune.Value, out var spelling) ? spelling : string.Create(CultureInfo.InvariantCulture, $"{{U+{rune.Value:X4}}}"));
            }
        }

        return result.ToString();
    }

    private const int Delete = 0x7F;

    // Each line: letters that are spelt alike, and their spelling. The runtime's own decomposition needs the culture data
    // that the program does without.
    private static IEnumerable<(int Letter, string Text)> Spellings()
    {
        (string Letters, string Text)[] lines =
        [
            ("\t\u00A0\u2009\u202F", " "), ("\u2010\u2011\u2012\u2013\u2212", "-"), ("\u2014", "--"), ("\u2018\u2019\u2032", "'"), ("\u201C\u201D\u2033\u00AB\u00BB", "\""),
            ("\u2026", "..."), ("\u00B7\u2022", "*"), ("\u2265", ">="), ("\u2264", "<="), ("\u2260", "!="), ("\u2248", "~"), ("\u00D7", "x"), ("\u00F7", "/"), ("\u00B1", "+/-"),
            ("\u2192", "->"), ("\u2190", "<-"), ("\u00B5\u03BC", "u"), ("\u00B0", " deg"), ("\u00B9", "1"), ("\u00B2", "2"), ("\u00B3", "3"), ("\u2080", "0"), ("\u2081", "1"), ("\u2082", "2"), ("\u2083", "3"),
            ("\u00BD", "1/2"), ("\u00BC", "1/4"), ("\u00BE", "3/4"), ("\u00A7", "section "), ("\u00A9", "(c)"), ("\u00AE", "(R)"), ("\u2122", "(TM)"), ("\u20AC", "EUR"), ("\u00A3", "GBP"),
            ("\u03B1", "alpha"), ("\u03B2", "beta"), ("\u0394\u03B4", "delta"), ("\u2713\u2714", "yes"), ("\u2717\u2718", "no"),
            ("\u00C0\u00C1\u00C2\u00C3\u00C5\u0100\u0102\u0104", "A"), ("\u00E0\u00E1\u00E2\u00E3\u00E5\u0101\u0103\u0105", "a"), ("\u00C4\u00C6", "Ae"), ("\u00E4\u00E6", "ae"),
            ("\u00C7\u0106\u010C", "C"), ("\u00E7\u0107\u010D", "c"), ("\u00D0\u010E\u0110", "D"), ("\u00F0\u010F\u0111", "d"), ("\u00C8\u00C9\u00CA\u00CB\u0112\u0118\u011A", "E"), ("\u00E8\u00E9\u00EA\u00EB\u0113\u0119\u011B", "e"),
            ("\u011E", "G"), ("\u011F", "g"), ("\u00CC\u00CD\u00CE\u00CF\u012A\u0130", "I"), ("\u00EC\u00ED\u00EE\u00EF\u012B\u0131", "i"), ("\u0141", "L"), ("\u0142", "l"), ("\u00D1\u0143\u0147", "N"), ("\u00F1\u0144\u0148", "n"),
            ("\u00D2\u00D3\u00D4\u00D5\u014C\u0150", "O"), ("\u00F2\u00F3\u00F4\u00F5\u014D\u0151", "o"), ("\u00D6\u00D8\u0152", "Oe"), ("\u00F6\u00F8\u0153", "oe"), ("\u0158", "R"), ("\u0159", "r"),
            ("\u015A\u015E\u0160\u0218", "S"), ("\u015B\u015F\u0161\u0219", "s"), ("\u00DF", "ss"), ("\u0162\u0164\u021A", "T"), ("\u0163\u0165\u021B", "t"), ("\u00DE", "Th"), ("\u00FE", "th"),
            ("\u00D9\u00DA\u00DB\u016A\u016E\u0170", "U"), ("\u00F9\u00FA\u00FB\u016B\u016F\u0171", "u"), ("\u00DC", "Ue"), ("\u00FC", "ue"), ("\u00DD\u0178", "Y"), ("\u00FD\u00FF", "y"),
            ("\u0179\u017B\u017D", "Z"), ("\u017A\u017C\u017E", "z"),
        ];
        return lines.SelectMany(line => line.Letters.Select(letter => ((int)letter, line.Text)));
    }
}

using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Text in characters that the embedded font has. Nothing is dropped: a character that it lacks is written another way.</summary>
internal sealed class Glyphs(TextMeter meter)
{
    private static readonly FrozenDictionary<int, string> Others = new Dictionary<int, string>
    {
        ['\u2010'] = "-", // hyphen
        ['\u2011'] = "-", // hyphen that does not break
        ['\u202F'] = "\u00A0", // narrow space that does not break
        ['\u2190'] = "<-",
        ['\u2192'] = "->",
        ['\t'] = " ",
    }.ToFrozenDictionary();

    /// <summary>The text with every character that the font lacks replaced: by a near one, a digit for a small digit, or by its number.</summary>
    public string Shown(string text)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            shown.Append(Shown(rune));
        }

        return shown.ToString();
    }

    private string Shown(Rune rune)
    {
        if (rune.Value != '\t' && meter.Has(rune))
        {
            return rune.ToString();
        }

        if (Others.TryGetValue(rune.Value, out var other))
        {
            return other;
        }

        var digit = CharUnicodeInfo.GetDigitValue(rune.ToString(), 0);
        return digit >= 0 ? digit.ToString(CultureInfo.InvariantCulture) : Rune.IsControl(rune) ? "" : string.Create(CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
    }
}

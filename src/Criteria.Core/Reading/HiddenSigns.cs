using System.Globalization;
using System.Text;

namespace Criteria.Core.Reading;

/// <summary>Signs that nobody sees: controls, ends of lines, marks that turn the direction of writing, signs without width, codes that are no character.</summary>
/// <remarks>In a text from outside they would break lines, hide words or show them in another order. The two joiners stay: scripts need them.</remarks>
public static class HiddenSigns
{
    private const int NonJoiner = '\u200C';
    private const int Joiner = '\u200D';

    // The last two places of every plane are no characters, and XML has no way to write some of them.
    private const int NoCharacter = '\uFFFE';

    /// <summary>Whether a sign is one of them.</summary>
    public static bool Has(Rune sign) => sign.Value is not (NonJoiner or Joiner) && ((sign.Value & NoCharacter) == NoCharacter || Rune.GetUnicodeCategory(sign)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);

    /// <summary>The text with a space in the place of each of them.</summary>
    public static string Spaced(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.EnumerateRunes().Any(Has))
        {
            return text;
        }

        var spaced = new StringBuilder(text.Length);
        foreach (var sign in text.EnumerateRunes())
        {
            spaced.Append(Has(sign) ? " " : sign.ToString());
        }

        return spaced.ToString();
    }
}

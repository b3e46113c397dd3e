using System.Text;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using Criteria.Core.Reading;

namespace Criteria.Documents.Templating;

/// <summary>Makes text from a case or a ruleset plain text in Markdown: nothing in it can become markup, a link or a new line.</summary>
internal sealed partial class MarkdownEncoder : TextEncoder
{
    private const string Special = "\\`*_[]<>|~^#&";

    /// <summary>The only one there needs to be.</summary>
    public static readonly MarkdownEncoder Instance = new();

    /// <inheritdoc/>
    public override int MaxOutputCharactersPerInputCharacter => 2;

    /// <inheritdoc/>
    public override unsafe int FindFirstCharacterToEncode(char* text, int textLength)
    {
        for (var i = 0; i < textLength; i++)
        {
            // Of a pair it is not yet known what it stands for.
            if (char.IsSurrogate(text[i]) || WillEncode(text[i]))
            {
                return i;
            }
        }

        return -1;
    }

    /// <inheritdoc/>
    public override unsafe bool TryEncodeUnicodeScalar(int unicodeScalar, char* buffer, int bufferLength, out int numberOfCharactersWritten)
    {
        var text = IsHidden(unicodeScalar) ? " " : IsSpecial(unicodeScalar) ? $"\\{(char)unicodeScalar}" : char.ConvertFromUtf32(unicodeScalar);
        numberOfCharactersWritten = text.Length <= bufferLength ? text.Length : 0;
        for (var i = 0; i < numberOfCharactersWritten; i++)
        {
            buffer[i] = text[i];
        }

        return numberOfCharactersWritten > 0;
    }

    /// <inheritdoc/>
    public override bool WillEncode(int unicodeScalar) => IsHidden(unicodeScalar) || IsSpecial(unicodeScalar);

    /// <inheritdoc/>
    public override string Encode(string value) => AtTheStart(base.Encode(value));

    /// <inheritdoc/>
    public override void Encode(TextWriter output, string value, int startIndex, int characterCount)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(value);
        output.Write(Encode(value.Substring(startIndex, characterCount)));
    }

    // A text may be the first of its line: no list, no rule, no heading by underlining, no code by indenting.
    private static string AtTheStart(string text)
    {
        var trimmed = text.TrimStart();
        var number = Number().Match(trimmed);
        return number.Success ? $"{number.Groups[1].Value}\\{trimmed[number.Groups[1].Length..]}"
            : trimmed.Length > 0 && trimmed[0] is ('-' or '+' or '=') ? $"\\{trimmed}"
            : trimmed;
    }

    private static bool IsHidden(int scalar) => Rune.TryCreate(scalar, out var sign) && HiddenSigns.Has(sign);

    [GeneratedRegex(@"^([0-9]{1,9})[.)](?: |$)", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    private static bool IsSpecial(int scalar) => scalar <= char.MaxValue && Special.Contains((char)scalar, StringComparison.Ordinal);
}

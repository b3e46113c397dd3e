using System.Text.Encodings.Web;

namespace Criteria.Documents.Templating;

/// <summary>Makes text from a case or a ruleset plain text in Markdown: nothing in it can become markup, a link or a new line.</summary>
internal sealed class MarkdownEncoder : TextEncoder
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
            if (WillEncode(text[i]) || char.IsSurrogate(text[i]))
            {
                return i;
            }
        }

        return -1;
    }

    /// <inheritdoc/>
    public override unsafe bool TryEncodeUnicodeScalar(int unicodeScalar, char* buffer, int bufferLength, out int numberOfCharactersWritten)
    {
        var text = unicodeScalar < ' ' ? " " : IsSpecial(unicodeScalar) ? $"\\{(char)unicodeScalar}" : char.ConvertFromUtf32(unicodeScalar);
        numberOfCharactersWritten = text.Length <= bufferLength ? text.Length : 0;
        for (var i = 0; i < numberOfCharactersWritten; i++)
        {
            buffer[i] = text[i];
        }

        return numberOfCharactersWritten > 0;
    }

    /// <inheritdoc/>
    public override bool WillEncode(int unicodeScalar) => unicodeScalar < ' ' || IsSpecial(unicodeScalar);

    private static bool IsSpecial(int scalar) => scalar <= char.MaxValue && Special.Contains((char)scalar, StringComparison.Ordinal);
}

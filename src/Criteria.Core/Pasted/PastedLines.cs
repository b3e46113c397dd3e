using System.Text;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>Turns bytes into lines, or says why they are no text to read.</summary>
internal static class PastedLines
{
    public const int MostBytes = 64 * 1024;
    public const int MostLines = 2000;
    public const int LongestLine = 1000;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The lines; empty when there was a problem.</summary>
    public static IReadOnlyList<string> Read(SourceFile file, DiagnosticBag bag)
    {
        if (file.Content.Length > MostBytes)
        {
            bag.Add(PastedDiagnostics.TooLarge(MostBytes, file.Name));
            return [];
        }

        string text;
        try
        {
            text = Strict.GetString(file.Content.Span).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            bag.Add(PastedDiagnostics.NotText(file.Name));
            return [];
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            bag.Add(PastedDiagnostics.Empty(file.Name));
            return [];
        }

        // A page break ends a line and, like an empty one, what stands together.
        var lines = text.ReplaceLineEndings("\n").Replace("\f", "\n\n", StringComparison.Ordinal).Split('\n');
        if (lines.Length > MostLines)
        {
            bag.Add(PastedDiagnostics.TooManyLines(MostLines, file.Name));
            return [];
        }

        for (var line = 0; line < lines.Length; line++)
        {
            Check(lines[line], line + 1, file.Name, bag);
        }

        return bag.HasErrors ? [] : lines;
    }

    private static void Check(string line, int number, string file, DiagnosticBag bag)
    {
        if (line.Length > LongestLine)
        {
            bag.Add(PastedDiagnostics.LineTooLong(LongestLine, new SourceSpan(file, number, LongestLine + 1, number, line.Length + 1)));
            return;
        }

        var column = 1;
        foreach (var sign in line.EnumerateRunes())
        {
            if (sign.Value != '\t' && HiddenSigns.Has(sign))
            {
                bag.Add(PastedDiagnostics.HiddenSign(sign, new SourceSpan(file, number, column, number, column + 1)));
                return;
            }

            column += sign.Utf16SequenceLength;
        }
    }
}

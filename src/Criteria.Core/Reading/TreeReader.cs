using System.Text;
using System.Text.Json;

namespace Criteria.Core.Reading;

/// <summary>The bounds within which a file is read, so that a hostile one ends in a clear error.</summary>
internal static class ReadingBounds
{
    public const long LargestFile = 4 * 1024 * 1024;
    public const int Deepest = 32;
    public const int LongestText = 20_000;
    public const int MostValues = 200_000;
}

/// <summary>Reads YAML or JSON text into one tree of nodes with places.</summary>
internal static class TreeReader
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The tree, or null when the text is not readable; then <paramref name="bag"/> says why.</summary>
    public static Node? Read(string file, ReadOnlySpan<byte> content, DiagnosticBag bag)
    {
        if (content.Length > ReadingBounds.LargestFile)
        {
            bag.Add(ReadingDiagnostics.TooLarge(ReadingBounds.LargestFile, file));
            return null;
        }

        string text;
        try
        {
            text = Strict.GetString(content).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            bag.Add(ReadingDiagnostics.NotText(file));
            return null;
        }

        if (text.Contains('\0', StringComparison.Ordinal))
        {
            bag.Add(ReadingDiagnostics.NotText(file));
            return null;
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            bag.Add(ReadingDiagnostics.Empty(file));
            return null;
        }

        return LooksLikeJson(file, text) ? JsonTree.Read(file, text, bag) : YamlTree.Read(file, text, bag);
    }

    // A `{` opens both a JSON object and a YAML flow map; only what JSON accepts whole is read as JSON, unless the name says so.
    private static bool LooksLikeJson(string file, string text)
    {
        if (file.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        if (file.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || file.EndsWith(".yml", StringComparison.OrdinalIgnoreCase)
            || text.AsSpan().TrimStart()[0] != '{')
        {
            return false;
        }

        try
        {
            using var document = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = ReadingBounds.Deepest + 2 });
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}

/// <summary>Counts what a tree holds, and stops the reading at the bounds.</summary>
internal sealed class TreeBudget(DiagnosticBag bag)
{
    private int _values;

    public bool Spend(int depth, int textLength, SourceSpan span)
    {
        if (depth > ReadingBounds.Deepest)
        {
            bag.Add(ReadingDiagnostics.TooDeep(ReadingBounds.Deepest, span));
            return false;
        }

        if (textLength > ReadingBounds.LongestText)
        {
            bag.Add(ReadingDiagnostics.TextTooLong(ReadingBounds.LongestText, span));
            return false;
        }

        if (++_values > ReadingBounds.MostValues)
        {
            bag.Add(ReadingDiagnostics.TooManyValues(ReadingBounds.MostValues, span));
            return false;
        }

        return true;
    }
}

using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Pdf;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>What the file says of itself, and nothing that differs from one run to the next.</summary>
internal static partial class FileFacts
{
    /// <summary>Title, program and dates.</summary>
    public static void Describe(PdfDocument document, DocumentPage page)
    {
        var date = page.Date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        document.Info.Title = $"{page.Title}, {page.KeyWord.ToLowerInvariant()} {page.CaseKey}, {page.StateWords}";
        document.Info.Creator = page.Program;
        document.Info.CreationDate = date;
        document.Info.ModificationDate = date;
    }

    /// <summary>The file with the numbers that the library draws at random replaced by the document's own.</summary>
    /// <remarks>
    /// They are the two ids of the file, those of its metadata, and the six letters before the name of each embedded font. All keep their
    /// length, so the table of places at the end of the file stays true. Each stands in plain text outside of any compressed stream.
    /// </remarks>
    public static byte[] Steady(byte[] file, DocumentPage page)
    {
        var text = Encoding.Latin1.GetString(file);
        var fonts = new Dictionary<string, string>(StringComparer.Ordinal);
        var steady = Changing().Replace(text, match => match.Groups["font"] is { Success: true } font
            ? match.Result("${before}") + TagOf(font.Value, fonts, page)
            : match.Result("${before}") + (match.Groups["uuid"].Success ? Dashed(page.Id) : page.Id.ToUpperInvariant()) + match.Result("${after}"));
        return Encoding.Latin1.GetBytes(steady);
    }

    private static string TagOf(string drawn, Dictionary<string, string> fonts, DocumentPage page)
    {
        if (!fonts.TryGetValue(drawn, out var tag))
        {
            var hash = SHA256.HashData(Encoding.UTF8.GetBytes($"{page.Id} {fonts.Count}"));
            tag = string.Concat(hash.Take(drawn.Length).Select(value => (char)('A' + (value % ('Z' - 'A' + 1)))));
            fonts.Add(drawn, tag);
        }

        return tag;
    }

    private static string Dashed(string id) => Guid.ParseExact(id, "N").ToString("D");

    [GeneratedRegex(@"(?<before>/(?:FontName|BaseFont)/)(?<font>[A-Z]{6})(?=\+)|(?<before><xmpMM:(?:DocumentID|InstanceID)>uuid:)(?<uuid>[0-9a-f\-]{36})(?<after><)|(?<before>(?:/ID\[<|(?<=/ID\[<[0-9A-F]{32})><))(?<id>[0-9A-F]{32})(?<after>)")]
    private static partial Regex Changing();
}

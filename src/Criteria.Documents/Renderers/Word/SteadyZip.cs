using System.IO.Compression;

namespace Criteria.Documents.Renderers.Word;

/// <summary>Packs a file again so that it is the same in every run: entries by name, and one date on each.</summary>
internal static class SteadyZip
{
    // The format asks for it to be found first by readers that take entries as they come.
    private const string First = "[Content_Types].xml";

    /// <summary>The same entries, packed anew.</summary>
    public static byte[] Pack(byte[] file, DateOnly date)
    {
        using var made = new MemoryStream();
        using (var source = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read))
        using (var target = new ZipArchive(made, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries.OrderBy(entry => entry.FullName != First).ThenBy(entry => entry.FullName, StringComparer.Ordinal))
            {
                var copy = target.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
                using var from = entry.Open();
                using var to = copy.Open();
                from.CopyTo(to);
            }
        }

        return made.ToArray();
    }
}

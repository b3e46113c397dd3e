using System.Text;

namespace Criteria.Cli.Files;

/// <summary>A file that is written whole or not at all: to a temporary name beside it, then renamed.</summary>
internal sealed class OutputFile : IDisposable
{
    private readonly string _path;
    private readonly string _temporary;
    private bool _kept;

    private OutputFile(string path, string temporary, TextWriter writer) => (_path, _temporary, Writer) = (path, temporary, writer);

    /// <summary>Where to write.</summary>
    public TextWriter Writer { get; }

    /// <summary>Opens the file, or says why not.</summary>
    public static OutputFile? Open(string path, out string? why)
    {
        why = null;
        var temporary = $"{path}.part";
        try
        {
            if (Directory.Exists(path))
            {
                why = $"{path}: is a folder; name a file";
                return null;
            }

            return new OutputFile(path, temporary, new StreamWriter(temporary, append: false, new UTF8Encoding(false)) { NewLine = "\n" });
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            why = $"{path}: cannot be written";
            return null;
        }
    }

    /// <summary>Whether both names stand for one file, so far as names tell.</summary>
    public static bool IsSame(string one, string other) =>
        one.Length > 0 && other.Length > 0
        && string.Equals(Path.GetFullPath(one), Path.GetFullPath(other), OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    /// <summary>Puts the file in its place.</summary>
    public void Keep()
    {
        Writer.Dispose();
        File.Move(_temporary, _path, overwrite: true);
        _kept = true;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!_kept)
        {
            Writer.Dispose();
            File.Delete(_temporary);
        }
    }
}

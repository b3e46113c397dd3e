using Criteria.Core.Reading;

namespace Criteria.Cli.Files;

/// <summary>Reads the files that the command line names.</summary>
internal static class InputFiles
{
    /// <summary>The name that stands for standard input.</summary>
    public const string StandardInput = "-";

    private const int MostBytes = 8 * 1024 * 1024;

    /// <summary>The file, or null and a line that says why not.</summary>
    public static SourceFile? Read(string name, Stream standardInput, out string? why)
    {
        why = null;
        try
        {
            if (name == StandardInput)
            {
                return new SourceFile("standard input", ReadBounded(standardInput));
            }

            if (Directory.Exists(name))
            {
                why = $"{name}: is a folder; name the case files in it";
                return null;
            }

            using var stream = File.OpenRead(name);
            return new SourceFile(name, ReadBounded(stream));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            why = $"{name}: {Reason(name, error)}";
            return null;
        }
    }

    /// <summary>Every YAML file of a folder and its subfolders, named from the folder on.</summary>
    public static IReadOnlyList<SourceFile> ReadFolder(string folder)
    {
        var options = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System, IgnoreInaccessible = false };
        return
        [
            .. Directory.EnumerateFiles(folder, "*.*", options)
                .Where(file => file.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || file.EndsWith(".yml", StringComparison.OrdinalIgnoreCase))
                .Order(StringComparer.Ordinal)
                .Select(file => new SourceFile(Path.Join(folder, Path.GetRelativePath(folder, file)).Replace('\\', '/'), File.ReadAllBytes(file))),
        ];
    }

    // One byte more than the reader accepts is enough: it then says that the file is too large.
    private static byte[] ReadBounded(Stream stream)
    {
        using var memory = new MemoryStream();
        var buffer = new byte[1 << 16];
        int read;
        while (memory.Length <= MostBytes && (read = stream.Read(buffer)) > 0)
        {
            memory.Write(buffer, 0, read);
        }

        return memory.ToArray();
    }

    private static string Reason(string name, Exception error)
    {
        if (error is not (FileNotFoundException or DirectoryNotFoundException))
        {
            return error is UnauthorizedAccessException ? "may not be read" : "cannot be read";
        }

        var near = NearestIn(name);
        return near is null ? "there is no such file" : $"there is no such file; did you mean `{near}`?";
    }

    // A folder that may be entered and not listed must not turn "no such file" into an exception.
    private static string? NearestIn(string name)
    {
        var options = new EnumerationOptions { AttributesToSkip = FileAttributes.None };
        var folder = Path.GetDirectoryName(name);
        folder = string.IsNullOrEmpty(folder) ? "." : folder;
        return Directory.Exists(folder)
            ? NearestName.Of(Path.GetFileName(name), Directory.EnumerateFileSystemEntries(folder, "*", options).Select(entry => Path.GetFileName(entry)!))
            : null;
    }
}

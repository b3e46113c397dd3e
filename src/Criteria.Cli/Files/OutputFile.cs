using System.Runtime.InteropServices;
using System.Text;

namespace Criteria.Cli.Files;

/// <summary>A file that is written whole or not at all: to a temporary name beside it, then renamed.</summary>
internal static class OutputFile
{
    private static readonly PosixSignal[] Endings = [PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP];

    /// <summary>Writes the file and gives the exit code of <paramref name="write"/>; when it cannot be written, that is said and nothing is left behind.</summary>
    public static int Write(string path, Terminal terminal, Func<TextWriter, int> write) => Write(path, terminal, stream =>
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
        return write(writer);
    });

    /// <summary>Writes a file of known content.</summary>
    public static int Write(string path, Terminal terminal, ReadOnlyMemory<byte> content) => Write(path, terminal, stream =>
    {
        stream.Write(content.Span);
        return ExitCode.Done;
    });

    private static int Write(string path, Terminal terminal, Func<Stream, int> write)
    {
        if (Directory.Exists(path))
        {
            terminal.Error.WriteLine($"{path}: is a folder; name a file");
            return ExitCode.Usage;
        }

        path = Target(path);

        // A name of its own: another run may write the same file, and the obvious name may be that of a file of the user.
        var temporary = $"{path}.{Environment.ProcessId}.part";
        try
        {
            var code = WriteTemporary(temporary, write);
            File.Move(temporary, path, overwrite: true);
            return code;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            Delete(temporary);
            terminal.Error.WriteLine($"{path}: cannot be written");
            return ExitCode.Usage;
        }
        catch
        {
            // An exception that nobody catches ends the process before any `finally` is reached.
            Delete(temporary);
            throw;
        }
    }

    /// <summary>Whether files may be written: none of them is there, or they may be overwritten. Says which are there.</summary>
    public static bool MayWrite(IEnumerable<string> paths, bool force, Terminal terminal)
    {
        var there = force ? [] : paths.Where(File.Exists).ToArray();
        foreach (var path in there)
        {
            terminal.Error.WriteLine($"{path}: is there already; --force overwrites it");
        }

        return there.Length == 0;
    }

    /// <summary>Whether both names stand for one file, so far as names tell.</summary>
    public static bool IsSame(string one, string other) =>
        one.Length > 0 && other.Length > 0
        && string.Equals(Path.GetFullPath(one), Path.GetFullPath(other), OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    // A link is followed: renaming over it would put a file in its place.
    private static string Target(string path)
    {
        try
        {
            return new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return path;
        }
    }

    private static int WriteTemporary(string temporary, Func<Stream, int> write)
    {
        // Ctrl-C ends the process without unwinding: what was begun goes first.
        var registrations = Array.ConvertAll(Endings, signal => PosixSignalRegistration.Create(signal, _ => Delete(temporary)));
        try
        {
            // Windows deletes a file that is open only where that was allowed.
            using var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.Delete);
            return write(stream);
        }
        finally
        {
            Array.ForEach(registrations, registration => registration.Dispose());
        }
    }

    private static void Delete(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            // The message about the file itself is the one that helps.
        }
    }
}

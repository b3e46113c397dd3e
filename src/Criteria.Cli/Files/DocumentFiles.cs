using Criteria.Cli.Commands;
using Criteria.Documents;
using Criteria.Documents.Renderers;

namespace Criteria.Cli.Files;

/// <summary>A document as the bytes of its file.</summary>
/// <param name="Name">The document's name.</param>
/// <param name="CaseKey">The case key.</param>
/// <param name="Format">The format.</param>
/// <param name="Bytes">The file.</param>
/// <param name="Digest">The digest that a sign-off would record; null when there is nothing to sign off.</param>
internal sealed record DocumentFile(string Name, string CaseKey, string Format, ReadOnlyMemory<byte> Bytes, string? Digest);

/// <summary>Puts documents on the screen or into a folder.</summary>
internal static class DocumentFiles
{
    private static readonly string[] ForScreens = ["text", "markdown", "html", CalendarDocument.Format];

    /// <summary>Writes them and gives the exit code; no file is touched while another of them would be overwritten.</summary>
    public static int Write(IReadOnlyList<DocumentFile> documents, WriteRequest request, Terminal terminal)
    {
        if (request.Folder is not { } folder)
        {
            return Show(documents[0], terminal);
        }

        var files = documents.Select(document => (Document: document, Path: Path.Combine(folder, NameOf(document)))).ToArray();
        if (!OutputFile.MayWrite(files.Select(file => file.Path), request.Force, terminal) || !TryMake(folder, terminal))
        {
            return ExitCode.Usage;
        }

        foreach (var (document, path) in files)
        {
            if (OutputFile.Write(path, terminal, document.Bytes) is not ExitCode.Done and var code)
            {
                return code;
            }

            terminal.Out.WriteLine(path);
            SayDigest(document, terminal);
        }

        return ExitCode.Done;
    }

    /// <summary>Makes a folder, unless it is there.</summary>
    public static bool TryMake(string folder, Terminal terminal)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            terminal.Error.WriteLine($"{folder}: cannot be made a folder");
            return false;
        }
    }

    private static int Show(DocumentFile document, Terminal terminal)
    {
        if (!ForScreens.Contains(document.Format))
        {
            terminal.Error.WriteLine($"A {document.Format} file is not for the screen: add --out DIR.");
            return ExitCode.Usage;
        }

        terminal.Out.Write(System.Text.Encoding.UTF8.GetString(document.Bytes.Span));
        return ExitCode.Done;
    }

    // What a sign-off records; a final text has it already.
    private static void SayDigest(DocumentFile document, Terminal terminal)
    {
        if (document.Digest is { } digest)
        {
            terminal.Out.WriteLine($"  text_digest: {digest}");
        }
    }

    // A case key may hold what a file name may not.
    private static string NameOf(DocumentFile document)
    {
        var key = string.Concat(document.CaseKey.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '_'));
        var extension = document.Format == CalendarDocument.Format ? CalendarDocument.Extension : DocumentFormats.ExtensionOf(document.Format);
        return $"{key}-{document.Name}{extension}";
    }
}

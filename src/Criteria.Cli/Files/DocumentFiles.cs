using Criteria.Cli.Commands;
using Criteria.Documents;
using Criteria.Documents.Renderers;

namespace Criteria.Cli.Files;

/// <summary>Puts documents on the screen or into a folder.</summary>
internal static class DocumentFiles
{
    private static readonly string[] ForScreens = ["text", "markdown", "html"];

    /// <summary>Writes them and gives the exit code; no file is touched while another of them would be overwritten.</summary>
    public static int Write(IReadOnlyList<WrittenDocument> documents, WriteRequest request, Terminal terminal)
    {
        if (request.Folder is not { } folder)
        {
            return Show(documents[0], request, terminal);
        }

        var files = documents.Select(document => (Document: document, Path: Path.Combine(folder, NameOf(document.Page!, request.Format)))).ToArray();
        foreach (var (_, path) in files.Where(file => File.Exists(file.Path) && !request.Force))
        {
            terminal.Error.WriteLine($"{path}: is there already; --force overwrites it");
        }

        if (!request.Force && files.Any(file => File.Exists(file.Path)))
        {
            return ExitCode.Usage;
        }

        if (!TryMake(folder, terminal))
        {
            return ExitCode.Usage;
        }

        foreach (var (document, path) in files)
        {
            var bytes = DocumentFormats.Render(document.Page!, request.Format, request.Ascii);
            if (OutputFile.Write(path, terminal, bytes) is not ExitCode.Done and var code)
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

    private static int Show(WrittenDocument document, WriteRequest request, Terminal terminal)
    {
        if (!ForScreens.Contains(request.Format))
        {
            terminal.Error.WriteLine($"A {request.Format} file is not for the screen: add --out DIR.");
            return ExitCode.Usage;
        }

        terminal.Out.Write(System.Text.Encoding.UTF8.GetString(DocumentFormats.Render(document.Page!, request.Format, request.Ascii).Span));
        return ExitCode.Done;
    }

    // What a sign-off records; a final text has it already.
    private static void SayDigest(WrittenDocument document, Terminal terminal)
    {
        if (document.Page!.State == DocumentState.Draft)
        {
            terminal.Out.WriteLine($"  text_digest: {document.TextDigest}");
        }
    }

    // A case key may hold what a file name may not.
    private static string NameOf(DocumentPage page, string format)
    {
        var key = string.Concat(page.CaseKey.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '_'));
        return $"{key}-{page.Name}{DocumentFormats.ExtensionOf(format)}";
    }
}

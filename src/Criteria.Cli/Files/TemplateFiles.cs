using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents;

namespace Criteria.Cli.Files;

/// <summary>The templates of documents: the shipped ones, and those of a folder.</summary>
internal static class TemplateFiles
{
    private const string Extension = ".md.liquid";

    /// <summary>The templates, or null when one has a problem; then everything wrong was printed.</summary>
    public static DocumentTemplates? Load(string? folder, RulesetLibrary library, Terminal terminal, out int exitCode)
    {
        exitCode = ExitCode.Usage;
        if (Own(folder, terminal) is not { } own)
        {
            return null;
        }

        var loading = DocumentTemplates.Load(library, own);
        Diagnostics.Print(loading.Problems, terminal.Error);
        if (loading.Templates is null)
        {
            terminal.Error.WriteLine("The templates do not load, so nothing was written.");
        }

        return loading.Templates;
    }

    /// <summary>Copies the shipped templates into a folder and gives the exit code.</summary>
    public static int Copy(string folder, bool force, Terminal terminal)
    {
        var files = DocumentTemplates.Shipped();
        if (!OutputFile.MayWrite(files.Select(file => Path.Combine(folder, file.Name)), force, terminal) || !DocumentFiles.TryMake(folder, terminal))
        {
            return ExitCode.Usage;
        }

        foreach (var file in files)
        {
            var path = Path.Combine(folder, file.Name);
            if (OutputFile.Write(path, terminal, file.Content) is not ExitCode.Done and var code)
            {
                return code;
            }

            terminal.Out.WriteLine(path);
        }

        return ExitCode.Done;
    }

    private static IReadOnlyCollection<SourceFile>? Own(string? folder, Terminal terminal)
    {
        if (folder is null)
        {
            return [];
        }

        if (!Directory.Exists(folder))
        {
            terminal.Error.WriteLine($"{folder}: there is no such folder");
            return null;
        }

        try
        {
            SourceFile[] files = [.. Directory.EnumerateFiles(folder, $"*{Extension}").Order(StringComparer.Ordinal).Select(path => new SourceFile(path, File.ReadAllBytes(path)))];
            if (files.Length > 0)
            {
                return files;
            }

            // Going on with the shipped ones would look as if those of the folder had been used.
            terminal.Error.WriteLine($"{folder}: holds no templates; their names end in {Extension}");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"{folder}: cannot be read");
        }

        return null;
    }
}

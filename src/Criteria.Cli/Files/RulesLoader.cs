using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Files;

/// <summary>Loads the shipped rules, with those of a folder if one is given.</summary>
internal static class RulesLoader
{
    /// <summary>The library, or null when the rules do not load; then everything wrong was printed.</summary>
    public static RulesetLibrary? Load(string? folder, Terminal terminal, out int exitCode)
    {
        exitCode = ExitCode.Done;
        if (Loading(folder, terminal) is not { } loading)
        {
            exitCode = ExitCode.Usage;
            return null;
        }

        Diagnostics.Print(loading.Problems, terminal.Error);
        if (loading.Library is null)
        {
            terminal.Error.WriteLine("The rules do not load, so nothing was done. Loading is all or nothing.");
            exitCode = ExitCode.RulesetProblems;
        }

        return loading.Library;
    }

    private static LibraryLoading? Loading(string? folder, Terminal terminal) =>
        folder is null ? ShippedRules.Loading : Files(folder, terminal) is { } files ? RulesetLibrary.Load(files) : null;

    /// <summary>The files of the rules, or null when a folder has none; then it was said.</summary>
    public static IEnumerable<SourceFile>? Files(string? folder, Terminal terminal)
    {
        if (folder is null)
        {
            return ShippedRules.Files();
        }

        try
        {
            if (Directory.Exists(folder))
            {
                var local = InputFiles.ReadFolder(folder);
                if (local.Count > 0)
                {
                    return ShippedRules.With(local);
                }

                // Going on without the local rules would look as if they had been used.
                terminal.Error.WriteLine($"{folder}: holds no rules; the names of rule files end in .yaml");
                return null;
            }

            terminal.Error.WriteLine($"{folder}: there is no such folder");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"{folder}: cannot be read");
        }

        return null;
    }
}

/// <summary>Prints diagnostics for people.</summary>
internal static class Diagnostics
{
    public static void Print(IEnumerable<Diagnostic> problems, TextWriter writer)
    {
        foreach (var problem in problems)
        {
            writer.WriteLine(problem.ToString());
        }
    }
}

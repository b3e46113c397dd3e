using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Criteria.Cli.Files;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Sharing;
using Criteria.Engine;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria case deidentify</c>: a case file for sharing.</summary>
internal static partial class CaseDeidentifyCommand
{
    private const string DefaultKey = "case";

    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A case file; `-` reads standard input." };
        file.Validators.Add(SharedOptions.RefuseOptions);
        var key = new Option<string>("--key")
        {
            Description = "The key in the place of the case's own: letters, digits, `-` and `_`. Choose one that says nothing of the patient; only you can know what it stands for.",
            DefaultValueFactory = _ => DefaultKey,
            HelpName = "KEY",
        };
        var asOf = SharedOptions.AsOf();
        var rulesets = SharedOptions.Rulesets();
        var path = SharedOptions.Out();
        var force = SharedOptions.Force();
        var command = new Command("deidentify", "Write a case file for sharing: without names, numbers, free text and days (Safe Harbor classes), and say what can no longer be answered from it.")
        {
            file, key, asOf, rulesets, path, force,
        };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(file)!, parsed.GetValue(key)!, parsed.GetValue(asOf), parsed.GetValue(rulesets), parsed.GetValue(path), parsed.GetValue(force)));
        return command;
    }

    private static int Run(Terminal terminal, string name, string key, DateOnly? asOf, string? rulesets, string? path, bool force)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (InputFiles.Read(name, terminal.In, out var why) is not { } file)
        {
            Diagnostics.Print([FileDiagnostics.Unreadable(name, why!)], terminal.Error);
            return ExitCode.CaseProblems;
        }

        var reader = new CaseReader(library.Vocabulary);
        var reading = reader.Read(file);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Case is not { } subject)
        {
            return ExitCode.CaseProblems;
        }

        if ((asOf ?? subject.RulesDate) is not { } date)
        {
            Diagnostics.Print([FileDiagnostics.NoDate(file.Name)], terminal.Error);
            return ExitCode.CaseProblems;
        }

        if (path is not null && OutputFile.IsSame(name, path))
        {
            terminal.Error.WriteLine($"{path}: is the case itself, and the de-identified case would overwrite it");
            return ExitCode.Usage;
        }

        return IsUsable(key, subject.Key, terminal) && (path is null || OutputFile.MayWrite([path], force, terminal))
            ? Write(terminal, subject, date, key, library, path)
            : ExitCode.Usage;
    }

    private static int Write(Terminal terminal, Case subject, DateOnly date, string key, RulesetLibrary library, string? path)
    {
        var text = Deidentified.FileOf(subject, date, key);

        // What is compared is what a reader of the file will get, not what it was made from.
        var again = new CaseReader(library.Vocabulary).Read(new SourceFile("de-identified", Encoding.UTF8.GetBytes(text)));
        var shared = again.Case ?? throw new InvalidOperationException("the de-identified case cannot be read: " + string.Join("; ", again.Problems.Select(problem => problem.Message)));
        var assessor = new Assessor(library, CasesExpected.One);
        var lost = Lost.Between(assessor.Assess(subject, date), assessor.Assess(shared, shared.RulesDate!.Value));
        if (path is null)
        {
            terminal.Out.Write(text);
        }
        else if (OutputFile.Write(path, terminal, Encoding.UTF8.GetBytes(text)) is not ExitCode.Done and var failed)
        {
            return failed;
        }

        Say(lost, terminal);
        return ExitCode.Done;
    }

    private static void Say(IReadOnlyCollection<Lost> lost, Terminal terminal)
    {
        foreach (var line in ResidualRisk.Lines)
        {
            terminal.Error.WriteLine(line);
        }

        terminal.Error.WriteLine(lost.Count == 0
            ? "Every finding is the same in both."
            : $"{"finding".ToQuantity(lost.Count, formatProvider: CultureInfo.InvariantCulture)} can no longer be told alike:");
        foreach (var one in lost)
        {
            var night = one.Night is { } number ? $", night {number.ToString(CultureInfo.InvariantCulture)}" : "";
            terminal.Error.WriteLine($"  {one.Title}{night}: {one.Was}; now {one.Is}  [{one.Id}]");
        }
    }

    // A key that holds the old one, or a part of it, is the old one to whoever looks for it.
    private static bool IsUsable(string key, string old, Terminal terminal)
    {
        if (key.Length == 0 || key.Any(letter => !char.IsAsciiLetterOrDigit(letter) && letter is not ('-' or '_')))
        {
            terminal.Error.WriteLine("--key: letters, digits, `-` and `_` only");
            return false;
        }

        if (key != DefaultKey && HoldsAPart(Bare(key), Bare(old)))
        {
            terminal.Error.WriteLine("--key: is the key of the case, or holds a part of it; choose one that has nothing to do with it");
            return false;
        }

        return true;
    }

    private static bool HoldsAPart(string key, string old) =>
        key.Contains(old, StringComparison.Ordinal) || old.Contains(key, StringComparison.Ordinal)
        || Numbers().Matches(old).Any(number => key.Contains(number.Value, StringComparison.Ordinal));

    private static string Bare(string key) => string.Concat(key.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    // A shorter number may agree by chance.
    [GeneratedRegex("[0-9]{3,}", RegexOptions.CultureInvariant)]
    private static partial Regex Numbers();
}

using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Cases;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary>The commands below <c>criteria case</c>.</summary>
internal static class CaseCommand
{
    public static Command Create(Terminal terminal) => new("case", "Check case files, print a template for a new one, read figures out of a pasted summary, make one fit for sharing, or print their schema.")
    {
        Check(terminal), CaseNewCommand.Create(terminal), CasePasteCommand.Create(terminal), CaseDeidentifyCommand.Create(terminal), Schema(terminal),
    };

    private static Command Schema(Terminal terminal)
    {
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("schema", "Print the JSON Schema of case files, for an editor that completes and checks.") { rulesets };
        command.SetAction(parsed =>
        {
            if (RulesLoader.Load(parsed.GetValue(rulesets), terminal, out var code) is not { } library)
            {
                return code;
            }

            terminal.Out.WriteLine(JsonText.Of(writer => CaseSchema.Of(library.Vocabulary).WriteTo(writer), indented: true));
            return ExitCode.Done;
        });
        return command;
    }

    private static Command Check(Terminal terminal)
    {
        var files = SharedOptions.Cases();
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("check", "Read case files and report every problem with file, line and column; nothing is assessed.") { files, rulesets };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(files)!, parsed.GetValue(rulesets)));
        return command;
    }

    private static int Run(Terminal terminal, string[] names, string? rulesets)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        var reader = new CaseReader(library.Vocabulary);
        var faulty = 0;
        foreach (var name in names)
        {
            if (InputFiles.Read(name, terminal.In, out var why) is not { } file)
            {
                Diagnostics.Print([FileDiagnostics.Unreadable(name, why!)], terminal.Error);
                faulty++;
                continue;
            }

            var reading = reader.Read(file);
            Diagnostics.Print(reading.Problems, terminal.Error);
            if (reading.Case is { } read)
            {
                terminal.Out.WriteLine($"{file.Name}: {read.Key}, {"night".ToQuantity(read.Nights.Length)}, {"warning".ToQuantity(reading.Problems.Length)}");
            }
            else
            {
                faulty++;
            }
        }

        return faulty == 0 ? ExitCode.Done : ExitCode.CaseProblems;
    }
}

using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Criteria.Cli.Commands;

namespace Criteria.Cli;

/// <summary>The command line: parses, calls, prints.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command and gives its exit code.</summary>
    public static int Run(string[] args, Terminal terminal)
    {
        var root = Root(terminal);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0 && parsed.Action is not (ExamplesHelp or VersionAction))
        {
            foreach (var error in parsed.Errors)
            {
                terminal.Error.WriteLine(error.Message);
            }

            terminal.Error.WriteLine($"Try: criteria {string.Join(' ', Path(parsed.CommandResult))}--help");
            return ExitCode.Usage;
        }

        var code = parsed.Invoke(new InvocationConfiguration { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false });
        terminal.Out.Flush();
        return code;
    }

    private static RootCommand Root(Terminal terminal)
    {
        var root = new RootCommand("From a scored home night and an intake sheet to a traced severity grade, pathway options and a documentation checklist.");
        root.Subcommands.Add(AssessCommand.Create(terminal));
        root.Subcommands.Add(ExplainCommand.Create(terminal));
        root.Subcommands.Add(WriteCommand.Create(terminal));
        root.Subcommands.Add(CaseCommand.Create(terminal));
        root.Subcommands.Add(RulesCommand.Create(terminal));
        root.Subcommands.Add(FactsCommand.Create(terminal));
        foreach (var option in root.Options)
        {
            switch (option)
            {
                case VersionOption version:
                    version.Action = new VersionAction(terminal);
                    break;
                case HelpOption help:
                    help.Action = new ExamplesHelp((HelpAction)help.Action!, terminal);
                    break;
            }
        }

        return root;
    }

    private static IEnumerable<string> Path(CommandResult? result)
    {
        var names = new List<string>();
        for (var command = result; command is not null and { Command: not RootCommand }; command = command.Parent as CommandResult)
        {
            names.Insert(0, command.Command.Name);
        }

        return names.Append("");
    }
}

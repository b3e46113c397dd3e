using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria case new</c>: a template with just the facts that the chosen rules can use.</summary>
internal static class CaseNewCommand
{
    public static Command Create(Terminal terminal)
    {
        var purpose = new Option<string?>("--for")
        {
            Description = "A payer and an item, to add what their rules ask for. `criteria rules list` shows them.",
            HelpName = "PAYER,ITEM",
        };
        var asOf = SharedOptions.AsOf();
        var rulesets = SharedOptions.Rulesets();
        var path = SharedOptions.Out();
        var force = SharedOptions.Force();
        var command = new Command("new", "Print a commented case file with every fact that the rules can use, its unit and how to obtain it.") { purpose, asOf, rulesets, path, force };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(purpose), parsed.GetValue(asOf), parsed.GetValue(rulesets), parsed.GetValue(path), parsed.GetValue(force)));
        return command;
    }

    private static int Run(Terminal terminal, string? purpose, DateOnly? asOf, string? rulesets, string? path, bool force)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        var date = asOf ?? DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime);
        var (payer, item) = (default(string), default(string));
        if (purpose is not null && !TryPurpose(terminal, purpose, library, out payer, out item))
        {
            return ExitCode.Usage;
        }

        var template = CaseTemplate.Text(library.InForce(date, payer, item), date, payer, item);
        if (path is null)
        {
            terminal.Out.Write(template);
            return ExitCode.Done;
        }

        if (!OutputFile.MayWrite([path], force, terminal))
        {
            return ExitCode.Usage;
        }

        return OutputFile.Write(path, terminal, writer =>
        {
            writer.Write(template);
            return ExitCode.Done;
        });
    }

    private static bool TryPurpose(Terminal terminal, string purpose, RulesetLibrary library, out string? payer, out string? item)
    {
        var parts = purpose.Split(',', 2, StringSplitOptions.TrimEntries);
        (payer, item) = (parts[0], parts.Length == 2 ? parts[1] : "");
        var (wantedPayer, wantedItem) = (payer, item);
        var known = library.Rulesets.Where(ruleset => ruleset.Function == RulesetFunction.Coverage).ToArray();
        if (known.Any(ruleset => ruleset.Payer == wantedPayer && ruleset.Item == wantedItem))
        {
            return true;
        }

        terminal.Error.WriteLine($"--for: there are no rules for `{purpose}`; there are rules for {string.Join("; ", known.Select(ruleset => $"{ruleset.Payer},{ruleset.Item}").Distinct())}");
        return false;
    }
}

using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Cli.Report;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria rules basis</c>: the published facts, and what rests on each.</summary>
internal static class RulesBasisCommand
{
    public static Command Create(Terminal terminal)
    {
        var row = new Argument<string?>("ROW") { Description = "A published fact, or the letters its name begins with; all if left out.", Arity = ArgumentArity.ZeroOrOne };
        row.Validators.Add(SharedOptions.RefuseOptions);
        var format = SharedOptions.Format("text", "markdown");
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("basis", "List the published facts with how far each was verified and the criteria that rest on it.") { row, format, rulesets };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(row), parsed.GetValue(format)!, parsed.GetValue(rulesets)));
        return command;
    }

    private static int Run(Terminal terminal, string? row, string format, string? rulesets)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (library.PublishedFacts is null)
        {
            terminal.Error.WriteLine("These rules have no register of published facts (published-facts.yaml).");
            return ExitCode.Usage;
        }

        var all = FactCoverage.Of(library);
        var shown = all.Where(covered => row is null || Matches(covered.Fact.Id, row)).ToArray();
        if (shown.Length == 0)
        {
            var near = NearestName.Of(row!, all.Select(covered => covered.Fact.Id));
            terminal.Error.WriteLine($"There is no published fact `{row}`.{(near is null ? "" : $" Did you mean `{near}`?")}");
            return ExitCode.Usage;
        }

        var totals = BasisTotals.Of(all);
        if (format == "markdown")
        {
            new BasisMarkdown(terminal.Out).Write(totals, shown, library);
        }
        else
        {
            new BasisText(terminal.Out).Write(totals, shown);
        }

        return ExitCode.Done;
    }

    // `SEV` are all whose letters are these; `SEV-0` begins nothing that a reader would mean.
    private static bool Matches(string id, string row) =>
        id.Equals(row, StringComparison.OrdinalIgnoreCase) || id.StartsWith(row + "-", StringComparison.OrdinalIgnoreCase);
}

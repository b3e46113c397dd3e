using Criteria.Core.Facts;
using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Rulesets;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria rules list</c>, <c>check</c>, <c>test</c> and <c>basis</c>.</summary>
internal static class RulesCommand
{
    public static Command Create(Terminal terminal) => new("rules", "List the rulesets, check a folder of rules, run its tests, or list what it rests on.")
    {
        List(terminal), Check(terminal), RulesTestCommand.Create(terminal), RulesBasisCommand.Create(terminal),
    };

    private static Command List(Terminal terminal)
    {
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("list", "List every ruleset with its version, status, dates and settings.") { rulesets };
        command.SetAction(parsed =>
        {
            if (RulesLoader.Load(parsed.GetValue(rulesets), terminal, out var code) is not { } library)
            {
                return code;
            }

            foreach (var ruleset in library.Rulesets)
            {
                Print(ruleset, terminal.Out);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static Command Check(Terminal terminal)
    {
        var folder = new Argument<string>("DIR") { Description = "A folder of rules, or of local overlays to the shipped rules." };
        var command = new Command("check", "Load a folder of rules and report every problem with file, line and column.") { folder };
        command.SetAction(parsed =>
        {
            if (RulesLoader.Load(parsed.GetValue(folder), terminal, out var code) is not { } library)
            {
                return code;
            }

            var changes = library.Rulesets.Sum(ruleset => ruleset.Differences.Length);
            var local = changes == 0 ? "" : $" with {"local change".ToQuantity(changes)}";
            terminal.Out.WriteLine($"{"ruleset".ToQuantity(library.Rulesets.Count())}{local} load without a problem");
            return ExitCode.Done;
        });
        return command;
    }

    private static void Print(Ruleset ruleset, TextWriter output)
    {
        var coverage = ruleset.Payer is null ? "clinical" : $"coverage: {ruleset.Payer},{ruleset.Item}";
        output.WriteLine($"{ruleset.Id} {ruleset.Version}  {ruleset.Status.ToString().ToLowerInvariant()}, {coverage}");
        output.WriteLine($"  {ruleset.Title}");
        var until = ruleset.EffectiveUntil is { } end ? $" until {end.ToIso()}" : "";
        output.WriteLine($"  in force from {(ruleset.EffectiveFrom is { } from ? from.ToIso() : "any date")}{until}{(ruleset.ReviewBy is { } review ? $", review by {review.ToIso()}" : "")}");
        foreach (var setting in ruleset.Settings)
        {
            output.WriteLine($"  setting {setting.Name}: {setting.Is} (allowed: {string.Join(", ", setting.Allowed)})");
        }

        foreach (var difference in ruleset.Differences)
        {
            output.WriteLine($"  local, {difference.Overlay}: {difference.What} ({difference.Reason.TrimEnd('.')}; approved by {difference.ApprovedBy}, {difference.ApprovedOn.ToIso()})");
        }
    }
}

using Criteria.Core.Facts;
using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Rulesets;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria rules list</c>, <c>check</c>, <c>test</c>, <c>basis</c> and <c>book</c>.</summary>
internal static class RulesCommand
{
    public static Command Create(Terminal terminal) => new("rules", "List the rulesets, check a folder of rules, run its tests, list what it rests on, or write the policy book.")
    {
        List(terminal), Check(terminal), RulesTestCommand.Create(terminal), RulesBasisCommand.Create(terminal), RulesBookCommand.Create(terminal),
    };

    private static Command List(Terminal terminal)
    {
        var rulesets = SharedOptions.Rulesets();
        var on = RuleSelection.On();
        var payer = RuleSelection.Payer();
        var command = new Command("list", "List every ruleset with its version, status, dates and settings, and the digest of them all; with --on those in force on a date.") { on, payer, rulesets };
        command.SetAction(parsed =>
        {
            if (RulesLoader.Load(parsed.GetValue(rulesets), terminal, out var code) is not { } library)
            {
                return code;
            }

            if (RuleSelection.Of(library, parsed.GetValue(on), parsed.GetValue(payer), terminal) is not { } selection)
            {
                return ExitCode.Usage;
            }

            foreach (var ruleset in parsed.GetValue(on) is null ? library.Rulesets : selection.Rules.Rulesets)
            {
                Print(ruleset, terminal.Out);
            }

            terminal.Out.WriteLine($"digest of these rulesets and the vocabulary: {selection.Rules.Digest(library.VocabularyDigest)}");

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

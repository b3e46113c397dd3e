using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.BoundTests;
using Criteria.Core.Reading;
using Criteria.Engine.BoundTests;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria rules test</c>: runs the tests that stand beside the rulesets.</summary>
internal static class RulesTestCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("DIR") { Description = "A folder of rules with tests; the shipped rules if left out.", Arity = ArgumentArity.ZeroOrOne };
        var only = new Option<string?>("--only") { Description = "Only the tests of these rulesets, parted by commas.", HelpName = "RULESET" };
        var gaps = new Option<bool>("--gaps") { Description = "List what the tests leave out: thresholds, unknowns, questions." };
        var command = new Command("test", "Run the tests that stand beside the rulesets (NAME.tests.yaml).") { folder, only, gaps };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder), parsed.GetValue(only), parsed.GetValue(gaps)));
        return command;
    }

    private static int Run(Terminal terminal, string? folder, string? only, bool showGaps)
    {
        if (RulesLoader.Load(folder, terminal, out var code) is not { } library)
        {
            return code;
        }

        var names = only?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var known = library.Rulesets.Select(ruleset => ruleset.Id).Distinct(StringComparer.Ordinal).ToArray();
        foreach (var name in (names ?? []).Where(name => !known.Contains(name)))
        {
            var near = NearestName.Of(name, known);
            terminal.Error.WriteLine($"there is no ruleset `{name}`{(near is null ? "" : $"; did you mean `{near}`?")}");
            return ExitCode.Usage;
        }

        var reading = BoundTestReader.Read(RulesLoader.Files(folder, terminal)!, library);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Problems.Any(problem => problem.Severity == Severity.Error))
        {
            terminal.Error.WriteLine("The tests do not load, so none was run.");
            return ExitCode.CaseProblems;
        }

        var tests = reading.Tests.Where(test => names is null || names.Contains(test.Ruleset)).ToArray();
        var run = BoundTestRun.Of(library, tests);
        foreach (var failure in run.Failures)
        {
            terminal.Out.WriteLine(failure);
        }

        var left = known.Where(name => names is null || names.Contains(name)).SelectMany(name => run.Gaps(name, reading.AcceptedGaps)).ToArray();
        foreach (var gap in showGaps ? left : [])
        {
            terminal.Out.WriteLine($"not tested: {gap}");
        }

        terminal.Out.WriteLine(
            $"{"test".ToQuantity(tests.Length)}, {"outcome".ToQuantity(run.Compared)} compared, {run.Failures.Count} wrong; "
            + $"{"gap".ToQuantity(left.Length)}{(showGaps || left.Length == 0 ? "" : " (list them with --gaps)")}");
        return run.Failures.Count == 0 ? ExitCode.Done : ExitCode.CaseProblems;
    }
}

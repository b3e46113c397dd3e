using System.CommandLine;
using System.Text;
using Criteria.Cli.Files;
using Criteria.Core.BoundTests;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents;
using Criteria.Documents.PolicyBook;
using Criteria.Documents.Renderers;
using Criteria.Engine.BoundTests;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria rules book</c>: every rule with its sources and tests, for those who inspect a practice.</summary>
internal static class RulesBookCommand
{
    private static readonly string[] ForScreens = ["text", "markdown", "html"];

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("DIR") { Description = "A folder of rules, or of local overlays to the shipped rules; the shipped rules if left out.", Arity = ArgumentArity.ZeroOrOne };
        folder.Validators.Add(SharedOptions.RefuseOptions);
        var on = RuleSelection.On();
        var payer = RuleSelection.Payer();
        var format = SharedOptions.Format([.. DocumentFormats.All]);
        var paper = new Option<string>("--paper") { Description = "In PDF and Word: letter or a4.", DefaultValueFactory = _ => "letter", HelpName = "letter|a4" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var output = SharedOptions.Out();
        var command = new Command("book", "Write the policy book: every rule with its version, settings, local changes, words, sources and the outcome of its tests.")
        {
            folder, on, payer, format, paper, output,
        };
        command.SetAction(parsed => Run(
            terminal, parsed.GetValue(folder), (parsed.GetValue(on), parsed.GetValue(payer)), parsed.GetValue(format)!,
            parsed.GetValue(paper) == "a4" ? Paper.A4 : Paper.Letter, parsed.GetValue(output)));
        return command;
    }

    private static int Run(Terminal terminal, string? folder, (DateOnly? On, string? Payer) asked, string format, Paper paper, string? path)
    {
        if (path is null && !ForScreens.Contains(format))
        {
            terminal.Error.WriteLine($"A {format} file is not for the screen: add --out FILE.");
            return ExitCode.Usage;
        }

        if (RulesLoader.Load(folder, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (RuleSelection.Of(library, asked.On, asked.Payer, terminal) is not { } selection)
        {
            return ExitCode.Usage;
        }

        var reading = BoundTestReader.Read(RulesLoader.Files(folder, terminal)!, library);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Problems.Any(problem => problem.Severity == Severity.Error))
        {
            terminal.Error.WriteLine("The tests do not load, so the book was not written.");
            return ExitCode.CaseProblems;
        }

        var rules = selection.Rules;
        var shown = rules.Rulesets.Select(ruleset => ruleset.Id).ToHashSet(StringComparer.Ordinal);
        BoundTest[] tests = [.. reading.Tests.Where(test => shown.Contains(test.Ruleset))];
        var order = new BookOrder(library, rules, selection.Words, asked.On ?? Newest(rules), tests, BoundTestRun.Of(library, tests)) { Paper = paper };
        var bytes = DocumentFormats.Render(PolicyBookWriter.Write(order), format);
        if (path is not null)
        {
            return OutputFile.Write(path, terminal, bytes);
        }

        terminal.Out.Write(Encoding.UTF8.GetString(bytes.Span));
        return ExitCode.Done;
    }

    // For the metadata of a file, which must not know today: the last day on which something of it began to count.
    private static DateOnly Newest(RulesInForce rules) => rules.Rulesets.Select(ruleset => ruleset.EffectiveFrom ?? DateOnly.MinValue)
        .Concat(rules.Rulesets.SelectMany(ruleset => ruleset.Differences).Select(difference => difference.ApprovedOn)).Max();
}

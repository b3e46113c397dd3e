using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria facts</c>: looks up the vocabulary.</summary>
internal static class FactsCommand
{
    public static Command Create(Terminal terminal)
    {
        var word = new Argument<string?>("WORD") { Description = "A fact, or a word to look for; all facts if left out.", Arity = ArgumentArity.ZeroOrOne };
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("facts", "Look up the facts a case may hold: where they stand, their unit and range, who can supply them, how to ask.") { word, rulesets };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(word), parsed.GetValue(rulesets)));
        return command;
    }

    private static int Run(Terminal terminal, string? word, string? rulesets)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        var facts = library.Vocabulary.Facts.Concat(library.Vocabulary.Records.SelectMany(record => record.Attributes));
        var found = facts.Where(fact => word is null || Matches(fact, word)).ToArray();
        if (found.Length == 0)
        {
            var near = NearestName.Of(word!, facts.Select(fact => fact.Id));
            terminal.Error.WriteLine($"There is no fact `{word}`.{(near is null ? "" : $" Did you mean `{near}`?")}");
            return ExitCode.Usage;
        }

        foreach (var fact in found)
        {
            Print(fact, terminal.Out, whole: found.Length <= 5);
        }

        return ExitCode.Done;
    }

    private static bool Matches(FactDefinition fact, string word) =>
        fact.Id.Contains(word, StringComparison.OrdinalIgnoreCase) || fact.Label.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static void Print(FactDefinition fact, TextWriter output, bool whole)
    {
        output.WriteLine($"{fact.Id}: {fact.Label}{(fact.At is null ? ", computed" : $", at {fact.At}")}");
        if (!whole)
        {
            return;
        }

        output.WriteLine($"  {fact.Meaning}");
        if (fact.Index is { } index)
        {
            output.WriteLine($"  index type: {index}");
        }

        if (fact.Range is { } range)
        {
            output.WriteLine($"  possible: {QuantityText.Of(range.Low, fact.Unit)} to {QuantityText.Of(range.High, fact.Unit)}");
        }

        if (fact.Plausible is { } plausible)
        {
            output.WriteLine($"  usual: {QuantityText.Of(plausible.Low, fact.Unit)} to {QuantityText.Of(plausible.High, fact.Unit)}");
        }

        if (!fact.Choices.IsEmpty)
        {
            output.WriteLine($"  one of: {string.Join(", ", fact.Choices)}");
        }

        if (fact.Ask.Length > 0)
        {
            output.WriteLine($"  {fact.Owner}: {fact.Ask}");
        }
    }
}

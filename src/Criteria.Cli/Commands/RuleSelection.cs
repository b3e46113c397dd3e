using System.CommandLine;
using System.Globalization;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Commands;

/// <summary>Which rules a list or a book shows: those of a date, of every payer or of one payer and item.</summary>
/// <param name="Rules">The rules; without a date every ruleset in its newest version.</param>
/// <param name="Words">Which they are: <c>in force on 2026-07-01, every payer and item</c>.</param>
internal sealed record RuleSelection(RulesInForce Rules, string Words)
{
    public static Option<DateOnly?> On()
    {
        var option = SharedOptions.AsOf();
        return new Option<DateOnly?>("--on") { Description = "Only the rulesets in force on this date.", HelpName = "DATE", CustomParser = option.CustomParser };
    }

    public static Option<string?> Payer() => new("--payer")
    {
        Description = "With --on: beside the clinical rules only those of this payer and item, or `none`. Default: every payer and item.",
        HelpName = "PAYER,ITEM",
    };

    /// <summary>The selection; null when it was asked for in words that are none, which is then said.</summary>
    public static RuleSelection? Of(RulesetLibrary library, DateOnly? on, string? payer, Terminal terminal)
    {
        if (on is not { } date)
        {
            if (payer is not null)
            {
                terminal.Error.WriteLine("--payer: selects among the rules in force on a date; add --on DATE");
                return null;
            }

            return new RuleSelection(library.All, "of every status and date");
        }

        var day = date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        if (payer is null)
        {
            return new RuleSelection(library.InForce(date), $"in force on {day}, every payer and item");
        }

        if (payer == "none")
        {
            return new RuleSelection(library.InForce(date, null, null), $"in force on {day}, no payer");
        }

        var known = library.Rulesets.Where(ruleset => ruleset.Payer is not null).Select(ruleset => $"{ruleset.Payer},{ruleset.Item}").Distinct(StringComparer.Ordinal).ToArray();
        var asked = string.Join(',', payer.Split(',', StringSplitOptions.TrimEntries));
        if (!known.Contains(asked))
        {
            var near = NearestName.Of(asked, known);
            terminal.Error.WriteLine($"--payer: there are no rules for `{payer}`; {(near is null ? "" : $"did you mean `{near}`? ")}known: none, {string.Join("; ", known)}");
            return null;
        }

        var parts = asked.Split(',');
        return new RuleSelection(library.InForce(date, parts[0], parts[1]), $"in force on {day}, {parts[0]}, {parts[1]}");
    }
}

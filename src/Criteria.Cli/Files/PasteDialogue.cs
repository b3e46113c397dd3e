using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Pasted;
using Criteria.Core.Reading;

namespace Criteria.Cli.Files;

/// <summary>Asks a person about each figure of a pasted text, one after the other. Enter leaves it out.</summary>
internal sealed class PasteDialogue(TextReader answers, TextWriter screen, Case? into)
{
    private const string Stop = "q";

    /// <summary>What was confirmed, or null when the person stopped.</summary>
    public IReadOnlyList<ConfirmedFact>? Ask(PastedText text)
    {
        var taken = new List<ConfirmedFact>();
        for (var number = 0; number < text.Values.Length; number++)
        {
            var value = text.Values[number];
            screen.WriteLine();
            screen.WriteLine($"{Number(number + 1)} of {Number(text.Values.Length)}   line {Number(value.Place.Line)}");
            screen.WriteLine($"    {value.Line}");
            screen.WriteLine($"    {new string(' ', value.Place.Column - 1)}{new string('^', value.Place.EndColumn - value.Place.Column)}");
            foreach (var doubt in value.Doubts)
            {
                screen.WriteLine($"  Mind: {doubt}");
            }

            if (!AskOne(value, text, taken))
            {
                return null;
            }
        }

        foreach (var out_ in text.LeftOut)
        {
            screen.WriteLine($"Not taken, line {Number(out_.Place.Line)}: {out_.Words}: {out_.Why}");
        }

        return Confirm(taken) ? taken : null;
    }

    private bool AskOne(PastedValue value, PastedText text, List<ConfirmedFact> taken)
    {
        Show(value, text, taken);
        while (true)
        {
            screen.Write(value.Readings.Length == 1 ? "  y takes it, Enter leaves it out, q stops: " : "  Its number takes one, Enter leaves it out, q stops: ");
            screen.Flush();
            var answer = answers.ReadLine()?.Trim();
            if (answer is null or Stop)
            {
                return false;
            }

            if (answer.Length == 0 || answer == "n")
            {
                return true;
            }

            var choice = value.Readings.Length == 1 ? (answer == "y" ? 1 : 0)
                : int.TryParse(answer, NumberStyles.None, CultureInfo.InvariantCulture, out var typed) && typed <= value.Readings.Length ? typed : 0;
            if (choice > 0)
            {
                var fact = value.Readings[choice - 1].Fact;
                return AskNight(value, text, out var night) && Replace(taken, new ConfirmedFact(night, fact));
            }

            screen.WriteLine($"  `{HiddenSigns.Spaced(answer)}` is no answer here.");
        }
    }

    private void Show(PastedValue value, PastedText text, List<ConfirmedFact> taken)
    {
        for (var place = 0; place < value.Readings.Length; place++)
        {
            var reading = value.Readings[place];
            var mark = value.Readings.Length == 1 ? "" : $"{Number(place + 1)}  ";
            var night = value.Night is { } name && text.Nights.Length > 0 ? $", night {name}" : "";
            screen.WriteLine($"  {mark}{reading.Value} taken as {reading.Meaning}{night}");
            var other = taken.FirstOrDefault(one => one.Night == value.Night && one.Fact.Definition == reading.Fact.Definition)?.Fact ?? InCase(reading.Fact);
            if (other is not null && other.Value != reading.Fact.Value)
            {
                screen.WriteLine($"     It would replace {other.Written ?? other.Text}.");
            }
        }
    }

    private Fact? InCase(Fact fact)
    {
        var known = fact.Definition.Scope == FactScope.Case ? into?.Facts : into?.Nights is [var only] ? only.Facts : null;
        return known?.Entered.FirstOrDefault(other => other.Definition.Id == fact.Definition.Id && other.IsKnown);
    }

    private bool AskNight(PastedValue value, PastedText text, out string? night)
    {
        night = value.Night;
        if (night is not null || text.Nights.Length < 2 || value.Readings[0].Fact.Definition.Scope != FactScope.Night)
        {
            return true;
        }

        while (true)
        {
            screen.Write($"  Which night ({string.Join(", ", text.Nights)})? ");
            screen.Flush();
            var answer = answers.ReadLine()?.Trim();
            if (answer is null or Stop)
            {
                return false;
            }

            if (text.Nights.Contains(answer))
            {
                night = answer;
                return true;
            }
        }
    }

    private static bool Replace(List<ConfirmedFact> taken, ConfirmedFact fact)
    {
        taken.RemoveAll(other => other.Night == fact.Night && other.Fact.Definition == fact.Fact.Definition);
        taken.Add(fact);
        return true;
    }

    private bool Confirm(List<ConfirmedFact> taken)
    {
        screen.WriteLine();
        screen.WriteLine(taken.Count == 0 ? "Nothing was taken." : "Taken:");
        foreach (var (night, fact) in taken)
        {
            screen.WriteLine($"  {new PastedReading(fact).Meaning}: {fact.Written ?? fact.Text}{(night is null ? "" : $", night {night}")}");
        }

        if (taken.Count == 0)
        {
            return false;
        }

        screen.Write("Write the case? y writes it, anything else writes nothing: ");
        screen.Flush();
        return answers.ReadLine()?.Trim() == "y";
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}

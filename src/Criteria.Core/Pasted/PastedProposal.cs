using System.Globalization;
using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>Writes what a text may say as a case file in which every value stands behind a <c>#</c>, until a person takes it away.</summary>
/// <remarks>No word of the text stands in it but figures: a line may name a person.</remarks>
public static class PastedProposal
{
    private static readonly string[] Head =
    [
        "A proposal, read from a pasted text. NOTHING in it counts yet: every value stands behind a `#`.",
        "Hold each value against the line of the text that it names, and take the `#` at its start away when it is right.",
        "A value with `ASK` has more than one meaning or a doubt: answer it first, and keep one line of those that follow.",
        "Leave everything else as it is. Then put in the key of the case, and look with: criteria case check",
    ];

    /// <summary>The file, in YAML. It can be read as it stands, and says nothing.</summary>
    /// <param name="text">What the text may say.</param>
    /// <param name="key">The key of the case, or null.</param>
    public static string Write(PastedText text, string? key = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = new StringBuilder();
        foreach (var line in Head)
        {
            Line(lines, $"# {line}");
        }

        Line(lines, $"case: {Scalars.Text(key ?? PastedCase.NewKey)}");
        foreach (var section in text.Values.Where(value => !IsOfNight(value)).GroupBy(value => value.Readings[0].Fact.Definition.At!.Split('.')[0]))
        {
            Line(lines, $"{section.Key}: {{");
            Map(lines, [.. section], section.Key, 1);
            Line(lines, "  }");
        }

        var nights = text.Values.Where(IsOfNight).GroupBy(value => value.Night).ToArray();
        if (nights.Length > 0)
        {
            Line(lines, $"{Vocabulary.NightPlace}: [");
        }

        foreach (var night in nights)
        {
            Line(lines, night.Key is { } name ? $"  {{   # night {name}" : text.Nights.Length > 1 ? "  {   # the text does not tell the night of these" : "  {");
            Map(lines, [.. night.Where(value => value.Readings[0].Fact.Definition.Index is null)], Vocabulary.NightPlace, 2);
            Indices(lines, [.. night.Where(value => value.Readings[0].Fact.Definition.Index is not null)]);
            Line(lines, "  },");
        }

        if (nights.Length > 0)
        {
            Line(lines, "  ]");
        }

        foreach (var out_ in text.LeftOut)
        {
            Line(lines, $"# not proposed, line {Number(out_.Place.Line)}: {out_.Words}: {out_.Why}");
        }

        return lines.ToString();
    }

    private static void Map(StringBuilder lines, PastedValue[] values, string place, int depth)
    {
        foreach (var part in values.GroupBy(value => value.Readings[0].Fact.Definition.At![(place.Length + 1)..].Split('.')[0]))
        {
            var inner = $"{place}.{part.Key}";
            if (part.All(value => value.Readings[0].Fact.Definition.At != inner))
            {
                Line(lines, $"{Indent(depth)}{part.Key}: {{");
                Map(lines, [.. part], inner, depth + 1);
                Line(lines, $"{Indent(depth)}  }},");
                continue;
            }

            foreach (var value in part)
            {
                Remarks(lines, value, depth);
                foreach (var reading in value.Readings)
                {
                    var key = reading.Fact.Definition.At![(place.Length + 1)..];
                    Line(lines, $"#{Indent(depth)}{key}: {Scalars.Of(reading.Fact)},   # {reading.Meaning}");
                }
            }
        }
    }

    private static void Indices(StringBuilder lines, PastedValue[] values)
    {
        if (values.Length == 0)
        {
            return;
        }

        Line(lines, $"{Indent(2)}{IndexReader.Key}: [");
        foreach (var value in values)
        {
            Remarks(lines, value, 3);
            foreach (var reading in value.Readings)
            {
                var type = reading.Fact.Definition.Index!;
                Line(lines, $"#{Indent(3)}{{ index: {Scalars.Text(type.Index)}, {IndexReader.RuleKey(type.Index)}: {Scalars.Text(type.Rule)}, per_hour: {Scalars.Of(reading.Fact)} }},   # {reading.Meaning}");
            }
        }

        Line(lines, $"{Indent(2)}  ],");
    }

    private static void Remarks(StringBuilder lines, PastedValue value, int depth)
    {
        var ask = value.IsClear ? "" : value.Readings.Length > 1 ? "ASK which of these it is. " : "ASK. ";
        Line(lines, $"#{Indent(depth)}# line {Number(value.Place.Line)}, column {Number(value.Place.Column)}: {value.Words}. {ask}{string.Join(' ', value.Doubts)}");
    }

    private static bool IsOfNight(PastedValue value) => value.Readings[0].Fact.Definition.Scope == FactScope.Night;

    private static string Indent(int depth) => new(' ', 2 * depth);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Line(StringBuilder lines, string text) => lines.Append(text.TrimEnd()).Append('\n');
}

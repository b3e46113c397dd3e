using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Output;

/// <summary>The parts of a finding: value, trace, missing facts, open questions, option.</summary>
public static partial class AssessmentJson
{
    // A grade is its name, and the number that was graded stands beside it; a score is its points, or the lowest and
    // highest still possible, and its class stands beside it.
    private static void WriteValue(Utf8JsonWriter writer, Finding finding)
    {
        var value = finding.Value;
        if (finding.Criterion.Body is ScoreBody && value is { Number: { } points })
        {
            WriteNumber(writer, "value", points);
            writer.WriteString("unit", "points");
            WriteText(writer, "class", value.Band.Length == 0 ? null : value.Band);
            return;
        }

        WriteText(writer, "value", value is { Band.Length: > 0 } ? value.Band : null);
        writer.WriteNull("unit");
        if (value?.Number is { } number)
        {
            var inUnit = new Interval(Ratio.Divide(number.Low, value.Unit.Factor), Ratio.Divide(number.High, value.Unit.Factor), number.HighIncluded);
            writer.WriteStartObject("graded");
            WriteNumber(writer, "value", inUnit);
            writer.WriteString("unit", value.Unit.Symbol);
            writer.WriteEndObject();
        }
    }

    private static void WriteNumber(Utf8JsonWriter writer, string name, Interval number)
    {
        if (number.IsExact)
        {
            writer.WriteNumber(name, Plain(number.Low));
            return;
        }

        writer.WriteStartObject(name);
        writer.WriteNumber("low", Plain(number.Low));
        writer.WriteNumber("high", Plain(number.High));
        writer.WriteBoolean("high_included", number.HighIncluded);
        writer.WriteEndObject();
    }

    // Six decimals hold every written figure; a quotient is cut there. Trailing zeros are not written.
    private static decimal Plain(Ratio value) => decimal.Parse(value.ToText(6), CultureInfo.InvariantCulture);

    private static void WriteTrace(Utf8JsonWriter writer, TraceNode node)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", node.Kind);
        writer.WriteString("text", node.Text);
        writer.WriteString("truth", node.Truth.Words().Replace(' ', '-'));
        if (node.Value is not null)
        {
            writer.WriteString("value", node.Value);
        }

        if (node.From is not null)
        {
            writer.WriteString("from", node.From);
        }

        if (!node.Parts.IsEmpty)
        {
            writer.WriteStartArray("parts");
            foreach (var part in node.Parts)
            {
                WriteTrace(writer, part);
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }

    private static void WriteMissing(Utf8JsonWriter writer, ImmutableArray<MissingFact> missing)
    {
        writer.WriteStartArray("missing");
        foreach (var fact in missing)
        {
            writer.WriteStartObject();
            writer.WriteString("fact", fact.Fact);
            writer.WriteString("label", fact.Label);
            writer.WriteString("ask", fact.Ask);
            writer.WriteString("owner", fact.Owner);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteQuestions(Utf8JsonWriter writer, string name, ImmutableArray<SilentQuestion> questions)
    {
        writer.WriteStartArray(name);
        foreach (var question in questions)
        {
            writer.WriteStartObject();
            writer.WriteString("id", question.Id);
            writer.WriteString("question", question.Question);
            WriteTexts(writer, "readings", question.Readings);
            if (question.Answer is { } answer)
            {
                writer.WriteString("decided_as", answer.As.Words().Replace(' ', '-'));
                writer.WriteString("decided_by", answer.By);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteOption(Utf8JsonWriter writer, OptionView? option)
    {
        if (option is null)
        {
            writer.WriteNull("option");
            return;
        }

        writer.WriteStartObject("option");
        writer.WriteString("offer", option.Offer);
        WriteTexts(writer, "for", option.For);
        WriteTexts(writer, "against", option.Against);
        WriteTexts(writer, "unknown", option.Unknown);
        writer.WriteString("strength", option.Strength);
        writer.WriteString("certainty", option.Certainty);
        writer.WriteEndObject();
    }
}

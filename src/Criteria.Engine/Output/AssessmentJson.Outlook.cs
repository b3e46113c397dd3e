using System.Text.Json;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Output;

/// <summary>What would change an assessment, and what is worth asking.</summary>
public static partial class AssessmentJson
{
    private static void WriteOutlook(Utf8JsonWriter writer, Outlook? outlook)
    {
        if (outlook is null)
        {
            return;
        }

        writer.WriteStartArray("would_change");
        foreach (var change in outlook.Changes)
        {
            WriteChange(writer, change);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("worth_asking");
        foreach (var question in outlook.Questions)
        {
            WriteQuestion(writer, question);
        }

        writer.WriteEndArray();
        WriteTexts(writer, "cannot_change", outlook.CannotChange);
    }

    private static void WriteOutlook(Utf8JsonWriter writer, Finding finding, Outlook? outlook)
    {
        if (outlook is null)
        {
            return;
        }

        writer.WriteStartArray("would_change");
        foreach (var (change, turn) in outlook.Of(finding.Id, finding.Night))
        {
            WriteChange(writer, change with { Turns = [turn] });
        }

        writer.WriteEndArray();
        writer.WriteStartArray("answers_settle");
        foreach (var question in outlook.Questions)
        {
            foreach (var settles in question.Settles.Where(settles => settles.Criterion.Id == finding.Id && settles.Night == finding.Night))
            {
                writer.WriteStartObject();
                writer.WriteString("fact", question.Fact);
                writer.WriteString("label", question.Label);
                writer.WriteBoolean("always", settles.Always);
                WriteTexts(writer, "answers", settles.Answers);
                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
    }

    private static void WritePairs(Utf8JsonWriter writer, IReadOnlyList<ChangePair>? pairs)
    {
        if (pairs is null)
        {
            return;
        }

        writer.WriteStartArray("would_change_together");
        foreach (var pair in pairs)
        {
            writer.WriteStartObject();
            writer.WriteString("to", pair.Turn.AfterWords);
            writer.WriteStartArray("changes");
            foreach (var change in (Change[])[pair.First, pair.Second])
            {
                writer.WriteStartObject();
                WriteValues(writer, change);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteValues(Utf8JsonWriter writer, Change change)
    {
        writer.WriteString("fact", change.Fact);
        writer.WriteString("label", change.Place);
        WriteText(writer, "night", change.Night);
        writer.WriteString("from", change.From);
        writer.WriteString("to", change.To);
        WriteText(writer, "step", change.Step.Length > 0 ? change.Step : null);
        writer.WriteBoolean("fixed", change.IsFixed);
    }

    private static void WriteChange(Utf8JsonWriter writer, Change change)
    {
        writer.WriteStartObject();
        WriteValues(writer, change);
        writer.WriteStartArray("turns");
        foreach (var turn in change.Turns)
        {
            writer.WriteStartObject();
            writer.WriteString("finding", turn.Criterion.Id);
            WriteText(writer, "night", turn.Night);
            writer.WriteString("from", turn.BeforeWords);
            writer.WriteString("to", turn.AfterWords);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteQuestion(Utf8JsonWriter writer, Question question)
    {
        writer.WriteStartObject();
        writer.WriteString("fact", question.Fact);
        writer.WriteString("label", question.Label);
        WriteText(writer, "ask", question.Ask.Length > 0 ? question.Ask : null);
        WriteText(writer, "owner", question.Owner.Length > 0 ? question.Owner : null);
        writer.WriteStartArray("settles_alone");
        foreach (var settles in question.Settles)
        {
            writer.WriteStartObject();
            writer.WriteString("finding", settles.Criterion.Id);
            WriteText(writer, "night", settles.Night);
            writer.WriteBoolean("always", settles.Always);
            WriteTexts(writer, "answers", settles.Answers);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        WriteTexts(writer, "helps", question.Helps);
        writer.WriteEndObject();
    }
}

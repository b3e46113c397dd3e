using System.Text.Json;
using Criteria.Core.Logic;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Output;

/// <summary>Graded indices over several nights.</summary>
public static partial class AssessmentJson
{
    private static void WriteNightsTogether(Utf8JsonWriter writer, Assessment assessment)
    {
        var all = assessment.NightsTogether;
        if (all.IsEmpty)
        {
            return;
        }

        writer.WriteStartArray("nights_together");
        foreach (var together in all)
        {
            writer.WriteStartObject();
            writer.WriteString("criterion", together.Criterion.Id);
            writer.WriteString("rule", together.Rule.ToString().ToLowerInvariant());
            writer.WriteString("policy_rule", together.Policy.ToString().ToLowerInvariant());
            writer.WriteBoolean("declared_in_case", together.Declared is not null);
            WriteText(writer, "declared_by", together.Declared?.By);
            writer.WriteBoolean("grades_differ", together.Differ);
            writer.WriteStartArray("nights");
            foreach (var night in together.Nights)
            {
                writer.WriteStartObject();
                WriteText(writer, "night", night.Night);
                writer.WriteString("standing", night.Standing.Code());
                WriteText(writer, "grade", together.Graded.Contains(night) ? night.Value!.Band : null);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            if (together.Value is { } value)
            {
                writer.WriteNumber("low", Math.Round((double)value.Low.Rounded, Decimals));
                writer.WriteNumber("high", Math.Round((double)value.High.Rounded, Decimals));
                WriteText(writer, "grade", together.Grade.Length > 0 ? together.Grade : null);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}

using Criteria.Core.Facts;
using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Output;

/// <summary>Writes assessments as JSON, in the form of <c>docs/schemas/assessment.schema.json</c>.</summary>
/// <remarks>Stable order, invariant culture, <c>\n</c> line ends: the same input and rules give the same bytes.</remarks>
public static partial class AssessmentJson
{
    /// <summary>Options for a writer that gives these bytes.</summary>
    /// <param name="indented">Whether to put each value on a line of its own.</param>
    public static JsonWriterOptions Options(bool indented) => new()
    {
        Indented = indented,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes one assessment as an object.</summary>
    /// <param name="writer">Receives it.</param>
    /// <param name="assessment">The assessment.</param>
    /// <param name="outlook">What would change it and what is worth asking, where that is wanted.</param>
    public static void Write(Utf8JsonWriter writer, Assessment assessment, Outlook? outlook = null)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(assessment);
        writer.WriteStartObject();
        writer.WriteString("case", assessment.Case);
        writer.WriteString("as_of", assessment.AsOf.ToIso());
        WriteProgram(writer);
        WriteTexts(writer, "nights", assessment.Nights);
        if (assessment.Payer is null)
        {
            writer.WriteNull("coverage");
        }
        else
        {
            writer.WriteStartObject("coverage");
            writer.WriteString("payer", assessment.Payer);
            WriteText(writer, "item", assessment.Item);
            WriteText(writer, "service_date", assessment.ServiceDate is { } date ? date.ToIso() : null);
            writer.WriteEndObject();
        }

        writer.WriteString("rules_digest", assessment.RulesDigest);
        writer.WriteString("vocabulary", assessment.VocabularyDigest);
        writer.WriteStartArray("rulesets");
        foreach (var ruleset in assessment.Rulesets)
        {
            WriteRuleset(writer, ruleset);
        }

        writer.WriteEndArray();
        WriteText(writer, "refusal", assessment.Refusal?.Id);
        writer.WriteStartArray("findings");
        foreach (var finding in assessment.Findings)
        {
            WriteFinding(writer, finding);
        }

        writer.WriteEndArray();
        WriteNightsTogether(writer, assessment);
        WriteOutlook(writer, outlook);
        WriteProblems(writer, assessment.Problems);
        writer.WriteEndObject();
    }

    /// <summary>Writes what takes the place of an assessment when a case could not be read.</summary>
    public static void WriteUnread(Utf8JsonWriter writer, IEnumerable<Diagnostic> problems)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(problems);
        writer.WriteStartObject();
        writer.WriteNull("case");
        writer.WriteNull("as_of");
        WriteProgram(writer);
        writer.WriteStartArray("rulesets");
        writer.WriteEndArray();
        writer.WriteStartArray("findings");
        writer.WriteEndArray();
        WriteProblems(writer, problems);
        writer.WriteEndObject();
    }

    /// <summary>Writes one finding as an object.</summary>
    /// <param name="writer">Receives it.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="outlook">What would change it and what answers would settle it, where that is wanted.</param>
    /// <param name="pairs">Which two changes together would change it, where that is wanted.</param>
    public static void WriteFinding(Utf8JsonWriter writer, Finding finding, Outlook? outlook = null, IReadOnlyList<ChangePair>? pairs = null)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(finding);
        writer.WriteStartObject();
        writer.WriteString("id", finding.Id);
        writer.WriteString("ruleset", finding.Criterion.Ruleset.Id);
        writer.WriteString("function", finding.Criterion.Ruleset.Function == RulesetFunction.Coverage ? "coverage" : "clinical");
        writer.WriteString("kind", finding.Criterion.Body.Kind);
        writer.WriteString("title", finding.Criterion.Title);
        WriteText(writer, "night", finding.Night);
        writer.WriteString("standing", finding.Standing.Code());
        WriteValue(writer, finding);
        WriteCloseness(writer, finding.Closeness);
        WriteNightToNight(writer, finding);
        writer.WritePropertyName("because");
        WriteTrace(writer, finding.Because);
        writer.WritePropertyName("residual");
        if (finding.Residual is null)
        {
            writer.WriteNullValue();
        }
        else
        {
            WriteTrace(writer, finding.Residual);
        }

        WriteMissing(writer, finding.Missing);
        WriteTexts(writer, "whatever", finding.Whatever);
        WriteTexts(writer, "not_searched", finding.NotSearched);
        WriteQuestions(writer, "silent", finding.Silent);
        WriteQuestions(writer, "decided_locally", finding.DecidedLocally);
        WriteOption(writer, finding.Option);
        WriteTexts(writer, "cautions", finding.Cautions);
        WriteText(writer, "read_first", finding.ReadFirst);
        WriteText(writer, "owner", finding.Criterion.Owner);
        WriteText(writer, "ask", finding.Criterion.Ask);
        WriteText(writer, "why", finding.Criterion.Why);
        WriteCites(writer, finding.Criterion.Cites);
        WriteOutlook(writer, finding, outlook);
        WritePairs(writer, pairs);
        writer.WriteEndObject();
    }

    private static void WriteCites(Utf8JsonWriter writer, ImmutableArray<Citation> cites)
    {
        writer.WriteStartArray("cites");
        foreach (var citation in cites)
        {
            writer.WriteStartObject();
            writer.WriteString("source", citation.Source.Id);
            writer.WriteString("section", citation.Section);
            writer.WriteString("verified", citation.Verified.Words());
            if (citation.Source.ReviewBy is { } reviewBy)
            {
                writer.WriteString("review_by", reviewBy.ToIso());
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteProgram(Utf8JsonWriter writer)
    {
        writer.WriteStartObject("program");
        writer.WriteString("name", "criteria");
        writer.WriteString("version", ProgramVersion.Text);
        writer.WriteEndObject();
    }

    private static void WriteRuleset(Utf8JsonWriter writer, Ruleset ruleset)
    {
        writer.WriteStartObject();
        writer.WriteString("id", ruleset.Id);
        writer.WriteString("version", ruleset.Version);
        writer.WriteString("digest", ruleset.Digest);
        writer.WriteStartArray("differences");
        foreach (var difference in ruleset.Differences)
        {
            writer.WriteStartObject();
            writer.WriteString("overlay", difference.Overlay);
            writer.WriteString("what", difference.What);
            writer.WriteString("reason", difference.Reason);
            writer.WriteString("approved_by", difference.ApprovedBy);
            writer.WriteString("approved_on", difference.ApprovedOn.ToIso());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteProblems(Utf8JsonWriter writer, IEnumerable<Diagnostic> problems)
    {
        writer.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            writer.WriteStartObject();
            writer.WriteString("code", problem.Code);
            writer.WriteString("severity", problem.Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "hint" });
            writer.WriteString("message", problem.Message);
            writer.WriteString("file", problem.Span.File);
            writer.WriteNumber("line", problem.Span.Line);
            writer.WriteNumber("column", problem.Span.Column);
            WriteText(writer, "help", problem.Help);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteTexts(Utf8JsonWriter writer, string name, ImmutableArray<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (var text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    private static void WriteText(Utf8JsonWriter writer, string name, string? text)
    {
        if (text is null)
        {
            writer.WriteNull(name);
        }
        else
        {
            writer.WriteString(name, text);
        }
    }
}

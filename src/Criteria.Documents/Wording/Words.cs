using System.Globalization;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Humanizer;

namespace Criteria.Documents.Wording;

/// <summary>The wording that reports share.</summary>
internal static class Words
{
    private const int MostReasons = 4;
    private const int LongestStart = 40;

    /// <summary>A sentence about a source that was to be looked at again before the date of an assessment; else nothing.</summary>
    public static string Overdue(Source source, DateOnly on) =>
        source.IsReviewOverdue(on) ? $" It was to be looked at again by {Date(source.ReviewBy!.Value)}." : "";

    /// <summary>3 June 2026.</summary>
    public static string Date(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"night of 3 June 2026" for an ISO date, any other label as it is.</summary>
    public static string Night(string label) =>
        DateOnly.TryParseExact(label, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? $"night of {Date(date)}" : label;

    /// <summary>That a criterion's sources, or some of them, were not looked up; else nothing.</summary>
    public static string FromMemory(Criterion criterion, bool alsoInPart) =>
        criterion.Cites.All(citation => citation.Verified == Verification.Memory) ? "source from memory"
        : alsoInPart && criterion.Cites.Any(citation => citation.Verified == Verification.Memory) ? "source partly from memory"
        : "";

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A small letter at the start, unless the word is an abbreviation.</summary>
    public static string Small(string text) =>
        text.Length < 2 || char.IsUpper(text[1]) ? text : char.ToLowerInvariant(text[0]) + text[1..];

    /// <summary>A sentence: a capital at its start and one stop at its end.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : Capital(text) + (text[^1] is '.' or '?' or '!' ? "" : ".");

    /// <summary>The first words of a text, for a message.</summary>
    public static string Start(string text) => text.Length <= LongestStart ? text : $"{text[..LongestStart]}...";

    /// <summary>One, two and three.</summary>
    public static string List(IEnumerable<string> words) => words.Humanize(word => word, "and");

    /// <summary>The standing, or the grade or class that was found. A flag is found, not met: it is no good news.</summary>
    public static string Lead(Finding finding) => finding switch
    {
        { Option: not null, Standing: Standing.Met } => "Option",
        { Standing: Standing.Met, Value: { Band.Length: > 0 } value } => Capital(value.Band),
        { Standing: Standing.Met, Criterion.Shown: Shown.WhenMet } => "Found",
        _ => Capital(finding.Standing.Words()),
    };

    /// <summary>The title, with what is already known of its value.</summary>
    public static string Title(Finding finding) => (finding.Criterion.Body, finding.Value) switch
    {
        (ScoreBody, { } value) when finding.Standing == Standing.Undetermined => $"{finding.Criterion.Title}: {value.Text}",
        (ScoreBody, { } value) => $"{finding.Criterion.Title}: {value.NumberText} points",
        (GradeBody, { NumberText.Length: > 0 } value) when finding.Standing == Standing.Undetermined && value.Text.Length > 0 =>
            $"{finding.Criterion.Title}: {value.NumberText}; would be {value.Text}",
        (GradeBody, { NumberText.Length: > 0 } value) => $"{finding.Criterion.Title}: {value.NumberText}",
        (OptionBody option, _) => option.Offer,
        _ => finding.Criterion.Title,
    };

    /// <summary>Why a finding is what it is, in one line; empty when title or missing facts say it all.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="most">How many reasons are named before the others are only counted.</param>
    public static string Why(Finding finding, int most = MostReasons)
    {
        if (finding.Criterion.Body is ScoreBody && finding.Because.Kind == "score")
        {
            return Score(finding.Because);
        }

        var reasons = Reasons.Decisive(finding.Because).Where(step => finding.Missing.IsEmpty || !IsGap(step)).ToArray();
        if (finding.Standing == Standing.NotMet && reasons.Length > 1 && reasons.All(step => step is { Kind: "fact", Value: "no" }))
        {
            return $"none of: {string.Join(", ", reasons.Select(step => Small(step.Text)))}";
        }

        // An attestation whose label is the title says nothing twice.
        if (reasons is [{ Kind: "fact", From: null } only] && only.Text == finding.Criterion.Title)
        {
            return "";
        }

        var shown = reasons.Take(most).Select(Step).Distinct(StringComparer.Ordinal).ToArray();
        var more = reasons.Length - most;
        return string.Join("; ", shown) + (more > 0 ? $"; and {more.ToWords(CultureInfo.InvariantCulture)} more" : "");
    }

    /// <summary>The findings that an open one waits for.</summary>
    public static string WaitsFor(Finding finding) => string.Join("; ", Reasons.Decisive(finding.Because)
        .Where(step => step.Kind == "finding").Select(step => Bare(step.Text)).Distinct(StringComparer.Ordinal));

    /// <summary>One step of a trace in words.</summary>
    public static string Step(TraceNode step) => step.Kind switch
    {
        "documents" => Documents(step),
        "silent" => $"the source does not say: {step.Text}",
        "band" => Band(step),
        "score" => Score(step),
        "whatever" => step.Text,
        _ => Leaf(step),
    };

    // What is only missing is listed as missing; the line of reasons need not say it again.
    private static bool IsGap(TraceNode step) =>
        step.Value is "not in the case" or "unknown" || (step.Kind == "finding" && step.Value!.StartsWith("undetermined", StringComparison.Ordinal));

    // `Hypertension = no: no`, `Sex is male: female` and `Adequate recording: not met: not met` say things twice.
    private static string Leaf(TraceNode step)
    {
        var text = step.Text;
        if (step.Kind == "finding")
        {
            return $"{Bare(text)}: {step.Value}";
        }

        if (step is { Kind: "fact", Truth: Truth.NotMet })
        {
            text = text.Replace(" agrees with ", " does not agree with ", StringComparison.Ordinal);
        }

        if (step.Kind == "fact" && text.EndsWith(" = no", StringComparison.Ordinal))
        {
            text = text[..^5];
        }
        else if (step.Kind == "fact" && text.Contains(" is ", StringComparison.Ordinal) && !text.EndsWith(" is recorded", StringComparison.Ordinal))
        {
            text = text[..text.IndexOf(" is ", StringComparison.Ordinal)];
        }

        var from = step is { From: not null, Kind: "fact" } && !step.From.StartsWith("computed", StringComparison.Ordinal) ? $" ({step.From})" : "";
        return step.Value is null ? text : $"{text}: {step.Value}{from}";
    }

    // The title of the finding that a step rests on, without the standing it asks for.
    private static string Bare(string text)
    {
        foreach (var standing in new[] { Standing.NotMet, Standing.NotApplicable })
        {
            if (text.EndsWith($": {standing.Words()}", StringComparison.Ordinal))
            {
                return text[..^(standing.Words().Length + 2)];
            }
        }

        return text;
    }

    private static string Band(TraceNode step)
    {
        var from = step.From is null ? "" : step.From.StartsWith("computed from ", StringComparison.Ordinal) ? $" ({step.From["computed from ".Length..]})" : $" ({step.From})";
        var bounds = step.Text[(step.Text.IndexOf(": ", StringComparison.Ordinal) + 2)..];
        return step.Truth == Truth.Met ? $"{step.Value} is {bounds}{from}" : $"{step.Value}{from}";
    }

    private static string Score(TraceNode score)
    {
        string Items(Truth truth) => string.Join(", ", score.Parts.Where(item => item.Truth == truth).Select(item => Small(item.Text.Split(':')[0])));
        var (met, open) = (Items(Truth.Met), Items(Truth.Unknown));
        return (met.Length > 0 ? $"points for {met}" : "no points so far") + (open.Length > 0 ? $"; open: {open}" : "");
    }

    private static string Documents(TraceNode step)
    {
        if (step.Parts.FirstOrDefault(part => part.Truth == Truth.Met) is { } fitting)
        {
            return $"shown by {fitting.Text}";
        }

        var near = step.Parts.Select(document => document.Truth == Truth.NotMet
            ? $"{document.Text} does not fit: {string.Join(", ", document.Parts.Where(test => test.Truth == Truth.NotMet).Select(Leaf))}"
            : $"{document.Text} does not yet say: {string.Join(", ", document.Parts.Where(test => test.Truth == Truth.Unknown).Select(test => Small(test.Text.Split(':')[0])))}");
        return string.Join("; ", [.. near, step.Value ?? ""]);
    }
}

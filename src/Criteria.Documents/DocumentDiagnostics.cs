using Criteria.Core.Reading;
using Criteria.Documents.Wording;
using Criteria.Engine.Deadlines;

namespace Criteria.Documents;

/// <summary>The messages about documents of a case.</summary>
internal static class DocumentDiagnostics
{
    public static Diagnostic TextChanged(string document, string digest, string now, string file) => new(
        "CW0001", Severity.Error, $"`{document}` was signed off with another text ({Short(digest)}) than would be written now ({Short(now)}); a final text does not change", SourceSpan.StartOf(file),
        "keep the final text, and put what changed under `addenda`, with `by` and `on`; or take the sign-off out, and the document is a draft again");

    public static Diagnostic NotReleased(string document, string file) => new(
        "CW0002", Severity.Error, $"`{document}` goes to the patient, and no clinician has released it", SourceSpan.StartOf(file),
        "a clinician who has read it puts `released_by` and `released_on` into its entry under `sign_offs`");

    public static Diagnostic NoRecipient(string document, IEnumerable<string> kinds, string file) => new(
        "CW0003", Severity.Error, $"`{document}` is written to somebody, and the case names no recipient for it", SourceSpan.StartOf(file),
        $"put one under `recipients`, of the kind {string.Join(" or ", kinds)}");

    public static Diagnostic WhichRecipient(string document, IEnumerable<string> ids, string file) => new(
        "CW0004", Severity.Error, $"`{document}` could go to several recipients", SourceSpan.StartOf(file), $"choose one with --to: {string.Join(", ", ids)}");

    public static Diagnostic UnknownRecipient(string id, string document, string? nearest, string file) => new(
        "CW0005", Severity.Error, $"there is no recipient `{id}` that `{document}` may go to", SourceSpan.StartOf(file), nearest is null ? null : $"did you mean `{nearest}`?");

    public static Diagnostic OverrideLacks(string record, string lacking, string file) => new(
        "CW0006", Severity.Error, $"the override `{record}` lacks {lacking}", SourceSpan.StartOf(file), "an override counts with its finding, what the reader reads instead, a reason, who and when");

    public static Diagnostic OverrideOfNothing(string record, string finding, string? nearest, string file) => new(
        "CW0007", Severity.Error, $"the override `{record}` is about `{finding}`, and the case has no such finding", SourceSpan.StartOf(file), nearest is null ? null : $"did you mean `{nearest}`?");

    public static Diagnostic NoCoverage(string document, string file) => new(
        "CW0008", Severity.Error, $"`{document}` is about coverage, and the case was not checked against a payer's rules", SourceSpan.StartOf(file), "name `payer` and `item` under `coverage`");

    /// <summary>Windows that wait for the same facts.</summary>
    public static Diagnostic WindowsNotPlaced(IReadOnlyList<UnplacedWindow> unplaced, string file)
    {
        var titles = Words.List(unplaced.Select(window => $"`{window.Window.Title}`{(window.Night is { } night ? $" ({Words.Night(night)})" : "")}").Distinct(StringComparer.Ordinal));
        var missing = unplaced[0].Missing;
        var why = unplaced[0].Applies ? "no date can be told" : "it is open whether the case is concerned";
        var asks = missing.Select(fact => fact.Ask).Where(ask => ask.Length > 0).Distinct(StringComparer.Ordinal).ToArray();
        return new(
            "CW0009", Severity.Hint, $"calendar: left out, because {why}: {titles}{(missing.IsEmpty ? "" : $"; missing: {Words.List(missing.Select(fact => Words.Small(fact.Label)))}")}",
            SourceSpan.StartOf(file), asks.Length == 0 ? null : string.Join(" ", asks));
    }

    public static Diagnostic NoDays(string file) => new(
        "CW0010", Severity.Warning, "calendar: no window or deadline of the case is open with a known date, so no calendar file is made", SourceSpan.StartOf(file));

    public static Diagnostic CalendarShared(string file) => new(
        "CW0011", Severity.Error, "`calendar` is made of days, and a de-identified form may hold none", SourceSpan.StartOf(file), "leave `calendar` out, or leave out --deidentified");

    private const int Shown = 12;

    private static string Short(string digest) => digest.Length <= Shown ? digest : $"{digest[..Shown]}...";
}

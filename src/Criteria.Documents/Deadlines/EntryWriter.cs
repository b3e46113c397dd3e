using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Deadlines;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Deadlines;

/// <summary>Words for the days of a case. Of the case they carry its key and its dates, nothing else.</summary>
internal sealed class EntryWriter(Assessment assessment)
{
    public CalendarEntry Write(DueDate due) => new(Uid(due), due.Day, Summary(due), Description(due), Category(due.Criterion.Ruleset));

    // The same for a window of a case whatever its day: a corrected date or another version of the rules moves the entry that a calendar already holds.
    private string Uid(DueDate due) => SignOff.DigestOf(string.Join('\n',
        [assessment.Case, due.Criterion.Id, due.Window.Id, due.Night ?? "", due.IsFirst ? "first" : "last", due.Criterion.Ruleset.Id]));

    private string Summary(DueDate due) => $"{assessment.Case}: {Title(due)}: {Edge(due)}";

    // Of one night only nobody asks which.
    private string Title(DueDate due) => due.Night is { } night && assessment.Nights.Length > 1 ? $"{due.Window.Title} ({Words.Night(night)})" : due.Window.Title;

    private static string Edge(DueDate due) => due.IsFirst ? "first day" : "last day";

    private string Description(DueDate due)
    {
        var ruleset = due.Criterion.Ruleset;
        string?[] lines =
        [
            $"{Category(ruleset)}. {Title(due)}: {Words.Date(due.Day)} is the {Edge(due)}{Other(due)}.",
            due.Day < assessment.AsOf ? $"That day lies before {Words.Date(assessment.AsOf)}, for which this was made{(due.Window.IsValidity ? "" : ", and the case does not show that it was done")}." : null,
            due.Window.Who.Length > 0 ? $"Who acts: {due.Window.Who}." : null,
            due.Window.IsValidity ? null : due.Criterion.Ask,
            due.Criterion.Why,
            $"How it is counted: {due.Place.Rule}{From(due.Place)}. {Included(due.Place.Span)}",
            due.Window.Note,
            $"Criterion: {due.Criterion.Title} [{due.Criterion.Id}], {ruleset.Id} {ruleset.Version}.",
            $"Sources: {string.Join(" ", due.Criterion.Cites.Select(Source))}",
            .. ruleset.Differences.Select(difference => $"Local rule: {difference.What}. {Words.Sentence(difference.Reason)} Approved by {difference.ApprovedBy} on {Words.Date(difference.ApprovedOn)}."),
            ruleset.Function == RulesetFunction.Coverage
                ? "The payer's current text rules; this reminder does not take its place, and says nothing of what is medically right."
                : "A reminder for a licensed reader, who decides.",
        ];
        return string.Join('\n', lines.OfType<string>());
    }

    private static string Other(DueDate due) => (due.IsFirst, due.Place.Span) switch
    {
        (true, { Last: { } last }) => $", and {Words.Date(last)} the last",
        (false, { First: { } first }) => $", and {Words.Date(first)} the first",
        _ => "",
    };

    private static string From(WindowPlace place) => string.Concat(place.From.Select(from => $"; {from.What}: {Words.Date(from.Date)}"));

    // Who counts by hand asks it first.
    private static string Included(DaySpan? span) => span is { First: not null, Last: not null } ? "The first and the last day are both included." : "That day is included.";

    private string Source(Citation citation) =>
        $"{citation.Source.ShortName}{(citation.Section.Length > 0 ? $", {citation.Section}" : "")} ({citation.Verified.Sentence()}).{Words.Overdue(citation.Source, assessment.AsOf)}";

    private static string Category(Ruleset ruleset) => ruleset.Function == RulesetFunction.Coverage ? "Coverage check" : "Clinical draft";
}

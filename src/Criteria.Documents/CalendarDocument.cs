using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Documents.Deadlines;
using Criteria.Documents.Renderers;
using Criteria.Engine.Deadlines;
using Criteria.Engine.Findings;

namespace Criteria.Documents;

/// <summary>A calendar file, and what could not be placed in it.</summary>
/// <param name="File">The bytes; empty when the case has no day to be reminded of.</param>
/// <param name="Problems">The windows that could not be placed, with what is missing.</param>
public sealed record WrittenCalendar(ReadOnlyMemory<byte> File, ImmutableArray<Diagnostic> Problems);

/// <summary>The windows and deadlines of a case as a calendar file.</summary>
/// <remarks>
/// A document without a template: days are no text, so that it has one format of its own and none of the others. It carries the case key
/// and no other identity.
/// </remarks>
public static class CalendarDocument
{
    /// <summary>How it is listed.</summary>
    public static DocumentKind Kind { get; } = new(
        "calendar", "Calendar", $"Windows and deadlines of the case as a calendar file; its only format is {Format}.", "both");

    /// <summary>The word for its format.</summary>
    public const string Format = CalendarRenderer.Format;

    /// <summary>The end of its file's name, with its dot.</summary>
    public const string Extension = CalendarRenderer.Extension;

    /// <summary>Writes the calendar of a case.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="assessment">Its assessment.</param>
    /// <param name="file">The name of the case file, for messages.</param>
    /// <param name="shared">Whether the case is a de-identified form: then no calendar is made.</param>
    public static WrittenCalendar Write(Case subject, Assessment assessment, string file = "case", bool shared = false)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        if (shared)
        {
            return new WrittenCalendar(default, [DocumentDiagnostics.CalendarShared(file)]);
        }

        var due = DueList.Of(subject, assessment);
        var problems = due.Unplaced.GroupBy(window => (window.Applies, string.Join('\n', window.Missing.Select(fact => fact.Fact))))
            .Select(group => DocumentDiagnostics.WindowsNotPlaced([.. group], file)).ToList();
        if (due.Dates.IsEmpty)
        {
            problems.Add(DocumentDiagnostics.NoDays(file));
            return new WrittenCalendar(default, [.. problems]);
        }

        var writer = new EntryWriter(assessment);
        return new WrittenCalendar(CalendarRenderer.Render(due.Dates.Select(writer.Write), assessment.AsOf), [.. problems]);
    }
}

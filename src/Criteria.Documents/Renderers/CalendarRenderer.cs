using Criteria.Documents.Deadlines;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace Criteria.Documents.Renderers;

/// <summary>Sets days as an iCalendar file (RFC 5545): whole days, without a clock time or a time zone.</summary>
internal static class CalendarRenderer
{
    public const string Format = "ics";
    public const string Extension = ".ics";

    /// <summary>The file. The same days give the same bytes.</summary>
    /// <param name="entries">The days; at least one, because a calendar file may not be empty.</param>
    /// <param name="stamp">The date that the file says it was made on: that of the assessment, never today.</param>
    public static byte[] Render(IEnumerable<CalendarEntry> entries, DateOnly stamp)
    {
        var calendar = new Calendar { ProductId = "-//Criteria//Windows and deadlines//EN", Method = "PUBLISH" };
        foreach (var entry in entries)
        {
            calendar.Events.Add(new CalendarEvent
            {
                Uid = entry.Uid,
                DtStamp = new CalDateTime(stamp.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc)),
                Start = new CalDateTime(entry.Day),
                Summary = entry.Summary,
                Description = entry.Description,
                Categories = [entry.Category],
                Class = "PRIVATE",
                Transparency = TransparencyType.Transparent,
            });
        }

        return System.Text.Encoding.UTF8.GetBytes(new CalendarSerializer().SerializeToString(calendar)!);
    }
}

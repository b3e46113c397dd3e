namespace Criteria.Documents.Deadlines;

/// <summary>One day of a calendar, ready to be written.</summary>
/// <param name="Uid">What tells it from all others: the same for a window of a case, whatever its day.</param>
/// <param name="Day">The day.</param>
/// <param name="Summary">One line in plain words.</param>
/// <param name="Description">The rest, with line ends of <c>\n</c>.</param>
/// <param name="Category">The function it serves, in words.</param>
internal sealed record CalendarEntry(string Uid, DateOnly Day, string Summary, string Description, string Category);

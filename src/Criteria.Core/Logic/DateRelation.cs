using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>How a date lies to its anchor.</summary>
internal enum DateOrder
{
    Before = 0,
    OnOrBefore,
    On,
    OnOrAfter,
    After,

    /// <summary>From so long before the anchor up to the anchor, both included.</summary>
    WithinBefore,

    /// <summary>From the anchor up to so long after it, both included.</summary>
    WithinAfter,

    /// <summary>From one numbered day to another, both included.</summary>
    WithinDays,
}

/// <summary>Calendar units of a date window.</summary>
internal enum CalendarUnit
{
    Days = 0,
    Weeks,
    Months,
    Years,
}

/// <summary>A relation of a date to a fact or to a fixed date. Calendar days, no clock times.</summary>
internal sealed class DateRelation
{
    private const int DaysPerWeek = 7;
    private const int LongestMonthDifference = 3;

    public required DateOrder Order { get; init; }

    public FactDefinition? Anchor { get; init; }

    public DateOnly? FixedAnchor { get; init; }

    /// <summary>The dates of other records: one that fits is enough.</summary>
    public RecordAnchor? Record { get; init; }

    public int Count { get; init; }

    public CalendarUnit Unit { get; init; }

    public int FirstDay { get; init; }

    public int LastDay { get; init; }

    /// <summary>The number of the anchor's own day: 0 or 1, as the ruleset declares.</summary>
    public int NumberOfStart { get; init; }

    public required Vocabulary Vocabulary { get; init; }

    public string Text => Order switch
    {
        DateOrder.WithinBefore => $"within {Count} {UnitWord} before {AnchorLabel}",
        DateOrder.WithinAfter => $"within {Count} {UnitWord} after {AnchorLabel}",
        DateOrder.WithinDays => $"within day {FirstDay} to day {LastDay} after {AnchorLabel} (start is day {NumberOfStart})",
        DateOrder.OnOrBefore => $"on or before {AnchorLabel}",
        DateOrder.OnOrAfter => $"on or after {AnchorLabel}",
        DateOrder.On => $"on {AnchorLabel}",
        DateOrder.After => $"after {AnchorLabel}",
        _ => $"before {AnchorLabel}",
    };

    private string UnitWord => Unit.ToString().ToLowerInvariant();

    /// <summary>What the date is set against, in words.</summary>
    public string AnchorLabel => Record?.Text ?? Anchor?.Label ?? FixedAnchor!.Value.ToIso();

    public Truth Evaluate(DateOnly date, View view) =>
        Record is not null ? Record.Evaluate(view, anchor => Truths.Of(Holds(date, anchor)))
        : AnchorDate(view) is { } known ? Truths.Of(Holds(date, known))
        : Truth.Unknown;

    public string AnchorText(View view) => Record?.AnchorText(view) ?? (Anchor is null ? "" : $" against {view.Facts[Anchor].Text}");

    /// <summary>What is open in the anchor, for a date that is known.</summary>
    public void AddMissing(DateOnly date, View view, MissingFacts missing)
    {
        Record?.AddMissing(view, missing, anchor => Truths.Of(Holds(date, anchor)));
        AddMissing(view, missing);
    }

    /// <summary>What is open in an anchor that is a fact.</summary>
    public void AddMissing(View view, MissingFacts missing)
    {
        if (Anchor is not null && AnchorDate(view) is null)
        {
            missing.Add(Anchor, view.Facts);
        }
    }

    public void AddReads(Reads reads)
    {
        Record?.AddReads(reads);
        if (Anchor is not null)
        {
            reads.Add(Anchor, Vocabulary);
        }
    }

    /// <summary>The dates against which one is set.</summary>
    public IEnumerable<DateOnly> Anchors(FactSet facts) =>
        Record is not null ? Record.Dates(facts)
        : FixedAnchor is { } day ? [day]
        : facts[Anchor!].Value is DateValue { Date: var known } ? [known]
        : [];

    /// <summary>The last and first days of the stretches in which dates stand in the relation, and the days beside them.</summary>
    public IEnumerable<DateOnly> TurnsOfDate(DateOnly anchor) => Order switch
    {
        DateOrder.WithinBefore => Beside(anchor).Concat(Beside(Shift(anchor, -Count))),
        DateOrder.WithinAfter => Beside(anchor).Concat(Beside(Shift(anchor, Count))),
        DateOrder.WithinDays => Beside(anchor).Concat(Beside(Days(anchor, FirstDay - NumberOfStart))).Concat(Beside(Days(anchor, LastDay - NumberOfStart))),
        _ => Beside(anchor),
    };

    /// <summary>The same for the anchors that a date stands in the relation to.</summary>
    /// <remarks>Months differ in length, so that days further off may be the ones: the few that could be are all there.</remarks>
    public IEnumerable<DateOnly> TurnsOfAnchor(DateOnly date) => Order switch
    {
        DateOrder.WithinBefore => Beside(date).Concat(Around(Shift(date, Count))),
        DateOrder.WithinAfter => Beside(date).Concat(Around(Shift(date, -Count))),
        DateOrder.WithinDays => Beside(date).Concat(Beside(Days(date, NumberOfStart - FirstDay))).Concat(Beside(Days(date, NumberOfStart - LastDay))),
        _ => Beside(date),
    };

    /// <summary>A day that stands in the relation to a known anchor, or null.</summary>
    public DateOnly? Fitting(FactSet facts)
    {
        foreach (var anchor in Anchors(facts))
        {
            foreach (var day in TurnsOfDate(anchor))
            {
                if (Holds(day, anchor))
                {
                    return day;
                }
            }
        }

        return null;
    }

    /// <summary>All days that stand in the relation to an anchor; null when there are none.</summary>
    public DaySpan? SpanAround(DateOnly anchor)
    {
        DaySpan span = Order switch
        {
            DateOrder.Before => new(null, Days(anchor, -1)),
            DateOrder.OnOrBefore => new(null, anchor),
            DateOrder.On => new(anchor, anchor),
            DateOrder.OnOrAfter => new(anchor, null),
            DateOrder.After => new(Days(anchor, 1), null),
            DateOrder.WithinBefore => new(Shift(anchor, -Count), anchor),
            DateOrder.WithinAfter => new(anchor, Shift(anchor, Count)),
            _ => new(Days(anchor, Math.Max(0, FirstDay - NumberOfStart)), Days(anchor, LastDay - NumberOfStart)),
        };
        return span.Last < span.First ? null : span;
    }

    /// <summary>The latest date that is surely an anchor, or null.</summary>
    public DateOnly? LatestAnchor(View view) => Record is null ? AnchorDate(view) : Record.Latest(view);

    /// <summary>What is missing while there is no anchor.</summary>
    public void AddMissingAnchor(View view, MissingFacts missing)
    {
        Record?.AddMissing(missing);
        AddMissing(view, missing);
    }

    private static IEnumerable<DateOnly> Beside(DateOnly day) => [Days(day, -1), day, Days(day, 1)];

    private static IEnumerable<DateOnly> Around(DateOnly day) => Enumerable.Range(-LongestMonthDifference - 1, 2 * LongestMonthDifference + 3).Select(days => Days(day, days));

    private static DateOnly Days(DateOnly day, int count) =>
        DateOnly.FromDayNumber(Math.Clamp(day.DayNumber + count, DateOnly.MinValue.DayNumber, DateOnly.MaxValue.DayNumber));

    private bool Holds(DateOnly date, DateOnly anchor) => Order switch
    {
        DateOrder.Before => date < anchor,
        DateOrder.OnOrBefore => date <= anchor,
        DateOrder.On => date == anchor,
        DateOrder.OnOrAfter => date >= anchor,
        DateOrder.After => date > anchor,
        DateOrder.WithinBefore => date <= anchor && date >= Shift(anchor, -Count),
        DateOrder.WithinAfter => date >= anchor && date <= Shift(anchor, Count),
        _ => date >= anchor && DayNumber(date, anchor) is var day && day >= FirstDay && day <= LastDay,
    };

    private int DayNumber(DateOnly date, DateOnly anchor) => date.DayNumber - anchor.DayNumber + NumberOfStart;

    // Near the ends of the calendar a window simply ends there: conditions never throw.
    private DateOnly Shift(DateOnly date, int count)
    {
        try
        {
            return Unit switch
            {
                CalendarUnit.Weeks => date.AddDays(count * DaysPerWeek),
                CalendarUnit.Months => date.AddMonths(count),
                CalendarUnit.Years => date.AddYears(count),
                _ => date.AddDays(count),
            };
        }
        catch (ArgumentOutOfRangeException)
        {
            return count < 0 ? DateOnly.MinValue : DateOnly.MaxValue;
        }
    }

    private DateOnly? AnchorDate(View view) => Anchor is null ? FixedAnchor : (view.Facts[Anchor].Value as DateValue)?.Date;
}

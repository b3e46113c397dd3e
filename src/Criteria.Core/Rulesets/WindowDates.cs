using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>Tells the days of a window from what a criterion asks, so that no number stands twice.</summary>
internal abstract class WindowDates
{
    /// <summary>The days in this view.</summary>
    public abstract WindowPlace Place(View view);

    /// <summary>What is missing while they cannot be told.</summary>
    public abstract void AddMissing(View view, MissingFacts missing);
}

/// <summary>Days that stand in the relation of a criterion to a date that is known.</summary>
internal sealed class CountedDates(DateRelation relation) : WindowDates
{
    public override WindowPlace Place(View view)
    {
        var anchor = relation.LatestAnchor(view);
        return new WindowPlace(anchor is { } day ? relation.SpanAround(day) : null, relation.Text, anchor is { } known ? [new CountedFrom(relation.AnchorLabel, known)] : []);
    }

    public override void AddMissing(View view, MissingFacts missing) => relation.AddMissingAnchor(view, missing);
}

/// <summary>Any of several relations: stretches that touch are one, and of others the last counts.</summary>
internal sealed class AnyDates(ImmutableArray<WindowDates> parts) : WindowDates
{
    public override WindowPlace Place(View view)
    {
        var places = parts.Select(part => part.Place(view)).ToArray();
        DaySpan? joined = null;
        foreach (var span in places.Select(place => place.Span).OfType<DaySpan>().OrderBy(span => span.First ?? DateOnly.MinValue))
        {
            joined = joined is { } before && Touch(before, span) ? new DaySpan(before.First, Later(before.Last, span.Last)) : span;
        }

        return new WindowPlace(
            joined, string.Join(", or ", places.Select(place => place.Rule).Distinct(StringComparer.Ordinal)), [.. places.SelectMany(place => place.From).Distinct()]);
    }

    public override void AddMissing(View view, MissingFacts missing)
    {
        foreach (var part in parts)
        {
            part.AddMissing(view, missing);
        }
    }

    private static bool Touch(DaySpan before, DaySpan after) => before.Last is not { } last || after.First is not { } first || first.DayNumber <= last.DayNumber + 1;

    private static DateOnly? Later(DateOnly? one, DateOnly? other) => one is { } left && other is { } right ? (left > right ? left : right) : null;
}

/// <summary>The first nights of a trial, within which a run of nights is looked for.</summary>
internal sealed class FirstNights(RunOfNights run, FactDefinition start) : WindowDates
{
    public override WindowPlace Place(View view)
    {
        var words = $"the best {run.Length} consecutive nights within the first {run.Within} nights, counted from {start.Label}";
        return view.Facts[start].Value is DateValue { Date: var first }
            ? new WindowPlace(new DaySpan(first, first.AddDays(run.Within - 1)), words, [new CountedFrom(start.Label, first)])
            : new WindowPlace(null, words, []);
    }

    public override void AddMissing(View view, MissingFacts missing)
    {
        if (view.Facts[start].Value is not DateValue)
        {
            missing.Add(start, view.Facts);
        }
    }
}

/// <summary>Days on which a criterion is met, all else as it is known: for a date that somebody plans.</summary>
/// <remarks>
/// Exact: the criterion can only turn beside the days that its relations of dates name, so one day on each side of every such day is
/// tried. Of several stretches the last counts.
/// </remarks>
internal sealed class TriedDates(FactDefinition planned, Func<Criterion> criterion) : WindowDates
{
    public override WindowPlace Place(View view)
    {
        var rule = $"{planned.Label} for which it is met, with what is known";
        DateOnly? first = null, last = null;
        var (inside, found, atEnd) = (false, false, false);
        var days = Days(view).Order().Distinct().ToArray();
        for (var at = 0; at < days.Length; at++)
        {
            var met = Met(view, days[at]);
            if (met && !inside)
            {
                (first, last, found) = (at == 0 ? null : days[at], null, true);
            }

            last = met ? days[at] : last;
            (inside, atEnd) = (met, met && at == days.Length - 1);
        }

        return new WindowPlace(found ? new DaySpan(first, atEnd ? null : last) : null, rule, []);
    }

    // While no day fits for certain: what is open on a day that may, or the dates without which there is no day to try.
    public override void AddMissing(View view, MissingFacts missing)
    {
        var days = Days(view).Order().ToArray();
        foreach (var day in days)
        {
            if (With(view, day) is var tried && criterion().Body.Evaluate(tried).Truth == Truth.Unknown)
            {
                criterion().Body.AddMissing(tried, missing);
                return;
            }
        }

        if (days.Length > 0)
        {
            return;
        }

        foreach (var bound in criterion().DateBounds)
        {
            AddMissing(bound.Date, view, missing);
            if (bound.Anchor is { } anchor)
            {
                AddMissing(anchor, view, missing);
            }
        }
    }

    private void AddMissing(FactDefinition date, View view, MissingFacts missing)
    {
        if (date.Slot != planned.Slot && date.Scope != FactScope.Record && view.Facts[date].Value is not DateValue)
        {
            missing.Add(date, view.Facts);
        }
    }

    private IEnumerable<DateOnly> Days(View view) => criterion().DateBounds.SelectMany(bound =>
        ReferenceEquals(bound.Anchor, planned) ? bound.TurnsOfAnchor(view.Facts)
        : ReferenceEquals(bound.Date, planned) ? bound.Turns(view.Facts)
        : []);

    private bool Met(View view, DateOnly day)
    {
        var tried = With(view, day);
        return criterion().Body.Evaluate(tried).Truth == Truth.Met && criterion().SilentTruth(tried) == Truth.NotMet;
    }

    private View With(View view, DateOnly day) => new(view, view.Facts.With([Fact.Known(planned, new DateValue(day), Provenance.Entered)]));
}

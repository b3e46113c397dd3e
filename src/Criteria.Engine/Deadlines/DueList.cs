using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Deadlines;

/// <summary>The windows and deadlines of a case that are not done yet.</summary>
/// <param name="Dates">The days, in their order.</param>
/// <param name="Unplaced">The windows that have no days, in report order.</param>
public sealed record DueList(ImmutableArray<DueDate> Dates, ImmutableArray<UnplacedWindow> Unplaced)
{
    // Where a case says that nobody is to be reminded of anything any more.
    private const string ClosedAt = "calendar.closed_on";

    /// <summary>The windows of a case under the rules of its assessment.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="assessment">Its assessment.</param>
    /// <remarks>
    /// A window is done when its criterion is met, or its condition would be if it applied; a closed or refused case has none. Days that
    /// have passed stay: what was missed is not hidden.
    /// </remarks>
    public static DueList Of(Case subject, Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(assessment);
        var dates = new List<DueDate>();
        var unplaced = new List<UnplacedWindow>();
        if (assessment.Refusal is null && !IsClosed(subject))
        {
            var views = new Views(subject, assessment);
            foreach (var finding in assessment.Findings)
            {
                foreach (var window in finding.Criterion.Windows)
                {
                    Place(finding, window, views.Of(finding.Night), dates, unplaced);
                }
            }
        }

        return new DueList([.. dates.OrderBy(due => due.Day)], [.. unplaced]);
    }

    private static bool IsClosed(Case subject) =>
        subject.Facts.Vocabulary.At(ClosedAt) is { } closed && subject.Facts[closed].IsKnown;

    private static void Place(Finding finding, Window window, View view, List<DueDate> dates, List<UnplacedWindow> unplaced)
    {
        var applies = window.AppliesWhen.Evaluate(view);
        if (applies == Truth.NotMet || window.OverWhen.Evaluate(view) == Truth.Met || (!window.IsValidity && IsDone(finding, view)))
        {
            return;
        }

        var place = window.Place(view);
        if (applies == Truth.Unknown)
        {
            var open = new MissingFacts();
            window.AppliesWhen.Reduce(view).AddMissing(view, open);
            unplaced.Add(new UnplacedWindow(finding.Criterion, window, finding.Night, Applies: false, open.ToArray()));
        }
        else if (place.Span is not { } span)
        {
            // Without anything missing there is no such day.
            if (window.MissingDates(view) is { IsEmpty: false } missing)
            {
                unplaced.Add(new UnplacedWindow(finding.Criterion, window, finding.Night, Applies: true, missing));
            }
        }
        else
        {
            Add(finding, window, place, window.Ends == WindowEnds.Last ? null : span.First, true, dates);
            Add(finding, window, place, window.Ends == WindowEnds.First ? null : span.Last, false, dates);
        }
    }

    private static void Add(Finding finding, Window window, WindowPlace place, DateOnly? day, bool isFirst, List<DueDate> dates)
    {
        if (day is { } known)
        {
            dates.Add(new DueDate(finding.Criterion, window, finding.Night, known, isFirst, place));
        }
    }

    // A criterion may not apply yet, as that of a later claim, and what it asks for may be there already.
    private static bool IsDone(Finding finding, View view) => finding.Standing == Standing.Met
        || (finding.Standing == Standing.NotApplicable && finding.Criterion.Body.Evaluate(view).Truth == Truth.Met && finding.Criterion.SilentTruth(view) == Truth.NotMet);

    // What conditions may read of the case and of each night: made once, when a window asks.
    private sealed class Views(Case subject, Assessment assessment)
    {
        private readonly Dictionary<string, View> _views = new(StringComparer.Ordinal);

        public View Of(string? night)
        {
            if (!_views.TryGetValue(night ?? "", out var view))
            {
                view = new View(FactsOf(night), assessment.Findings.Max(finding => finding.Criterion.Index) + 1);
                foreach (var finding in assessment.Findings.Where(finding => finding.Night is null || finding.Night == night))
                {
                    view[finding.Criterion.Index] = finding.Conclusion;
                }

                _views.Add(night ?? "", view);
            }

            return view;
        }

        private FactSet FactsOf(string? night) => subject.Nights.FirstOrDefault(one => one.Label == night)?.Facts ?? subject.Facts;
    }
}

using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>The days between which something may be done, both included. A side without a day is open.</summary>
/// <param name="First">The first day, or null.</param>
/// <param name="Last">The last day, or null.</param>
public sealed record DaySpan(DateOnly? First, DateOnly? Last);

/// <summary>A date that days are counted from.</summary>
/// <param name="What">What happened on it, in words.</param>
/// <param name="Date">The date.</param>
public sealed record CountedFrom(string What, DateOnly Date);

/// <summary>Where the days of a window come from, and what they are.</summary>
/// <param name="Span">The days; null when they cannot be told, or there are none.</param>
/// <param name="Rule">The relation of dates in words.</param>
/// <param name="From">What the days are counted from; empty when they are found by trying dates.</param>
public sealed record WindowPlace(DaySpan? Span, string Rule, ImmutableArray<CountedFrom> From);

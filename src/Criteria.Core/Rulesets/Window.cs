using System.Collections.Immutable;
using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>Which ends of a window are worth a day in a calendar.</summary>
public enum WindowEnds
{
    /// <summary>The first day and the last.</summary>
    Both = 0,

    /// <summary>The first day only.</summary>
    First,

    /// <summary>The last day only.</summary>
    Last,
}

/// <summary>Days within which something is to be done, or counts; taken from the dates that a criterion compares.</summary>
/// <remarks>It holds no number of its own: when the criterion changes, the window moves with it.</remarks>
public sealed class Window
{
    private readonly WindowDates _dates;

    internal Window(WindowDates dates) => _dates = dates;

    /// <summary>Its name, unique within its ruleset.</summary>
    public required string Id { get; init; }

    /// <summary>A few plain words; "first day" and "last day" make sense after them.</summary>
    public required string Title { get; init; }

    /// <summary>Who acts; empty when neither window nor criterion says.</summary>
    public required string Who { get; init; }

    /// <summary>A sentence to go with it, or null.</summary>
    public string? Note { get; init; }

    /// <summary>Which ends go into a calendar.</summary>
    public WindowEnds Ends { get; init; }

    /// <summary>When it is of use to the case.</summary>
    public required Predicate AppliesWhen { get; init; }

    /// <summary>When it is over whatever the day.</summary>
    public required Predicate OverWhen { get; init; }

    /// <summary>Whether its days are those on which the criterion is met, for a date that is planned; else those on which to do what makes it met.</summary>
    public required bool IsValidity { get; init; }

    /// <summary>The days in a view.</summary>
    public WindowPlace Place(View view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return _dates.Place(view);
    }

    /// <summary>What is missing while its days cannot be told.</summary>
    public ImmutableArray<MissingFact> MissingDates(View view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var missing = new MissingFacts();
        _dates.AddMissing(view, missing);
        return missing.ToArray();
    }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

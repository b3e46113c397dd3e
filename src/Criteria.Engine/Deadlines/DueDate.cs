using System.Collections.Immutable;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Deadlines;

/// <summary>A day on which a window opens or closes.</summary>
/// <param name="Criterion">The criterion whose dates it shows.</param>
/// <param name="Window">The window.</param>
/// <param name="Night">The night it is about, or null.</param>
/// <param name="Day">The day; it belongs to the window.</param>
/// <param name="IsFirst">Whether it is the first day; else the last.</param>
/// <param name="Place">All the days, and how they were counted.</param>
public sealed record DueDate(Criterion Criterion, Window Window, string? Night, DateOnly Day, bool IsFirst, WindowPlace Place);

/// <summary>A window whose days cannot be told, or of which it is open whether it is of use to the case.</summary>
/// <param name="Criterion">The criterion whose dates it would show.</param>
/// <param name="Window">The window.</param>
/// <param name="Night">The night it is about, or null.</param>
/// <param name="Applies">Whether it is known to be of use; else the missing facts say what would tell.</param>
/// <param name="Missing">What is missing.</param>
public sealed record UnplacedWindow(Criterion Criterion, Window Window, string? Night, bool Applies, ImmutableArray<MissingFact> Missing);

using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>The words of printed summaries that are not the name of one fact.</summary>
/// <param name="PassOver">Words beside a name that change nothing: <c>the</c>, <c>of</c>, <c>value</c>.</param>
/// <param name="SetAside">Words that make a figure another one than the fact: <c>normal</c>, <c>previous</c>, <c>supine</c>.</param>
/// <param name="Nights">Words that, before a number, name a night of several.</param>
/// <param name="Units">How units are printed, by the symbol that a case file writes.</param>
public sealed record PrintedWords(
    ImmutableArray<string> PassOver, ImmutableArray<string> SetAside, ImmutableArray<string> Nights, ImmutableArray<PrintedUnit> Units)
{
    /// <summary>No words at all.</summary>
    public static readonly PrintedWords None = new([], [], [], []);
}

/// <summary>How one unit is printed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="As">Other spellings.</param>
public sealed record PrintedUnit(Unit Unit, ImmutableArray<string> As);

using System.Collections.Immutable;

namespace Criteria.Core.Pasted;

/// <summary>Figures with the items before and behind them, as the layout of the text puts them together.</summary>
/// <param name="Line">The line of the figures, from 0.</param>
/// <param name="Label">What stands before them, or heads their column.</param>
/// <param name="Figures">The figures; a fault of one is that of a figure which is no value.</param>
/// <param name="Tail">What stands behind them.</param>
/// <param name="Night">The night, or null.</param>
/// <param name="Doubts">What the layout leaves open.</param>
internal sealed record Group(int Line, IReadOnlyList<Item> Label, IReadOnlyList<Item> Figures, IReadOnlyList<Item> Tail, string? Night, ImmutableArray<string> Doubts);

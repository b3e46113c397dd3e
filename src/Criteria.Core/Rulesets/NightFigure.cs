using System.Collections.Immutable;

namespace Criteria.Core.Rulesets;

/// <summary>A published figure on how much nights differ, set beside grades. It never changes one.</summary>
/// <param name="Grades">The grades that it is set beside.</param>
/// <param name="LowPercent">The share, or the low end of its range, in per cent.</param>
/// <param name="HighPercent">The share, or the high end of its range, in per cent.</param>
/// <param name="Of">What it is a share of, after the word "of".</param>
/// <param name="Cites">The sources.</param>
public sealed record NightFigure(ImmutableArray<string> Grades, decimal LowPercent, decimal HighPercent, string Of, ImmutableArray<Citation> Cites);

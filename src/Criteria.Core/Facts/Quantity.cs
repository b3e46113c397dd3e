namespace Criteria.Core.Facts;

/// <summary>A number with its unit as somebody wrote it.</summary>
/// <param name="Base">The number in the base unit of its dimension, exact.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Step">The worth of the last written decimal in the base unit: 0.1 for <c>14.6 /h</c>.</param>
/// <param name="Written">The text as written.</param>
internal sealed record Quantity(decimal Base, Dimension Dimension, decimal Step, string Written)
{
    /// <summary>The values that round to the written figure: half a last decimal either way, the upper end left out.</summary>
    /// <remarks>Ordinary rounding, halves away from zero. Not below zero, since no fact is.</remarks>
    public Interval Rounding => new(Math.Max(0, Base - (Step / 2)), Base + (Step / 2), HighIncluded: false);

    /// <inheritdoc/>
    public override string ToString() => Written;
}

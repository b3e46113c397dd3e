namespace Criteria.Core.Logic;

/// <summary>The totals of a score that are possible: with everything known, one.</summary>
/// <param name="Low">The points that are certain.</param>
/// <param name="High">With the open ones.</param>
public readonly record struct PointRange(int Low, int High)
{
    /// <summary>Whether one total only is possible.</summary>
    public bool IsExact => Low == High;

    /// <inheritdoc/>
    public override string ToString() => IsExact ? $"{Low}" : $"{Low} to {High}";
}

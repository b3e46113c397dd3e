namespace Criteria.Core.Logic;

/// <summary>What a criterion comes to, without words: all that conditions of other criteria may ask of it.</summary>
/// <param name="Standing">The standing.</param>
/// <param name="Stands">Whether the criterion applies and its source speaks to the case; while that is open, no grade or score may be relied on.</param>
/// <param name="LowestBand">The mildest grade or lowest class still possible; -1 without bands.</param>
/// <param name="HighestBand">The most severe grade or highest class still possible; -1 without bands.</param>
/// <param name="Points">The possible points of a score.</param>
public readonly record struct Verdict(Standing Standing, Truth Stands, int LowestBand, int HighestBand, PointRange? Points)
{
    /// <summary>That of a criterion which was not evaluated yet.</summary>
    public static Verdict None { get; } = new(Standing.Undetermined, Truth.Unknown, -1, -1, null);
}

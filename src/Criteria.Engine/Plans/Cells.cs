using System.Numerics;

namespace Criteria.Engine.Plans;

/// <summary>What may be the case, as a set of cells: one bit for each range, word or answer inside which no condition changes.</summary>
/// <remarks>
/// A condition on one variable is the set of cells that meet it. Against the set of cells that are possible it is ruled out when
/// they share none, met when it holds them all, else unknown. Two cells belong to no value: <see cref="Meeting"/> is in the set of
/// every condition and <see cref="Failing"/> in none, and the opposite of a condition is the complement of its set.
/// </remarks>
internal static class Cells
{
    /// <summary>The cell that meets every condition.</summary>
    public const ulong Meeting = 1UL << 62;

    /// <summary>The cell that fails every condition.</summary>
    public const ulong Failing = 1UL << 63;

    /// <summary>Nothing is known: both special cells are possible, so no condition is settled, not even one that every value meets.</summary>
    public const ulong Unknown = ulong.MaxValue;

    /// <summary>How many cells values may have.</summary>
    public const int Most = 60;

    /// <summary>The cell of a finding that does not apply; no value has it.</summary>
    public const ulong NotApplicable = 1UL << Most;

    /// <summary>One cell.</summary>
    public static ulong One(int cell) => 1UL << cell;

    /// <summary>The cells from one to another, both included; none if the first is above the last.</summary>
    public static ulong Range(int first, int last) => first > last ? 0 : (ulong.MaxValue >> (63 - (last - first))) << first;

    /// <summary>The lowest and the highest possible cell.</summary>
    public static (int Lowest, int Highest) Ends(ulong possible) => (BitOperations.TrailingZeroCount(possible), BitOperations.Log2(possible));
}

using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Changes;

/// <summary>One verdict that a change moves.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Night">The place of the night, or 0.</param>
/// <param name="Before">The verdict on the case as it is.</param>
/// <param name="After">The verdict on the changed case.</param>
internal readonly record struct Move(Criterion Criterion, int Night, Verdict Before, Verdict After)
{
    /// <summary>Whether a reader is told of it.</summary>
    public bool IsShown => Criterion.Shown != Shown.InTheTrace && !Criterion.Impossible;

    /// <summary>Whether one answer becomes another; steps towards other findings are not answers.</summary>
    public bool IsTurn => Turns(Before, After);

    /// <summary>Whether one answer is another than before.</summary>
    public static bool Turns(Verdict before, Verdict after) =>
        before.Standing != Standing.Undetermined && after.Standing != Standing.Undetermined
        && (before.Standing, before.LowestBand, before.HighestBand) != (after.Standing, after.LowestBand, after.HighestBand)
        && (before.Standing != after.Standing || before.Standing == Standing.Met);

    /// <summary>Whether nothing comes to be met that cannot be.</summary>
    public static bool ArePossible(List<Move> moves) => !moves.Any(move => move.Criterion.Impossible && move.After.Standing == Standing.Met);
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>What every completion of a case agrees on although Kleene logic leaves it open.</summary>
/// <param name="Verdict">What they agree on.</param>
/// <param name="Whatever">The unknown facts that do not matter.</param>
/// <param name="IsTooLarge">Whether there were too many completions to try; then the verdict is the open one.</param>
internal readonly record struct Settlement(Verdict Verdict, ImmutableArray<FactDefinition> Whatever, bool IsTooLarge);

/// <summary>
/// Tries the completions of an open finding: each unknown fact that pushes it both ways is put into every cell in turn, on, between
/// and beyond the numbers at which anything turns. Facts that rest on one another count as free of one another, so that more
/// completions are tried than there are: what is settled holds, and some of what could be settled stays open. So it is with other
/// findings that a criterion reads: each counts for what it says itself.
/// </summary>
/// <remarks>Thread-safe.</remarks>
internal sealed class Settler(RulesInForce rules)
{
    private const int MostCompletions = 128;

    private readonly (FactDefinition Fact, Ratio[] Bounds)[]?[] _crossing = new (FactDefinition, Ratio[])[]?[rules.Criteria.Length];

    /// <summary>Whether a criterion reads a fact that pushes it both ways, so that trying may settle it.</summary>
    public bool MaySettle(Criterion criterion) => CrossingOf(criterion).Length > 0;

    /// <summary>Tries to settle an open verdict of a criterion.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="view">What is known, with the verdicts on what the criterion reads.</param>
    /// <param name="open">Its verdict, which is undetermined.</param>
    /// <returns>Null when nothing is gained.</returns>
    public Settlement? Settle(Criterion criterion, View view, Verdict open)
    {
        var crossing = CrossingOf(criterion);
        if (crossing.Length == 0)
        {
            return null;
        }

        var unknown = crossing.Where(one => view.Facts[one.Fact] is { State: not FactState.NotApplicable, Number: null or { IsExact: false } } fact
            && (fact.Number is not null || !fact.IsKnown)).ToArray();
        if (unknown.Length == 0)
        {
            return null;
        }

        var search = new Search(criterion, view, [.. unknown.Select(one => (one.Fact, Cells.Of(one.Fact, view.Facts[one.Fact], one.Bounds)))], MostCompletions);
        return search.Run(open);
    }

    private (FactDefinition Fact, Ratio[] Bounds)[] CrossingOf(Criterion criterion) => _crossing[criterion.Index] ??= Uses.BothWaysOf(criterion, rules.Vocabulary);
}

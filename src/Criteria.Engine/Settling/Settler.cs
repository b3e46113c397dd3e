using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>What every completion of a case agrees on although Kleene logic leaves it open.</summary>
/// <param name="Verdict">What they agree on.</param>
/// <param name="Whatever">The unknown facts that do not matter, none of which could be left out of the trying; or all that would have to be tried.</param>
/// <param name="IsTooLarge">Whether there were too many completions to try; then the verdict is the open one.</param>
internal readonly record struct Settlement(Verdict Verdict, ImmutableArray<FactDefinition> Whatever, bool IsTooLarge);

/// <summary>
/// Tries the completions of an open finding: each unknown fact that pushes it both ways, itself or through other findings, is put
/// into every cell in turn, on, between and beyond the numbers at which anything turns, and the open findings on the way are weighed
/// anew. Facts that rest on one another count as free of one another, so that more completions are tried than there are: what is
/// settled holds, and some of what could be settled stays open.
/// </summary>
/// <remarks>Thread-safe.</remarks>
internal sealed class Settler(RulesInForce rules)
{
    private const int MostCompletions = 1000;

    private readonly Reach[] _reach = Reach.Of(rules);
    private readonly Crossing[]?[] _crossing = new Crossing[]?[rules.Criteria.Length];

    /// <summary>A fact that pushes a criterion both ways.</summary>
    /// <param name="Fact">The fact.</param>
    /// <param name="Bounds">The numbers at which it turns something, lowest first.</param>
    /// <param name="Cells">A value for every cell, as long as nothing is known of it.</param>
    private sealed record Crossing(FactDefinition Fact, Ratio[] Bounds, Fact[] Cells)
    {
        public Fact[] CellsOf(Fact known) => known.Number is null ? Cells : Settling.Cells.Of(Fact, known, Bounds);
    }

    /// <summary>Whether a criterion rests on a fact that pushes it both ways, so that trying may settle it.</summary>
    public bool MaySettle(Criterion criterion) => CrossingOf(criterion).Length > 0;

    /// <summary>All that a criterion rests on.</summary>
    public Reach ReachOf(int criterion) => _reach[criterion];

    /// <summary>Whether facts may still move a verdict.</summary>
    public static bool IsOpen(in Verdict verdict) => verdict.Standing == Standing.Undetermined || verdict.Points is { IsExact: false };

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

        var above = OpenAbove(criterion, view, out var facts);
        var unknown = crossing.Where(one => facts.Contains(one.Fact.Slot) && IsUnknown(view.Facts[one.Fact])).ToArray();
        if (unknown.Length == 0)
        {
            return null;
        }

        ImmutableArray<Criterion> row = [.. above, criterion];
        ImmutableArray<(FactDefinition Fact, Fact[] Cells)> cells = [.. unknown.Select(one => (one.Fact, one.CellsOf(view.Facts[one.Fact])))];
        var settlement = new Search(row, view, cells, MostCompletions).Run(open);
        return settlement is { IsTooLarge: false } settled ? settled with { Whatever = Needed(row, view, cells, open, settled.Verdict) } : settlement;
    }

    // A reader is told of the facts that would matter, and not of those that lie about unknown beside them.
    private static ImmutableArray<FactDefinition> Needed(
        ImmutableArray<Criterion> row, View view, ImmutableArray<(FactDefinition Fact, Fact[] Cells)> unknown, Verdict open, Verdict settled)
    {
        foreach (var one in unknown.OrderBy(one => one.Fact.Computed is null).Where(_ => unknown.Length > 1))
        {
            var fewer = unknown.Remove(one);
            if (new Search(row, view, fewer, MostCompletions).Run(open) is { IsTooLarge: false } still && still.Verdict == settled)
            {
                unknown = fewer;
            }
        }

        return [.. unknown.Select(one => one.Fact)];
    }

    private static bool IsUnknown(Fact fact) =>
        fact is { State: not FactState.NotApplicable, Number: null or { IsExact: false } } && (fact.Number is not null || !fact.IsKnown);

    // What a closed finding rests on cannot move it any more, and an indirect one counts only through those that are read.
    private IEnumerable<Criterion> OpenAbove(Criterion criterion, View view, out HashSet<int> facts)
    {
        facts = [.. criterion.ReadsFacts];
        var above = new HashSet<int>();
        var closed = new HashSet<int>();
        foreach (var index in criterion.ReadsCriteria)
        {
            if (IsOpen(view.VerdictOf(index)))
            {
                above.Add(index);
                above.UnionWith(_reach[index].Criteria);
                facts.UnionWith(_reach[index].Facts);
            }
            else
            {
                closed.Add(index);
            }
        }

        return above.Count == 0 ? [] : _reach[criterion.Index].Criteria.Where(index => above.Contains(index) && !closed.Contains(index)).Select(index => rules.Criteria[index]);
    }

    private Crossing[] CrossingOf(Criterion criterion) => _crossing[criterion.Index] ??=
        [.. Uses.BothWaysOf(criterion, rules, _reach).Select(one => new Crossing(one.Fact, one.Bounds, Cells.Of(one.Fact, Fact.Absent(one.Fact), one.Bounds)))];
}

using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>The steps of a number's grid on both sides of every point at which some comparison turns.</summary>
/// <remarks>
/// Exact, because every measure rises or falls steadily with each of what it is computed from: a comparison turns at one place, found by halving.
/// </remarks>
internal sealed class NumberTurns
{
    private readonly Dependents _dependents;
    private readonly FactDefinition _fact;
    private readonly Grid _grid;
    private readonly FactSet _facts;
    private readonly ImmutableArray<Fact> _companions;
    private readonly Dictionary<long, FactSet> _tried = [];
    private readonly SortedSet<long> _found = [];
    private long _first;

    private NumberTurns(Dependents dependents, FactDefinition fact, Grid grid, FactSet facts, ImmutableArray<Fact> companions) =>
        (_dependents, _fact, _grid, _facts, _companions) = (dependents, fact, grid, facts, companions);

    /// <summary>The steps, lowest first, with the facts that hold then where they were made on the way.</summary>
    /// <param name="dependents">What depends on the fact.</param>
    /// <param name="fact">The fact that is changed.</param>
    /// <param name="grid">Its grid.</param>
    /// <param name="facts">The facts of the case or night.</param>
    /// <param name="companions">All that is changed with it.</param>
    public static IReadOnlyCollection<(long Step, FactSet? Facts)> Of(Dependents dependents, FactDefinition fact, Grid grid, FactSet facts, ImmutableArray<Fact> companions)
    {
        var turns = new NumberTurns(dependents, fact, grid, facts, companions);
        turns.Find();
        return [.. turns._found.Select(step => (step, turns._tried.GetValueOrDefault(step)))];
    }

    private void Find()
    {
        // The fact itself: the bound lies on a step or between two; a rounded figure touches it from one step further off.
        foreach (var bound in _dependents.BoundsOf(_fact))
        {
            var under = _grid.Under(bound);
            for (var step = under - 1; step <= under + 2; step++)
            {
                Add(step);
            }
        }

        var computed = _facts.Vocabulary.ComputedFrom(_fact);
        foreach (var fact in computed)
        {
            foreach (var bound in _dependents.BoundsOf(fact))
            {
                var at = Interval.Exactly(bound);
                Halve(facts => Sides(facts[fact].Number, at));
            }
        }

        foreach (var bound in _dependents.FactBounds.Where(bound => Moves(bound.Fact, computed) || Moves(bound.Other, computed)))
        {
            Halve(facts => Sides(facts[bound.Fact].Number, Times(facts[bound.Other].Number, bound.Factor)));
        }
    }

    private bool Moves(FactDefinition fact, IEnumerable<FactDefinition> computed) => fact == _fact || computed.Contains(fact);

    // Where only a range is known each of its ends turns on its own.
    private void Halve(Func<FactSet, (Interval Left, Interval Right)?> sides)
    {
        if (sides(At(_grid.Last)) is not { } last)
        {
            return;
        }

        // Nothing is divided by a time of nothing: there the rate begins one step further up.
        _first = FirstWhere(step => sides(At(step)) is not null, _grid.First, _grid.Last);
        Beside(_first);
        var first = sides(At(_first))!.Value;
        Halve(step => sides(At(step))!.Value is var (left, right) ? left.Low.CompareTo(right.Low) : 0);
        if (IsExact(first) && IsExact(last))
        {
            return;
        }

        Halve(step => sides(At(step))!.Value is var (left, right) ? left.Low.CompareTo(right.High) : 0);
        Halve(step => sides(At(step))!.Value is var (left, right) ? left.High.CompareTo(right.Low) : 0);
        Halve(step => sides(At(step))!.Value is var (left, right) ? left.High.CompareTo(right.High) : 0);
    }

    private static bool IsExact((Interval Left, Interval Right) sides) => sides.Left.IsExact && sides.Right.IsExact;

    private void Halve(Func<long, int> sign)
    {
        var first = sign(_first);
        var last = sign(_grid.Last);
        if (first == last)
        {
            return;
        }

        var away = FirstWhere(step => sign(step) != first, _first, _grid.Last);
        Beside(away);
        if (sign(away) != last)
        {
            Beside(FirstWhere(step => sign(step) == last, away, _grid.Last));
        }
    }

    private static long FirstWhere(Func<long, bool> holds, long low, long high)
    {
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (holds(middle))
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }

    private void Beside(long step)
    {
        Add(step - 1);
        Add(step);
    }

    private void Add(long step)
    {
        if (step >= _grid.First && step <= _grid.Last)
        {
            _found.Add(step);
        }
    }

    private FactSet At(long step)
    {
        if (!_tried.TryGetValue(step, out var facts))
        {
            facts = _facts.With([_grid.At(step), .. _companions]);
            _tried.Add(step, facts);
        }

        return facts;
    }

    private static Interval? Times(Interval? range, Ratio factor) => range is not { } known ? null
        : new Interval(Ratio.Multiply(known.Low, factor), Ratio.Multiply(known.High, factor), known.HighIncluded);

    private static (Interval Left, Interval Right)? Sides(Interval? left, Interval? right) => left is { } a && right is { } b ? (a, b) : null;
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>Goes through the completions of some facts, and stops at the first two that disagree.</summary>
/// <param name="row">The criterion, and before it those that are weighed anew with each completion, each after what it reads.</param>
/// <param name="view">What is known, with the verdicts on all else that they read.</param>
/// <param name="unknown">The facts, each with a value for every cell.</param>
/// <param name="most">How many completions are tried at most.</param>
internal sealed class Search(ImmutableArray<Criterion> row, View view, ImmutableArray<(FactDefinition Fact, Fact[] Cells)> unknown, int most)
{
    private readonly Criterion _criterion = row[^1];

    // Of its own: what is weighed anew overwrites what it was with the completion before.
    private readonly View _completed = new(view, view.Facts);
    private int _tried;
    private Verdict? _agreed;

    /// <summary>What all agree on, or null where they do not or nothing is gained.</summary>
    public Settlement? Run(Verdict open)
    {
        if (unknown.Any(one => one.Cells.Length == 0))
        {
            return null;
        }

        // Most findings are left open by other facts, or turn with these: the corners tell, and their neighbours.
        if (!Corners().All(facts => Agree(Weigh(facts))))
        {
            return null;
        }

        var outcome = Try(view.Facts, 0);
        if (outcome == Outcome.TooMany)
        {
            return new Settlement(open, [.. unknown.Select(one => one.Fact)], IsTooLarge: true);
        }

        return outcome == Outcome.Agree && _agreed is { } agreed && agreed != open
            ? new Settlement(agreed, [.. unknown.Select(one => one.Fact)], IsTooLarge: false)
            : null;
    }

    private enum Outcome
    {
        Agree = 0,
        Differ,
        TooMany,
    }

    // What is settled before all facts are filled in needs no more of them; a score's points do.
    private Outcome Try(FactSet facts, int place)
    {
        if (++_tried > most)
        {
            return Outcome.TooMany;
        }

        var verdict = Weigh(facts);
        while (place < unknown.Length && !IsAsked(unknown[place].Fact))
        {
            place++;
        }

        if (verdict.Standing != Standing.Undetermined || place == unknown.Length)
        {
            return Agree(verdict) ? Outcome.Agree : Outcome.Differ;
        }

        foreach (var cell in unknown[place].Cells)
        {
            var outcome = Try(facts.Assuming(cell), place + 1);
            if (outcome != Outcome.Agree)
            {
                return outcome;
            }
        }

        return Outcome.Agree;
    }

    // A fact counts as long as something that reads it is open.
    private bool IsAsked(FactDefinition fact)
    {
        foreach (var criterion in row)
        {
            if (Settler.IsOpen(_completed.VerdictOf(criterion.Index)) && criterion.ReadsFacts.BinarySearch(fact.Slot) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    private IEnumerable<FactSet> Corners()
    {
        var (lowest, highest) = (Filled(cells => cells[0]), Filled(cells => cells[^1]));
        yield return lowest;
        yield return highest;
        foreach (var (_, cells) in unknown)
        {
            yield return lowest.Assuming(cells[^1]);
            yield return highest.Assuming(cells[0]);
        }
    }

    private FactSet Filled(Func<Fact[], Fact> choose) => unknown.Aggregate(view.Facts, (facts, one) => facts.Assuming(choose(one.Cells)));

    private Verdict Weigh(FactSet facts)
    {
        var completed = _completed.Over(facts);
        foreach (var criterion in row)
        {
            completed.Put(criterion.Index, criterion.Weigh(completed));
        }

        return completed.VerdictOf(_criterion.Index);
    }

    private bool Agree(Verdict verdict)
    {
        if (_agreed is not { } agreed)
        {
            _agreed = verdict;
            return verdict.Standing != Standing.Undetermined || _criterion.Body is ScoreBody;
        }

        if (_criterion.Body is not ScoreBody score)
        {
            return agreed.Standing == verdict.Standing && verdict.Standing != Standing.Undetermined;
        }

        if (agreed.Stands != verdict.Stands || agreed.Points is not { } left || verdict.Points is not { } right)
        {
            return false;
        }

        var points = new PointRange(Math.Min(left.Low, right.Low), Math.Max(left.High, right.High));
        var outcome = score.OutcomeOf(points);
        _agreed = outcome.Settled(verdict.Stands, outcome.Truth);
        return true;
    }
}

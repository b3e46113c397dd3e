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

    // What is weighed anew overwrites the completion before, and at the end all is put back.
    private readonly View _completed = view.Scratch;
    private int _tried;
    private Verdict? _agreed;

    /// <summary>What all agree on, or null where they do not or nothing is gained.</summary>
    public Settlement? Run(Verdict open)
    {
        if (unknown.Any(one => one.Cells.Length == 0))
        {
            return null;
        }

        Span<Verdict> before = new Verdict[row.Length];
        for (var place = 0; place < row.Length; place++)
        {
            before[place] = view.VerdictOf(row[place].Index);
        }

        var found = Tried(open);
        PutBack();
        for (var place = 0; place < row.Length; place++)
        {
            view.Put(row[place].Index, before[place]);
        }

        return found;
    }

    private Settlement? Tried(Verdict open)
    {
        // Most findings are left open by other facts, or turn with these: the corners tell, and their neighbours.
        if (!CornersAgree())
        {
            return null;
        }

        PutBack();
        var outcome = Try(0);
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
    private Outcome Try(int place)
    {
        if (++_tried > most)
        {
            return Outcome.TooMany;
        }

        var verdict = Weigh();
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
            _completed.Facts.Assume(cell);
            var outcome = Try(place + 1);
            if (outcome != Outcome.Agree)
            {
                return outcome;
            }
        }

        _completed.Facts.Assume(view.Facts[unknown[place].Fact]);
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

    private bool CornersAgree() =>
        CornerAgrees(cells => cells[^1]) && CornerAgrees(cells => cells[0])
        && NeighboursAgree(cells => cells[0], cells => cells[^1]) && NeighboursAgree(cells => cells[^1], cells => cells[0]);

    private bool CornerAgrees(Func<Fact[], Fact> side)
    {
        Fill(one => side(one.Cells));
        return Agree(Weigh());
    }

    // All facts are on one side, and each in turn on the other.
    private bool NeighboursAgree(Func<Fact[], Fact> side, Func<Fact[], Fact> other)
    {
        Fill(one => side(one.Cells));
        foreach (var (_, cells) in unknown)
        {
            _completed.Facts.Assume(other(cells));
            if (!Agree(Weigh()))
            {
                return false;
            }

            _completed.Facts.Assume(side(cells));
        }

        return true;
    }

    private void PutBack() => Fill(one => view.Facts[one.Fact]);

    private void Fill(Func<(FactDefinition Fact, Fact[] Cells), Fact> choose)
    {
        foreach (var one in unknown)
        {
            _completed.Facts.Assume(choose(one));
        }
    }

    private Verdict Weigh()
    {
        foreach (var criterion in row)
        {
            _completed.Put(criterion.Index, criterion.Weigh(_completed));
        }

        return _completed.VerdictOf(_criterion.Index);
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

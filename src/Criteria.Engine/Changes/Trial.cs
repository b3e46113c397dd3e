using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Changes;

/// <summary>Tries changes of one case: what depends on a change is weighed anew, the rest stays.</summary>
internal sealed class Trial
{
    private readonly Dependents _dependents;
    private readonly Settler _settler;

    // Findings that are settled only because every completion of the case agrees, and what rests on them.
    private readonly HashSet<int> _settled;
    private readonly View _ofCase;
    private readonly View[] _nights;
    private readonly int _criteria;

    public Trial(RulesInForce rules, Dependents dependents, Case subject)
    {
        (_dependents, _settler, _criteria) = (dependents, dependents.Plan.Settler!, rules.Criteria.Length);
        var nights = subject.Nights.IsEmpty ? [subject.Facts] : subject.Nights.Select(night => night.Facts).ToArray();
        var sheet = dependents.Plan.Run(subject);
        var open = dependents.WithoutSettling.Run(subject);
        _settled = [.. rules.Criteria.Where(criterion => Enumerable.Range(0, nights.Length).Any(night => open[criterion.Index, night].Standing != sheet[criterion.Index, night].Standing)).Select(criterion => criterion.Index)];
        _ofCase = ViewOf(rules, subject.Facts, criterion => sheet[criterion.Index]);
        _nights = [.. nights.Select((facts, night) => ViewOf(rules, facts, criterion => sheet[criterion.Index, night]))];
    }

    /// <summary>How many nights there are; one, of which nothing is known, where the case has none.</summary>
    public int Nights => _nights.Length;

    /// <summary>The facts of the case, or of a night.</summary>
    public FactSet Facts(int? night) => night is { } place ? _nights[place].Facts : _ofCase.Facts;

    /// <summary>The verdict on the case as it is.</summary>
    public Verdict Before(Criterion criterion, int night) => (criterion.PerNight ? _nights[night] : _ofCase).VerdictOf(criterion.Index);

    /// <summary>What an edit would move.</summary>
    /// <param name="edit">The edit.</param>
    /// <param name="made">The facts of the case or night with it, where they are made already.</param>
    public List<Move> Try(Edit edit, FactSet? made = null) => Try(edit.Dependents, edit.Night is { } night ? [night] : null, [edit], made);

    /// <summary>What two edits would move together.</summary>
    public List<Move> Try(Edit first, Edit second) =>
        Try(_dependents.Of(first, second), first.Night is { } one && second.Night is { } other ? [one, other] : null, [first, second], null);

    /// <summary>What edits would make of one finding; only what it rests on is weighed.</summary>
    /// <param name="finding">The finding's criterion.</param>
    /// <param name="night">The place of its night, or 0.</param>
    /// <param name="path">The criteria that it rests on and the edits can move, and itself, in the order of evaluation.</param>
    /// <param name="edits">The edits, each of the case or of that night.</param>
    public Verdict Weigh(Criterion finding, int night, IReadOnlyList<Dependent> path, params ReadOnlySpan<Edit> edits)
    {
        var before = finding.PerNight ? _nights[night] : _ofCase;
        var facts = before.Facts;
        foreach (var edit in edits)
        {
            facts = edit.Change(facts);
        }

        var after = new View(before, facts);
        var moved = new bool[_criteria];
        Weigh(path, perNight: false, night, before, after, moved, []);
        Weigh(path, perNight: true, night, before, after, moved, []);
        return after.VerdictOf(finding.Index);
    }

    private List<Move> Try(IReadOnlyList<Dependent> dependents, int[]? nights, Edit[] edits, FactSet? made)
    {
        var moves = new List<Move>();
        var moved = new bool[_criteria];
        if (nights is null)
        {
            var ofCase = new View(_ofCase, Changed(_ofCase.Facts, edits.Where(edit => edit.Night is null), made));
            Weigh(dependents, perNight: false, 0, _ofCase, ofCase, moved, moves);
        }

        var ofCaseMoves = moves.Count;
        if (!dependents.Any(dependent => dependent.Criterion.PerNight))
        {
            return moves;
        }

        for (var i = 0; i < _nights.Length; i++)
        {
            if (nights is null || nights.Contains(i))
            {
                var own = edits.Where(edit => edit.Night is null || edit.Night == i).ToArray();
                var view = new View(_nights[i], Changed(_nights[i].Facts, own, own.Any(edit => edit.Night == i) ? made : null));
                for (var move = 0; move < ofCaseMoves; move++)
                {
                    view.Put(moves[move].Criterion.Index, moves[move].After);
                }

                Weigh(dependents, perNight: true, i, _nights[i], view, (bool[])moved.Clone(), moves);
            }
        }

        return moves;
    }

    private static FactSet Changed(FactSet facts, IEnumerable<Edit> edits, FactSet? made) =>
        made ?? edits.Aggregate(facts, (set, edit) => edit.Change(set));

    private void Weigh(IReadOnlyList<Dependent> dependents, bool perNight, int night, View before, View after, bool[] moved, List<Move> moves)
    {
        foreach (var dependent in dependents)
        {
            if (dependent.Criterion.PerNight == perNight && IsTouched(dependent, moved))
            {
                moved[dependent.Criterion.Index] = Weigh(dependent.Criterion, night, before, after, moves);
            }
        }
    }

    // What nothing that it reads has moved stays as it is, unless open findings that it reads have settled it together.
    private bool IsTouched(Dependent dependent, bool[] moved) =>
        dependent.Reads || _settled.Contains(dependent.Criterion.Index) || dependent.Criterion.ReadsAny(moved);

    private bool Weigh(Criterion criterion, int night, View before, View after, List<Move> moves)
    {
        var verdict = criterion.Weigh(after);
        var was = before.VerdictOf(criterion.Index);

        // What the completions of the case settled is tried again; to try those of every other finding for each change would take long.
        if (verdict.Standing == Standing.Undetermined && _settled.Contains(criterion.Index) && _settler.Settle(criterion, after, verdict) is { } settlement)
        {
            verdict = settlement.Verdict;
        }

        if (verdict == was)
        {
            return false;
        }

        after.Put(criterion.Index, verdict);
        moves.Add(new Move(criterion, night, was, verdict));
        return true;
    }

    private static View ViewOf(RulesInForce rules, FactSet facts, Func<Criterion, Verdict> verdict)
    {
        var view = new View(facts, rules.Criteria.Length);
        foreach (var criterion in rules.Criteria)
        {
            view.Put(criterion.Index, verdict(criterion));
        }

        return view;
    }
}

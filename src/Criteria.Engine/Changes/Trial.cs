using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Changes;

/// <summary>One verdict that a change moves.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Night">The place of the night, or 0.</param>
/// <param name="Before">The verdict on the case as it is.</param>
/// <param name="After">The verdict on the changed case.</param>
internal readonly record struct Move(Criterion Criterion, int Night, Verdict Before, Verdict After);

/// <summary>Tries changes of one case: what depends on a change is weighed anew, the rest stays.</summary>
internal sealed class Trial
{
    private readonly Dependents _dependents;
    private readonly View _ofCase;
    private readonly View[] _nights;
    private readonly int _criteria;

    public Trial(RulesInForce rules, Dependents dependents, Case subject)
    {
        (_dependents, _criteria) = (dependents, rules.Criteria.Length);
        var nights = subject.Nights.IsEmpty ? [subject.Facts] : subject.Nights.Select(night => night.Facts).ToArray();
        var sheet = dependents.Plan.Run(subject);
        _ofCase = ViewOf(rules, subject.Facts, criterion => sheet[criterion.Index]);
        _nights = [.. nights.Select((facts, night) => ViewOf(rules, facts, criterion => sheet[criterion.Index, night]))];
    }

    /// <summary>How many nights there are; one, of which nothing is known, where the case has none.</summary>
    public int Nights => _nights.Length;

    /// <summary>The facts of the case, or of a night.</summary>
    public FactSet Facts(int? night) => night is { } place ? _nights[place].Facts : _ofCase.Facts;

    /// <summary>The verdict on the case as it is.</summary>
    public Verdict Before(Criterion criterion, int night) => (criterion.PerNight ? _nights[night] : _ofCase).VerdictOf(criterion.Index);

    /// <summary>What facts of the case, or of one night, would move.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="changed">The one that is changed; the others follow from it.</param>
    /// <param name="night">The night, or null for the case.</param>
    /// <param name="made">The facts of the case or night with them, where they are made already.</param>
    public List<Move> Try(IReadOnlyList<Fact> facts, FactDefinition changed, int? night, FactSet? made = null) =>
        Try(_dependents.Of(changed), (set, isOwn) => isOwn && made is not null ? made : set.With(facts), night);

    /// <summary>What another list of documents or trials would move.</summary>
    public List<Move> Try(RecordList list) => Try(_dependents.Of(list.Definition), (set, _) => set.With(list), null);

    private List<Move> Try(IReadOnlyList<Dependent> dependents, Func<FactSet, bool, FactSet> change, int? night)
    {
        var moves = new List<Move>();
        var moved = new bool[_criteria];
        if (night is null)
        {
            var ofCase = new View(_ofCase, change(_ofCase.Facts, true));
            Weigh(dependents, perNight: false, 0, _ofCase, ofCase, moved, moves);
        }

        var ofCaseMoves = moves.Count;
        if (!dependents.Any(dependent => dependent.Criterion.PerNight))
        {
            return moves;
        }

        for (var i = 0; i < _nights.Length; i++)
        {
            if (night is null || night == i)
            {
                var view = new View(_nights[i], change(_nights[i].Facts, night == i));
                for (var move = 0; move < ofCaseMoves; move++)
                {
                    view.Put(moves[move].Criterion.Index, moves[move].After);
                }

                Weigh(dependents, perNight: true, i, _nights[i], view, (bool[])moved.Clone(), moves);
            }
        }

        return moves;
    }

    private static void Weigh(IReadOnlyList<Dependent> dependents, bool perNight, int night, View before, View after, bool[] moved, List<Move> moves)
    {
        foreach (var dependent in dependents)
        {
            if (dependent.Criterion.PerNight == perNight && IsTouched(dependent, moved))
            {
                moved[dependent.Criterion.Index] = Weigh(dependent.Criterion, night, before, after, moves);
            }
        }
    }

    // What nothing that it reads has moved stays as it is.
    private static bool IsTouched(Dependent dependent, bool[] moved)
    {
        if (dependent.Reads)
        {
            return true;
        }

        foreach (var upstream in dependent.Criterion.ReadsCriteria)
        {
            if (moved[upstream])
            {
                return true;
            }
        }

        return false;
    }

    private static bool Weigh(Criterion criterion, int night, View before, View after, List<Move> moves)
    {
        var verdict = criterion.Weigh(after);
        var was = before.VerdictOf(criterion.Index);
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

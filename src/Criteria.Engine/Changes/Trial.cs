using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Plans;

namespace Criteria.Engine.Changes;

/// <summary>One verdict that a change moves.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Night">The place of the night, or 0.</param>
/// <param name="Before">The verdict on the case as it is.</param>
/// <param name="After">The verdict on the changed case.</param>
internal readonly record struct Move(Criterion Criterion, int Night, Verdict Before, Verdict After);

/// <summary>Tries changes of one case: the plan is run anew over the changed facts, and what differs is told.</summary>
internal sealed class Trial
{
    private readonly Dependents _dependents;
    private readonly Plan _plan;
    private readonly FactSet _ofCase;
    private readonly FactSet[] _nights;
    private readonly FactSet[] _changed;
    private readonly VerdictSheet _before;
    private readonly VerdictSheet _after;

    public Trial(Plan plan, Dependents dependents, Case subject)
    {
        (_plan, _dependents, _ofCase) = (plan, dependents, subject.Facts);
        _nights = subject.Nights.IsEmpty ? [subject.Facts] : [.. subject.Nights.Select(night => night.Facts)];
        _changed = new FactSet[_nights.Length];
        (_before, _after) = (plan.NewSheet(), plan.NewSheet());
        plan.Run(_before, _ofCase, _nights);
    }

    /// <summary>How many nights there are; one, of which nothing is known, where the case has none.</summary>
    public int Nights => _nights.Length;

    /// <summary>The facts of the case, or of a night.</summary>
    public FactSet Facts(int? night) => night is { } place ? _nights[place] : _ofCase;

    /// <summary>What facts of the case, or of one night, would move.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="changed">The one that is changed; the others follow from it.</param>
    /// <param name="night">The night, or null for the case.</param>
    /// <param name="made">The facts of the case or night with them, where they are made already.</param>
    public List<Move> Try(IReadOnlyList<Fact> facts, FactDefinition changed, int? night, FactSet? made = null)
    {
        for (var i = 0; i < _nights.Length; i++)
        {
            _changed[i] = night is null ? _nights[i].With(facts) : night == i ? made ?? _nights[i].With(facts) : _nights[i];
        }

        _plan.Run(_after, night is null ? made ?? _ofCase.With(facts) : _ofCase, _changed);
        return Moves(_dependents.Of(changed));
    }

    /// <summary>What another list of documents or trials would move.</summary>
    public List<Move> Try(RecordList list)
    {
        for (var i = 0; i < _nights.Length; i++)
        {
            _changed[i] = _nights[i].With(list);
        }

        _plan.Run(_after, _ofCase.With(list), _changed);
        return Moves(_dependents.Of(list.Definition));
    }

    private List<Move> Moves(IReadOnlyList<Criterion> dependents)
    {
        var moves = new List<Move>();
        foreach (var criterion in dependents)
        {
            for (var night = 0; night < (criterion.PerNight ? _nights.Length : 1); night++)
            {
                var (before, after) = (_before[criterion.Index, night], _after[criterion.Index, night]);
                if (before != after)
                {
                    moves.Add(new Move(criterion, night, before, after));
                }
            }
        }

        return moves;
    }
}

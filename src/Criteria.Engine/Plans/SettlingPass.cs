using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Plans;

/// <summary>Settles what every completion of a case agrees on, once all criteria are weighed; what rests on it is weighed anew.</summary>
/// <remarks>A case of which all is known leaves nothing open, and costs a look at the criteria that could be settled.</remarks>
internal sealed class SettlingPass
{
    private readonly Settler _settler;
    private readonly Conditions _conditions;
    private readonly Place[] _places;
    private readonly int[] _maySettle;
    private readonly int _criteria;

    /// <param name="settler">Settles one verdict.</param>
    /// <param name="steps">The criteria, each after what it reads.</param>
    /// <param name="isPlain">Whether a step leaves a Kleene number and no verdict.</param>
    /// <param name="conditions">Their conditions.</param>
    /// <param name="criteria">How many criteria there are in all.</param>
    public SettlingPass(Settler settler, Step[] steps, Func<Step, bool> isPlain, Conditions conditions, int criteria)
    {
        (_settler, _conditions, _criteria) = (settler, conditions, criteria);
        _places = [.. steps.Select(step => new Place(step, step.Criterion, isPlain(step), settler.MaySettle(step.Criterion)))];
        _maySettle = [.. _places.Where(place => place.MaySettle).Select(place => place.Criterion.Index)];
    }

    private readonly record struct Place(Step Step, Criterion Criterion, bool IsPlain, bool MaySettle);

    /// <summary>Whether a criterion that could be settled is open.</summary>
    public bool IsWanted(Frame frame)
    {
        foreach (var criterion in _maySettle)
        {
            if (frame.Truths[criterion] is not Frame.NotPlain and var truth ? truth == Kleene.Unknown : frame.Verdicts[criterion].Standing == Standing.Undetermined)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Settles what can be.</summary>
    public void Run(Frame frame)
    {
        foreach (ref readonly var place in _places.AsSpan())
        {
            if (place.IsPlain)
            {
                frame.Verdicts[place.Criterion.Index] = frame.VerdictOf(place.Criterion.Index);
            }
        }

        var moved = new bool[_criteria];
        foreach (ref readonly var place in _places.AsSpan())
        {
            var was = frame.Verdicts[place.Criterion.Index];
            var verdict = place.Criterion.ReadsAny(moved) ? place.Step.Weigh(_conditions, frame) : was;
            if (verdict.Standing == Standing.Undetermined && place.MaySettle && _settler.Settle(place.Criterion, frame.View, verdict) is { } settlement)
            {
                verdict = settlement.Verdict;
            }

            if (verdict != was)
            {
                moved[place.Criterion.Index] = true;
                Put(frame, place, verdict);
            }
        }
    }

    private static void Put(Frame frame, in Place place, in Verdict verdict)
    {
        var index = place.Criterion.Index;
        frame.Verdicts[index] = verdict;
        if (place.IsPlain)
        {
            frame.Truths[index] = verdict.Standing switch
            {
                Standing.Met => Kleene.Met,
                Standing.NotMet => Kleene.NotMet,
                _ => Kleene.Unknown,
            };
        }

        frame.Note(place.Step.Read);
    }
}

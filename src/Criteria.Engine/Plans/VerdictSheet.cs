using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>The verdict of every criterion on one case, and on each of its nights.</summary>
public sealed class VerdictSheet
{
    private readonly List<Frame> _nights = [];

    internal VerdictSheet(Plan plan) => (Plan, OfCase) = (plan, plan.NewCaseFrame());

    /// <summary>How many nights there are; one, of which nothing is known, where the case has none.</summary>
    public int Nights { get; private set; }

    /// <summary>The plan that fills it.</summary>
    internal Plan Plan { get; }

    /// <summary>What was found of the case.</summary>
    internal Frame OfCase { get; }

    /// <summary>The verdict of a criterion.</summary>
    /// <param name="criterion">Its index.</param>
    /// <param name="night">The place of the night, from 0; of no account for a criterion that is about the case.</param>
    public Verdict this[int criterion, int night = 0] => (Plan.Rules.Criteria[criterion].PerNight ? OfNight(night) : OfCase).Verdicts[criterion];

    /// <summary>What was found of a night.</summary>
    internal Frame OfNight(int night)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(night, Nights);
        return _nights[night];
    }

    /// <summary>Makes room for so many nights.</summary>
    internal void Begin(int nights)
    {
        Nights = nights;
        while (_nights.Count < nights)
        {
            _nights.Add(Plan.NewNightFrame());
        }
    }
}

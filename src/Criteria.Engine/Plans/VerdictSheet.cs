using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Plans;

/// <summary>The verdict of every criterion on one case, and on each of its nights.</summary>
public sealed class VerdictSheet
{
    private readonly RulesInForce _rules;
    private readonly View[] _views;

    internal VerdictSheet(RulesInForce rules, View[] views) => (_rules, _views) = (rules, views);

    /// <summary>How many nights there are; one, of which nothing is known, where the case has none.</summary>
    public int Nights => _views.Length - 1;

    /// <summary>The verdict of a criterion.</summary>
    /// <param name="criterion">Its index.</param>
    /// <param name="night">The place of the night, from 0; of no account for a criterion that is about the case.</param>
    public Verdict this[int criterion, int night = 0] => _views[_rules.Criteria[criterion].PerNight ? night + 1 : 0].VerdictOf(criterion);

    // Criteria of nights read those of the case.
    internal void PutOfCase(int criterion, Verdict verdict)
    {
        foreach (var view in _views)
        {
            view.Put(criterion, verdict);
        }
    }
}

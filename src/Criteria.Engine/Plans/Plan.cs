using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Plans;

/// <summary>
/// The criteria of a selection in an order in which each comes after what it reads, to be run over many cases, or over many
/// completions of one. The same compiled conditions as those of an assessment; verdicts only, no traces.
/// </summary>
/// <remarks>Thread-safe; the sheets it fills are not.</remarks>
public sealed class Plan
{
    private readonly Criterion[] _ofCase;
    private readonly Criterion[] _ofNight;

    /// <summary>The plan of a selection of rules.</summary>
    public Plan(RulesInForce rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        Rules = rules;
        var ordered = rules.EvaluationOrder.Select(index => rules.Criteria[index]).ToArray();
        (_ofCase, _ofNight) = ([.. ordered.Where(criterion => !criterion.PerNight)], [.. ordered.Where(criterion => criterion.PerNight)]);
    }

    /// <summary>The rules.</summary>
    public RulesInForce Rules { get; }

    /// <summary>Verdicts on a case.</summary>
    public VerdictSheet Run(Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return Run(subject.Facts, [.. subject.Nights.Select(night => night.Facts)]);
    }

    /// <summary>Verdicts on a case given by its facts.</summary>
    /// <param name="ofCase">The facts of the case.</param>
    /// <param name="nights">For each night the facts of the case and its own. A case without a night is asked about as one whose night is unknown.</param>
    public VerdictSheet Run(FactSet ofCase, params IReadOnlyList<FactSet> nights)
    {
        ArgumentNullException.ThrowIfNull(ofCase);
        ArgumentNullException.ThrowIfNull(nights);
        var views = new View[1 + Math.Max(1, nights.Count)];
        for (var i = 0; i < views.Length; i++)
        {
            views[i] = new View(i == 0 || nights.Count == 0 ? ofCase : nights[i - 1], Rules.Criteria.Length);
        }

        var sheet = new VerdictSheet(Rules, views);
        foreach (var criterion in _ofCase)
        {
            sheet.PutOfCase(criterion.Index, criterion.Weigh(views[0]));
        }

        foreach (var view in views.AsSpan(1))
        {
            foreach (var criterion in _ofNight)
            {
                view.Put(criterion.Index, criterion.Weigh(view));
            }
        }

        return sheet;
    }
}

using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Plans;

/// <summary>Criteria of the case, or of a night, ready to run: facts are put into cells, then each criterion is weighed after what it reads.</summary>
internal sealed class PlanProgram
{
    private readonly FactVariable?[] _facts;
    private readonly FindingVariable[] _given;
    private readonly int[] _givenCriteria;
    private readonly Step[] _steps;
    private readonly Conditions _conditions;
    private readonly int _criteria;

    /// <param name="rules">The rules.</param>
    /// <param name="criteria">The criteria, each after what it reads.</param>
    public PlanProgram(RulesInForce rules, Criterion[] criteria)
    {
        var variables = new VariableTable(rules, criteria);
        var writer = new ConditionWriter(variables);
        _steps = [.. criteria.Select(criterion => Step.Of(criterion, variables, writer))];
        _conditions = writer.ToConditions();
        _facts = [.. variables.OfFacts];
        var readOf = variables.OfFindings.ToLookup(finding => finding.Criterion);
        foreach (var step in _steps)
        {
            step.Read = [.. readOf[step.Criterion.Index]];
        }

        var own = criteria.Select(criterion => criterion.Index).ToHashSet();
        _given = [.. variables.OfFindings.Where(finding => !own.Contains(finding.Criterion))];
        _givenCriteria = [.. criteria.SelectMany(criterion => criterion.ReadsCriteria).Where(index => !own.Contains(index)).Distinct()];
        _criteria = rules.Criteria.Length;
    }

    /// <summary>A frame for it.</summary>
    public Frame NewFrame() => new(_criteria, _facts.Length);

    /// <summary>Fills a frame.</summary>
    /// <param name="frame">A frame of this program.</param>
    /// <param name="facts">What is known.</param>
    /// <param name="given">A frame with the verdicts of criteria that are not in this program.</param>
    public void Run(Frame frame, FactSet facts, Frame? given)
    {
        frame.Facts = facts;
        Take(frame, facts);
        if (given is not null)
        {
            foreach (var criterion in _givenCriteria)
            {
                frame.Verdicts[criterion] = given.Verdicts[criterion];
            }

            Note(_given, frame);
        }

        foreach (var step in _steps)
        {
            frame.Verdicts[step.Criterion.Index] = step.Weigh(_conditions, frame);
            Note(step.Read, frame);
        }
    }

    // Completions of one case, and cases that leave the same fact out, share most of their facts: those need not be looked at again.
    private void Take(Frame frame, FactSet facts)
    {
        for (var place = 0; place < _facts.Length; place++)
        {
            if (_facts[place] is { } variable && facts[variable.Slot] is var fact && !ReferenceEquals(fact, frame.Taken[place]))
            {
                frame.Taken[place] = fact;
                frame.Known[place] = variable.Possible(fact);
            }
        }
    }

    private static void Note(FindingVariable[] findings, Frame frame)
    {
        foreach (ref readonly var finding in findings.AsSpan())
        {
            frame.Known[finding.Variable] = finding.Possible(in frame.Verdicts[finding.Criterion]);
        }
    }
}

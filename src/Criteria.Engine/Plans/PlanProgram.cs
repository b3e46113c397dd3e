using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Plans;

/// <summary>Criteria of the case, or of a night, ready to run: facts are put into cells, then each criterion is weighed after what it reads.</summary>
internal sealed class PlanProgram
{
    private readonly FactReading _reading;
    private readonly int _variables;
    private readonly FindingVariable[] _given;
    private readonly int[] _givenCriteria;
    private readonly Step[] _steps;
    private readonly Conditions _conditions;
    private readonly int _criteria;
    private readonly SettlingPass? _settling;
    private readonly HashSet<int> _readByAsked;
    private readonly Action<Frame>[] _run;

    /// <param name="rules">The rules.</param>
    /// <param name="criteria">The criteria, each after what it reads.</param>
    /// <param name="settler">Settles what every completion agrees on; null where that is not wanted.</param>
    /// <param name="compile">Whether plain criteria are compiled to machine code.</param>
    public PlanProgram(RulesInForce rules, Criterion[] criteria, Settler? settler, bool compile)
    {
        var variables = new VariableTable(rules, criteria);
        var writer = new ConditionWriter(variables);
        _steps = [.. criteria.Select(criterion => Step.Of(criterion, variables, writer))];
        _conditions = writer.ToConditions();
        _variables = variables.OfFacts.Count;
        _reading = new FactReading(variables.OfFacts);
        var readOf = variables.OfFindings.ToLookup(finding => finding.Criterion);
        foreach (var step in _steps)
        {
            step.Read = [.. readOf[step.Criterion.Index]];
        }

        var own = criteria.Select(criterion => criterion.Index).ToHashSet();
        _given = [.. variables.OfFindings.Where(finding => !own.Contains(finding.Criterion))];
        _givenCriteria = [.. criteria.SelectMany(criterion => criterion.ReadsCriteria).Where(index => !own.Contains(index)).Distinct()];
        _criteria = rules.Criteria.Length;
        _readByAsked = [.. _conditions.ReadByAsked().Criteria, .. _steps.Where(step => step is AskedStep).SelectMany(step => step.Criterion.ReadsCriteria)];
        _run = [.. compile ? Compiled() : _steps.Select(Interpreted)];
        _settling = settler is null ? null : new SettlingPass(settler, _steps, IsPlain, _conditions, _criteria);
    }

    /// <summary>A frame for it.</summary>
    public Frame NewFrame() => new(_criteria, _variables);

    /// <summary>Facts in the cells of this program.</summary>
    public PreparedFacts Prepare(FactSet facts)
    {
        var known = new ulong[_variables];
        known[VariableTable.Fixed] = Cells.One(0);
        _reading.Take(facts, known);
        return new PreparedFacts(facts, known);
    }

    /// <summary>Fills a frame.</summary>
    /// <param name="frame">A frame of this program.</param>
    /// <param name="facts">What is known.</param>
    /// <param name="given">A frame with the verdicts of criteria that are not in this program.</param>
    public void Run(Frame frame, FactSet facts, Frame? given)
    {
        frame.Facts = facts;
        _reading.Take(facts, frame.Known);
        Weigh(frame, given);
    }

    /// <summary>Fills a frame.</summary>
    /// <param name="frame">A frame of this program.</param>
    /// <param name="facts">What is known.</param>
    /// <param name="given">A frame with the verdicts of criteria that are not in this program.</param>
    public void Run(Frame frame, PreparedFacts facts, Frame? given)
    {
        frame.Facts = facts.Facts;
        facts.Known.CopyTo(frame.Known, 0);
        Weigh(frame, given);
    }

    private void Weigh(Frame frame, Frame? given)
    {
        if (given is not null)
        {
            foreach (var criterion in _givenCriteria)
            {
                frame.Verdicts[criterion] = given.VerdictOf(criterion);
            }

            frame.Note(_given);
        }

        foreach (var run in _run)
        {
            run(frame);
        }

        if (_settling?.IsWanted(frame) == true)
        {
            _settling.Run(frame);
        }
    }

    // Plain criteria in a row become one method, the others stay between them.
    private IEnumerable<Action<Frame>> Compiled()
    {
        var compiled = new CompiledConditions(_conditions);
        for (var next = 0; next < _steps.Length;)
        {
            var row = _steps.Skip(next).Take(CompiledConditions.MostInOne).TakeWhile(step => IsPlain(step) && compiled.CanCompile(((ConditionStep)step).Condition)).Cast<ConditionStep>().ToArray();
            if (row.Length == 0)
            {
                yield return Interpreted(_steps[next++]);
                continue;
            }

            next += row.Length;
            var run = compiled.Compile(row);
            yield return frame => run(frame.Known, frame.Truths, FindingVariable.OfTruth);
        }
    }

    private Action<Frame> Interpreted(Step step)
    {
        var index = step.Criterion.Index;
        if (IsPlain(step))
        {
            var condition = ((ConditionStep)step).Condition;
            return frame =>
            {
                var truth = _conditions.Weigh(condition, frame);
                frame.Truths[index] = (byte)truth;
                foreach (ref readonly var finding in step.Read.AsSpan())
                {
                    frame.Known[finding.Variable] = FindingVariable.OfTruth[truth];
                }
            };
        }

        return frame =>
        {
            frame.Verdicts[index] = step.Weigh(_conditions, frame);
            frame.Note(step.Read);
        };
    }

    // Conditions that are asked look for whole verdicts. Of a plain criterion others ask the standing and nothing else.
    private bool IsPlain(Step step) => step is ConditionStep { AlwaysStands: true } && !_readByAsked.Contains(step.Criterion.Index)
        && step.Read.All(finding => finding.Aspect == FindingAspect.Standing);
}

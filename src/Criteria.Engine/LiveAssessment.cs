using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Criteria.Engine.Network;
using NRules;

namespace Criteria.Engine;

/// <summary>An assessment that follows its case: changing a fact evaluates again only what depends on it.</summary>
/// <remarks>The rules stay those that it was opened with. Not thread-safe. After an exception it is of no more use.</remarks>
public sealed class LiveAssessment
{
    private readonly RulesInForce _rules;
    private readonly ISession _session;
    private readonly FindingTable _table;
    private readonly Assessment _frame;
    private Case _case;

    internal LiveAssessment(RulesInForce rules, ISessionFactory factory, Case subject, Assessment frame)
    {
        (_rules, _case, _frame) = (rules, subject, frame);
        _table = new FindingTable(rules.Criteria.Length, 1 + Math.Max(1, subject.Nights.Length));
        _session = factory.CreateSession();

        // Chaining fact by fact is dear; findings are propagated once a round, stratum by stratum.
        _session.AutoPropagateLinkedFacts = false;
        _session.InsertAll(Subjects());
        Run();
    }

    /// <summary>The case as it now stands.</summary>
    public Case Case => _case;

    /// <summary>The ids of the criteria that were evaluated by the last change, in the order of evaluation.</summary>
    public ImmutableArray<string> Evaluated => [.. _table.Fired];

    /// <summary>The assessment as it now stands.</summary>
    public Assessment Assessment
    {
        get
        {
            var findings = _table.Findings.ToImmutableArray();
            var refusal = findings.FirstOrDefault(finding => finding is { Criterion.Refuses: true, Standing: Core.Logic.Standing.Met });
            return _frame with
            {
                ServiceDate = _case.ServiceDate,
                NightsDeclared = _case.NightsDeclaration,
                Findings = refusal is null ? findings : [refusal],
                Refusal = refusal,
            };
        }
    }

    /// <summary>Changes facts of the case.</summary>
    /// <param name="facts">The facts; those of a night are refused, and so are another payer and item.</param>
    /// <exception cref="ArgumentException">A fact belongs to a night, or selects other rules: open a new assessment for those.</exception>
    public void Update(params IReadOnlyCollection<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.FirstOrDefault(fact => fact.Definition.Scope != FactScope.Case) is { } wrong)
        {
            throw new ArgumentException($"`{wrong.Definition.Id}` is not a fact of the case", nameof(facts));
        }

        var changed = _case with
        {
            Facts = _case.Facts.With(facts),
            Nights = [.. _case.Nights.Select(night => night with { Facts = night.Facts.With(facts) })],
        };
        if (changed.Payer != _case.Payer || changed.Item != _case.Item)
        {
            throw new ArgumentException("payer and item select the rules, which stay those of the opening", nameof(facts));
        }

        Replace(changed);
    }

    /// <summary>Changes facts of one night.</summary>
    /// <param name="night">The place of the night, from 0.</param>
    /// <param name="facts">The facts; those of the case are refused.</param>
    /// <exception cref="ArgumentException">A fact does not belong to a night.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The case has no such night.</exception>
    public void UpdateNight(int night, params IReadOnlyCollection<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentOutOfRangeException.ThrowIfNegative(night);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(night, _case.Nights.Length);
        if (facts.FirstOrDefault(fact => fact.Definition.Scope != FactScope.Night) is { } wrong)
        {
            throw new ArgumentException($"`{wrong.Definition.Id}` is not a fact of a night", nameof(facts));
        }

        Replace(_case.WithNights(_case.Nights.SetItem(night, _case.Nights[night] with { Facts = _case.Nights[night].Facts.With(facts) })));
    }

    /// <summary>Changes the documents or therapy trials.</summary>
    public void Update(RecordList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        Replace(_case with
        {
            Facts = _case.Facts.With(list),
            Nights = [.. _case.Nights.Select(night => night with { Facts = night.Facts.With(list) })],
        });
    }

    private void Replace(Case changed)
    {
        _case = changed;
        _table.Fired.Clear();
        _session.UpdateAll(Subjects());
        Run();
    }

    // A case without a night is asked about as one whose night is unknown: the findings then say what is missing.
    private IEnumerable<object> Subjects()
    {
        yield return new Subject(Subject.CaseNumber, null, _case.Facts, _rules.Criteria.Length, _table);
        if (_case.Nights.IsEmpty)
        {
            yield return new Subject(0, null, _case.Facts, _rules.Criteria.Length, _table);
        }

        for (var i = 0; i < _case.Nights.Length; i++)
        {
            yield return new Subject(i, _case.Nights[i].Label, _case.Nights[i].Facts, _rules.Criteria.Length, _table);
        }
    }

    private void Run()
    {
        var mostRounds = _rules.Strata.Length == 0 ? 1 : _rules.Strata.Max() + 2;
        var mostFirings = _rules.Criteria.Length * (_case.Nights.Length + 2);
        for (var round = 0; round <= mostRounds; round++)
        {
            if (_session.Fire(mostFirings + 1) is var fired && fired == 0)
            {
                return;
            }
            else if (fired > mostFirings)
            {
                break;
            }

            _session.PropagateLinked();
        }

        throw new AssessmentFaultException("the rules did not come to rest");
    }
}

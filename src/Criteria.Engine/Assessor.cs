using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Criteria.Engine.Network;
using NRules;

namespace Criteria.Engine;

/// <summary>Assesses cases under a library of rulesets.</summary>
/// <remarks>Thread-safe. Rules are compiled once for each selection of rulesets.</remarks>
public sealed class Assessor
{
    private readonly RulesetLibrary _library;
    private readonly CasesExpected _expected;
    private readonly Lock _lock = new();
    private readonly Dictionary<RulesInForce, ISessionFactory> _networks = new(ReferenceEqualityComparer.Instance);

    /// <summary>An assessor under a library.</summary>
    /// <param name="library">The library.</param>
    /// <param name="expected">How many cases it will see; findings do not depend on it.</param>
    public Assessor(RulesetLibrary library, CasesExpected expected = CasesExpected.Many)
    {
        ArgumentNullException.ThrowIfNull(library);
        (_library, _expected) = (library, expected);
    }

    /// <summary>Assesses a case under the rules of a date.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="asOf">The date whose rules count.</param>
    /// <param name="problems">Problems of the case file, to be passed on.</param>
    /// <exception cref="AssessmentFaultException">The engine did not come to rest: a fault of the program.</exception>
    public Assessment Assess(Case subject, DateOnly asOf, params IReadOnlyCollection<Diagnostic> problems) => Open(subject, asOf, problems).Assessment;

    /// <summary>What would change an assessment, and what is worth asking.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="assessment">Its assessment.</param>
    public Outlook OutlookOf(Case subject, Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(assessment);
        var rules = _library.InForce(assessment.AsOf, subject.Payer, subject.Item);
        return OutlookBuilder.Build(rules, Dependents.Of(rules), subject, assessment);
    }

    /// <summary>The smallest pairs of changes that turn a finding though neither does so alone, the smallest first.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="assessment">Its assessment.</param>
    /// <param name="finding">One of its findings; an undetermined one has no pairs.</param>
    /// <param name="stop">Ends the search.</param>
    /// <remarks>Two parts of one figure, of one comparison or of one relation of dates are not paired.</remarks>
    /// <exception cref="OperationCanceledException">The search was ended.</exception>
    public ImmutableArray<ChangePair> PairsOf(Case subject, Assessment assessment, Finding finding, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(assessment);
        ArgumentNullException.ThrowIfNull(finding);
        return assessment.Refusal is not null ? [] : PairBuilder.Build(_library.InForce(assessment.AsOf, subject.Payer, subject.Item), subject, finding, stop);
    }

    /// <summary>Opens an assessment that follows its case.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="asOf">The date whose rules count.</param>
    /// <param name="problems">Problems of the case file, to be passed on.</param>
    public LiveAssessment Open(Case subject, DateOnly asOf, params IReadOnlyCollection<Diagnostic> problems)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(problems);
        var rules = _library.InForce(asOf, subject.Payer, subject.Item);
        var frame = new Assessment
        {
            Case = subject.Key,
            AsOf = asOf,
            Nights = [.. subject.Nights.Select(night => night.Label)],
            Payer = subject.Payer,
            Item = subject.Item,
            ServiceDate = subject.ServiceDate,
            NightsDeclared = subject.NightsDeclaration,
            Rulesets = rules.Rulesets,
            VocabularyDigest = _library.VocabularyDigest,
            Findings = [],
            Problems = [.. problems, .. Own(subject, asOf, rules)],
        };
        return new LiveAssessment(rules, Network(rules), subject, frame);
    }

    private ISessionFactory Network(RulesInForce rules)
    {
        lock (_lock)
        {
            if (!_networks.TryGetValue(rules, out var network))
            {
                network = RuleNetwork.Compile(rules, _expected);
                _networks.Add(rules, network);
            }

            return network;
        }
    }

    private ImmutableArray<Diagnostic> Own(Case subject, DateOnly asOf, RulesInForce rules)
    {
        var own = ImmutableArray.CreateBuilder<Diagnostic>();
        if (subject is { Payer: { } payer, Item: { } item })
        {
            if (!rules.Rulesets.Any(ruleset => ruleset.Function == RulesetFunction.Coverage))
            {
                var known = _library.Rulesets.Where(ruleset => ruleset.Function == RulesetFunction.Coverage).Select(ruleset => $"{ruleset.Payer}, {ruleset.Item}").Distinct();
                own.Add(AssessmentDiagnostics.NoCoverageRules(payer, item, asOf, known, subject.Key));
            }
        }
        else if (subject.Payer is not null || subject.Item is not null)
        {
            own.Add(AssessmentDiagnostics.PayerWithoutItem(
                subject.Payer is null ? "item" : "payer", subject.Payer is null ? "payer" : "item", subject.Key));
        }

        foreach (var ruleset in rules.LeftOut)
        {
            own.Add(AssessmentDiagnostics.LeftOut(ruleset.Id, asOf, subject.Key));
        }

        foreach (var ruleset in rules.Rulesets)
        {
            if (ruleset.ReviewBy is { } reviewBy && asOf > reviewBy)
            {
                own.Add(AssessmentDiagnostics.ReviewPassed(ruleset.Id, reviewBy, subject.Key));
            }
        }

        return own.ToImmutable();
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Plans;

namespace Criteria.Engine.Changes;

/// <summary>A criterion that a change can move.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Reads">Whether it reads what is changed itself, and not only other criteria that do.</param>
internal readonly record struct Dependent(Criterion Criterion, bool Reads);

/// <summary>Which criteria a fact or a list of records can move, and at which values. Made once for a selection of rules.</summary>
internal sealed class Dependents
{
    private static readonly ConditionalWeakTable<RulesInForce, Dependents> Made = [];

    private readonly Dependent[][] _ofFact;
    private readonly Dictionary<RecordDefinition, Dependent[]> _ofRecords;
    private readonly ILookup<FactDefinition, Ratio> _bounds;
    private readonly int[] _rank;

    private Dependents(RulesInForce rules)
    {
        (Plan, WithoutSettling) = (new Plan(rules), Plan.WithoutSettling(rules));
        var order = rules.EvaluationOrder.Select(index => rules.Criteria[index]).ToArray();
        _rank = new int[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            _rank[order[i].Index] = i;
        }

        var readers = order.SelectMany(criterion => criterion.ReadsFacts.Select(slot => (slot, criterion))).ToLookup(pair => pair.slot, pair => pair.criterion);
        _ofFact = [.. rules.Vocabulary.Facts.Select(fact => WithReaders(order, readers[fact.Slot]))];
        _ofRecords = rules.Vocabulary.Records.ToDictionary(list => list, list => WithReaders(order, order.Where(criterion => criterion.ReadsRecords.Contains(list))));
        _bounds = rules.Criteria.SelectMany(Bounds).Distinct().ToLookup(bound => bound.Fact, bound => bound.At);
        FactBounds = [.. rules.Criteria.SelectMany(criterion => criterion.FactBounds).Distinct()];
        Dates = [.. rules.Criteria.SelectMany(criterion => criterion.DateBounds)];
        Sought = [.. rules.Criteria.SelectMany(criterion => criterion.Sought).DistinctBy(sought => sought.Text)];
        Impossible = [.. rules.Criteria.Where(criterion => criterion.Impossible).Select(criterion => criterion.Index)];
    }

    /// <summary>Those of a selection of rules; made once, because rules do not change.</summary>
    public static Dependents Of(RulesInForce rules) => Made.GetValue(rules, static made => new Dependents(made));

    /// <summary>The plan that weighs the case as it is.</summary>
    public Plan Plan { get; }

    /// <summary>The plan that leaves open what Kleene logic leaves open.</summary>
    public Plan WithoutSettling { get; }

    /// <summary>The comparisons of a fact with another.</summary>
    public ImmutableArray<FactBound> FactBounds { get; }

    /// <summary>The relations of dates.</summary>
    public ImmutableArray<DateBound> Dates { get; }

    /// <summary>The documents and trials that are looked for.</summary>
    public ImmutableArray<Sought> Sought { get; }

    /// <summary>The criteria that must not come to be met.</summary>
    public ImmutableArray<int> Impossible { get; }

    /// <summary>The criteria that a fact can move, in the order of evaluation.</summary>
    public IReadOnlyList<Dependent> Of(FactDefinition fact) => _ofFact[fact.Slot];

    /// <summary>The criteria that a list of records can move, in the order of evaluation.</summary>
    public IReadOnlyList<Dependent> Of(RecordDefinition list) => _ofRecords[list];

    /// <summary>The criteria that two edits can move, in the order of evaluation.</summary>
    public IReadOnlyList<Dependent> Of(Edit first, Edit second) =>
        [
            .. first.Dependents.Concat(second.Dependents).GroupBy(dependent => dependent.Criterion)
                .Select(both => new Dependent(both.Key, both.Any(dependent => dependent.Reads))).OrderBy(dependent => _rank[dependent.Criterion.Index]),
        ];

    /// <summary>The criteria that a finding rests on, through others too, and its own.</summary>
    public HashSet<int> PathOf(Criterion finding) => [.. Plan.Settler!.ReachOf(finding.Index).Criteria, finding.Index];

    /// <summary>The numbers at which some criterion turns with a fact.</summary>
    public IEnumerable<Ratio> BoundsOf(FactDefinition fact) => _bounds[fact];

    // Rules that round to whole numbers first turn half-way between two of them.
    private static IEnumerable<(FactDefinition Fact, Ratio At)> Bounds(Criterion criterion) => criterion.Bounds.SelectMany(bound =>
        criterion.Ruleset.Rounding == Rounding.ToWholeNumbers
            ? [(bound.Fact, bound.At), (bound.Fact, bound.At.Rounded - (1m / 2)), (bound.Fact, bound.At.Rounded + (1m / 2))]
            : new[] { (bound.Fact, bound.At) });

    private Dependent[] WithReaders(Criterion[] order, IEnumerable<Criterion> readers)
    {
        var reads = new bool[Plan.Rules.Criteria.Length];
        foreach (var criterion in readers)
        {
            reads[criterion.Index] = true;
        }

        var moved = (bool[])reads.Clone();

        foreach (var criterion in order)
        {
            moved[criterion.Index] |= criterion.ReadsCriteria.Any(upstream => moved[upstream]);
        }

        return [.. order.Where(criterion => moved[criterion.Index]).Select(criterion => new Dependent(criterion, reads[criterion.Index]))];
    }
}

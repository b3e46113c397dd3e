using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>All that a criterion rests on, through the criteria it reads too.</summary>
/// <param name="Criteria">The criteria, without its own, each after what it reads.</param>
/// <param name="Facts">The facts, by slot; its own among them.</param>
/// <param name="Records">The lists of records.</param>
internal sealed record Reach(ImmutableArray<int> Criteria, ImmutableArray<int> Facts, ImmutableArray<RecordDefinition> Records)
{
    /// <summary>The reach of every criterion of a selection, by index.</summary>
    public static Reach[] Of(RulesInForce rules)
    {
        var made = new Reach[rules.Criteria.Length];
        var rank = new int[made.Length];
        for (var place = 0; place < rules.EvaluationOrder.Length; place++)
        {
            var criterion = rules.Criteria[rules.EvaluationOrder[place]];
            rank[criterion.Index] = place;
            var above = criterion.ReadsCriteria.Select(index => made[index]).ToArray();
            made[criterion.Index] = new Reach(
                [.. above.SelectMany(reach => reach.Criteria).Concat(criterion.ReadsCriteria).Distinct().OrderBy(index => rank[index])],
                [.. above.SelectMany(reach => reach.Facts).Concat(criterion.ReadsFacts).Distinct().Order()],
                [.. above.SelectMany(reach => reach.Records).Concat(criterion.ReadsRecords).Distinct()]);
        }

        return made;
    }
}

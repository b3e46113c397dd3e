using System.Linq.Expressions;

namespace Criteria.Engine.Plans;

/// <summary>Compiles plain criteria to machine code: their conditions without a branch, one after another.</summary>
/// <remarks>Each group has two sides, as the flat conditions have: whether it is met, and whether it may be. Both are counted, or for all and any simply joined.</remarks>
internal sealed class CompiledConditions(Conditions conditions)
{
    /// <summary>Weighs criteria into the truths of a frame.</summary>
    /// <param name="known">The cells of each variable.</param>
    /// <param name="truths">The truth of each criterion.</param>
    /// <param name="ofTruth"><see cref="FindingVariable.OfTruth"/>.</param>
    public delegate void Run(ulong[] known, byte[] truths, ulong[] ofTruth);

    // The compiler of the runtime gives up optimizing methods that are very long.
    public const int MostInOne = 24;

    private static readonly ParameterExpression Known = Expression.Parameter(typeof(ulong[]), "known");
    private static readonly ParameterExpression Truths = Expression.Parameter(typeof(byte[]), "truths");
    private static readonly ParameterExpression OfTruth = Expression.Parameter(typeof(ulong[]), "ofTruth");

    /// <summary>Whether all of a group is leaves with cells.</summary>
    public bool CanCompile(int group) => conditions[group] is var at && at.Asked.First == at.Asked.End && Groups(at).All(CanCompile);

    /// <summary>One method for a row of plain criteria.</summary>
    public Run Compile(IEnumerable<ConditionStep> steps)
    {
        var body = steps.SelectMany(Statements).ToArray();
        return Expression.Lambda<Run>(Expression.Block(body), Known, Truths, OfTruth).Compile();
    }

    private IEnumerable<Expression> Statements(ConditionStep step)
    {
        var (met, open) = Sides(step.Condition);
        var truth = Expression.Add(AsNumber(met), AsNumber(open));
        var place = Expression.ArrayAccess(Truths, Expression.Constant(step.Criterion.Index));
        yield return Expression.Assign(place, Expression.Convert(truth, typeof(byte)));
        foreach (var finding in step.Read)
        {
            var cells = Expression.ArrayIndex(OfTruth, Expression.Convert(place, typeof(int)));
            yield return Expression.Assign(Expression.ArrayAccess(Known, Expression.Constant(finding.Variable)), cells);
        }
    }

    private (Expression Met, Expression Open) Sides(int group)
    {
        var at = conditions[group];
        (Expression Met, Expression Open)[] parts = [.. conditions.LeavesOf(at).Select(Sides), .. Groups(at).Select(Sides)];
        return (Joined(at.Need, [.. parts.Select(part => part.Met)]), Joined(at.Need, [.. parts.Select(part => part.Open)]));
    }

    private static (Expression Met, Expression Open) Sides(Leaf leaf)
    {
        var possible = Expression.ArrayIndex(Known, Expression.Constant(leaf.Variable));
        return (
            Expression.Equal(Expression.And(possible, Expression.Constant(~leaf.Cells)), Expression.Constant(0UL)),
            Expression.NotEqual(Expression.And(possible, Expression.Constant(leaf.Cells)), Expression.Constant(0UL)));
    }

    private static Expression Joined(int need, Expression[] parts) =>
        need <= 0 ? Expression.Constant(true)
        : need > parts.Length ? Expression.Constant(false)
        : need == parts.Length ? parts.Aggregate(Expression.And)
        : need == 1 ? parts.Aggregate(Expression.Or)
        : Expression.GreaterThanOrEqual(parts.Select(AsNumber).Aggregate(Expression.Add), Expression.Constant(need));

    private static Expression AsNumber(Expression holds) => Expression.Condition(holds, Expression.Constant(1), Expression.Constant(0));

    private static IEnumerable<int> Groups(Group group) => Enumerable.Range(group.Groups.First, group.Groups.End - group.Groups.First);
}

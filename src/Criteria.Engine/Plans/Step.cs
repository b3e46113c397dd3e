using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Plans;

/// <summary>One criterion of a program: its verdict, from conditions laid flat.</summary>
/// <param name="criterion">The criterion.</param>
/// <param name="writer">Where its conditions are laid.</param>
internal abstract class Step(Criterion criterion, ConditionWriter writer)
{
    private const int None = -1;

    private readonly int _applies = criterion.AppliesWhen is Constant { Holds: true } ? None : writer.Add(criterion.AppliesWhen);
    private readonly int _silent = criterion.Silent.IsEmpty ? None : writer.Add(new Any([.. criterion.Silent.Select(question => question.When)]));

    /// <summary>The criterion.</summary>
    public Criterion Criterion { get; } = criterion;

    /// <summary>The findings that others ask for, to be noted once the verdict is known.</summary>
    public FindingVariable[] Read { get; set; } = [];

    /// <summary>The step of a criterion.</summary>
    public static Step Of(Criterion criterion, VariableTable variables, ConditionWriter writer) => criterion switch
    {
        // Local decisions are few, and each criterion that has one differs.
        _ when criterion.Silent.Any(question => question.Answer is not null) => new AskedStep(criterion, writer),
        { Body: ConditionBody { Condition: var condition } } => new ConditionStep(criterion, condition, writer),
        { Body: OptionBody { When: var condition } } => new ConditionStep(criterion, condition, writer),
        { Body: ScoreBody score } => new ScoreStep(criterion, score, writer),
        { Body: GradeBody grade } when variables.Whole(grade.Of, grade.Rounding) is var (variable, bounds) => new GradeStep(criterion, grade, variable, bounds, writer),
        _ => new AskedStep(criterion, writer),
    };

    /// <summary>The verdict.</summary>
    public virtual Verdict Weigh(Conditions conditions, Frame frame)
    {
        var outcome = Outcome(conditions, frame);
        var applies = outcome.DoesNotApply ? Truth.NotMet : Come(_applies, Truth.Met, conditions, frame);
        return outcome.Settled(CriterionLogic.Stands(applies, Come(_silent, Truth.NotMet, conditions, frame)), outcome.Truth);
    }

    private protected abstract BodyOutcome Outcome(Conditions conditions, Frame frame);

    private protected bool IsPlain => _applies == None && _silent == None;

    private static Truth Come(int group, Truth ifNone, Conditions conditions, Frame frame) =>
        group == None ? ifNone : Kleene.ToTruth(conditions.Weigh(group, frame));
}

/// <summary>A condition, or an option with one.</summary>
internal sealed class ConditionStep(Criterion criterion, Predicate condition, ConditionWriter writer) : Step(criterion, writer)
{
    private static readonly Verdict[] Plain =
    [
        new(Standing.NotMet, Truth.Met, -1, -1, null),
        new(Standing.Undetermined, Truth.Met, -1, -1, null),
        new(Standing.Met, Truth.Met, -1, -1, null),
    ];

    private readonly int _condition = writer.Add(condition);

    /// <inheritdoc/>
    public override Verdict Weigh(Conditions conditions, Frame frame) => IsPlain ? Plain[conditions.Weigh(_condition, frame)] : base.Weigh(conditions, frame);

    private protected override BodyOutcome Outcome(Conditions conditions, Frame frame) => new(Kleene.ToTruth(conditions.Weigh(_condition, frame)), -1, -1, null);
}

/// <summary>A score.</summary>
internal sealed class ScoreStep(Criterion criterion, ScoreBody score, ConditionWriter writer) : Step(criterion, writer)
{
    private readonly (int Points, int Condition)[] _items = [.. score.Items.Select(item => (item.Points, writer.Add(item.When)))];

    private protected override BodyOutcome Outcome(Conditions conditions, Frame frame)
    {
        var (low, high) = (0, 0);
        foreach (var (points, condition) in _items)
        {
            var truth = conditions.Weigh(condition, frame);
            low += truth == Kleene.Met ? points : 0;
            high += truth == Kleene.NotMet ? 0 : points;
        }

        return score.OutcomeOf(new PointRange(low, high));
    }
}

/// <summary>A grade: a band for each cell of its number.</summary>
internal sealed class GradeStep(Criterion criterion, GradeBody grade, int variable, ScaledBounds bounds, ConditionWriter writer) : Step(criterion, writer)
{
    private readonly int[] _bandOfCell = [.. Enumerable.Range(0, bounds.CellCount).Select(cell => grade.BandsOf(Interval.Exactly(bounds.ValueIn(cell))).Lowest)];

    private protected override BodyOutcome Outcome(Conditions conditions, Frame frame)
    {
        var possible = frame.Known[variable];
        if (possible == Cells.Unknown)
        {
            return grade.Evaluate(frame.View);
        }

        var (low, high) = Cells.Ends(possible);
        var (lowest, highest) = (_bandOfCell[low], _bandOfCell[high]);
        return new BodyOutcome(lowest == highest ? Truth.Met : Truth.Unknown, lowest, highest, null);
    }
}

/// <summary>A criterion that is weighed as an assessment weighs it.</summary>
internal sealed class AskedStep(Criterion criterion, ConditionWriter writer) : Step(criterion, writer)
{
    /// <inheritdoc/>
    public override Verdict Weigh(Conditions conditions, Frame frame) => Criterion.Weigh(frame.View);

    private protected override BodyOutcome Outcome(Conditions conditions, Frame frame) => Criterion.Body.Evaluate(frame.View);
}

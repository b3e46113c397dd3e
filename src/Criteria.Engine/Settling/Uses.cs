using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>Which facts the conditions of a criterion read, and which way each pushes it.</summary>
/// <remarks>
/// Kleene logic is exact where every fact pushes one way. Only a fact that pushes both ways (a neck limit for men, another for
/// women) can leave open what no value of it changes.
/// </remarks>
internal sealed class Uses
{
    private const int BothWays = 0;

    private readonly Dictionary<(int Slot, string Words), (bool Up, bool Down, int Count)> _found = [];
    private readonly Dictionary<int, SortedSet<Ratio>> _bounds = [];
    private readonly HashSet<int> _uncut = [];

    /// <summary>The facts that push a criterion both ways, each with the numbers at which it turns something.</summary>
    public static (FactDefinition Fact, Ratio[] Bounds)[] BothWaysOf(Criterion criterion, Vocabulary vocabulary)
    {
        var uses = new Uses();
        uses.Add(criterion.AppliesWhen, 1);
        uses.AddBody(criterion, 1);
        uses.AddSilent(criterion, -1);
        return [.. uses.Crossing().Select(slot => (vocabulary.Facts[slot], uses._bounds.TryGetValue(slot, out var bounds) ? bounds.ToArray() : []))];
    }

    private IEnumerable<int> Crossing() => _found.GroupBy(use => use.Key.Slot).Where(uses => !_uncut.Contains(uses.Key)
        && (uses.Count() > 1 || uses.Any(use => use.Value is { Up: true, Down: true, Count: > 1 }))).Select(uses => uses.Key).Order();

    private void Add(Predicate condition, int way)
    {
        switch (condition)
        {
            case Negation { Parts: [var part] }:
                Add(part, -way);
                break;
            case Group group:
                foreach (var part in group.Parts)
                {
                    Add(part, way);
                }

                break;
            case NumberLeaf { Bound: { } bound, Rounding: Rounding.None } number:
                Bound(number.Fact, bound.Low);
                Use(number.Fact, "", way * Direction(number.Comparison));
                break;
            case YesNoLeaf yesNo:
                Use(yesNo.Fact, "", yesNo.Expected ? way : -way);
                break;
            case ChoiceLeaf choice:
                Use(choice.Fact, string.Join('|', choice.Words), choice.Negated ? -way : way);
                break;
            case FindingLeaf:
                // What it rests on is settled, or left open, where it is found.
                break;
            default:
                Leave(condition);
                break;
        }
    }

    private void AddBody(Criterion criterion, int way)
    {
        switch (criterion.Body)
        {
            case ConditionBody { Condition: var condition }:
                Add(condition, way);
                break;
            case OptionBody { When: var condition }:
                Add(condition, way);
                break;
            case ScoreBody score:
                foreach (var item in score.Items)
                {
                    Add(item.When, item.Points < 0 ? -way : way);
                }

                break;
            case GradeBody { Rounding: Rounding.None } grade:
                foreach (var end in grade.Bands.Select(band => band.Lower).OfType<Ratio>())
                {
                    Bound(grade.Of, end);
                }

                Use(grade.Of, "", way);
                break;
            case GradeBody grade:
                _uncut.Add(grade.Of.Slot);
                break;
        }
    }

    // A local answer may turn either way.
    private void AddSilent(Criterion criterion, int way)
    {
        foreach (var question in criterion.Silent)
        {
            Add(question.When, question.Answer is null ? way : BothWays);
        }
    }

    // Not cut into cells: dates, documents, codes, one fact against another, figures that a ruleset rounds.
    private void Leave(Predicate condition)
    {
        var reads = new Reads();
        condition.AddReads(reads);
        _uncut.UnionWith(reads.Facts);
    }

    private void Use(FactDefinition fact, string words, int way)
    {
        var (up, down, count) = _found.GetValueOrDefault((fact.Slot, words));
        _found[(fact.Slot, words)] = (up || way >= BothWays, down || way <= BothWays, count + 1);
    }

    private void Bound(FactDefinition fact, Ratio at)
    {
        if (!_bounds.TryGetValue(fact.Slot, out var bounds))
        {
            _bounds.Add(fact.Slot, bounds = []);
        }

        bounds.Add(at);
    }

    private static int Direction(Operator comparison) => comparison switch
    {
        Operator.AtLeast or Operator.Above => 1,
        Operator.AtMost or Operator.Below => -1,
        _ => BothWays,
    };
}

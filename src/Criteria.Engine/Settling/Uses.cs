using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Settling;

/// <summary>Which facts the conditions of a criterion rest on, through other criteria too, and which way each pushes it.</summary>
/// <remarks>
/// Kleene logic is exact where every fact pushes one way. Only a fact that pushes both ways (a neck limit for men, another for
/// women; two editions of which one is met and the other is not) can leave open what no value of it changes.
/// </remarks>
internal sealed class Uses
{
    private const int Up = 1;
    private const int BothWays = 0;

    // Twice tells that a fact is used more than once; more often tells nothing new.
    private const int MostEntries = 2;

    private readonly RulesInForce _rules;
    private readonly Dictionary<(int Slot, string Words), (bool Up, bool Down, int Count)> _found = [];
    private readonly Dictionary<int, SortedSet<Ratio>> _bounds = [];
    private readonly HashSet<int> _uncut = [];
    private readonly Dictionary<(int Criterion, int Way), int> _entered = [];

    private readonly Reach[] _reach;

    private Uses(RulesInForce rules, Reach[] reach) => (_rules, _reach) = (rules, reach);

    /// <summary>The facts that push a criterion both ways, each with the numbers at which it turns something.</summary>
    public static (FactDefinition Fact, Ratio[] Bounds)[] BothWaysOf(Criterion criterion, RulesInForce rules, Reach[] reach)
    {
        var uses = new Uses(rules, reach);
        uses.Add(criterion.AppliesWhen, Up);
        uses.AddBody(criterion.Body, Up);
        uses.AddSilent(criterion, -Up);
        return [.. uses.Crossing().Select(slot => (rules.Vocabulary.Facts[slot], uses._bounds.TryGetValue(slot, out var bounds) ? bounds.ToArray() : []))];
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
            case FindingLeaf finding:
                AddFinding(finding, way);
                break;
            default:
                Leave(condition);
                break;
        }
    }

    private void AddFinding(FindingLeaf leaf, int way)
    {
        switch (leaf)
        {
            case StandingLeaf { Expected: Standing.Met }:
                EnterForStanding(leaf, way);
                break;
            case StandingLeaf { Expected: Standing.NotMet }:
                EnterForStanding(leaf, -way);
                break;
            case StandingLeaf:
                // While a verdict is open it is so too whether it is "not applicable", though that may be certain: as if used twice.
                EnterForStanding(leaf, BothWays);
                EnterForStanding(leaf, BothWays);
                break;
            case BandLeaf band:
                var isOpenAbove = band.Highest >= BandsOf(leaf) - 1;
                var direction = isOpenAbove == (band.Lowest == 0) ? BothWays : isOpenAbove ? Up : -Up;
                EnterForValue(leaf, way * (band.Negated ? -direction : direction));
                break;
            case PointsLeaf points:
                EnterForValue(leaf, way * Direction(points.Comparison));
                break;
            default:
                var reads = new Reads();
                leaf.AddReads(reads);
                foreach (var index in reads.Criteria)
                {
                    Enter(_rules.Criteria[index], BothWays);
                }

                break;
        }
    }

    private int BandsOf(FindingLeaf leaf) => _rules.Criteria[leaf.Criterion.Index].Body switch
    {
        GradeBody grade => grade.Bands.Length,
        ScoreBody score => score.Classes.Length,
        _ => 0,
    };

    // A grade or class "is met" once it is known. That each completion has one does not mean that there is one yet.
    private void EnterForStanding(FindingLeaf leaf, int way)
    {
        var criterion = _rules.Criteria[leaf.Criterion.Index];
        if (criterion.Body is GradeBody or ScoreBody)
        {
            _uncut.UnionWith(_reach[criterion.Index].Facts);
        }
        else
        {
            Enter(criterion, way);
        }
    }

    private void EnterForValue(FindingLeaf leaf, int way)
    {
        var criterion = _rules.Criteria[leaf.Criterion.Index];
        Enter(criterion, way);

        // From 1 to 3 points may be 1 or 3 only: the range hides that 2 are not possible. As if used twice.
        if (way == BothWays && criterion.Body is ScoreBody score && score.Items.Any(item => item.Points != 1))
        {
            Enter(criterion, way);
        }
    }

    private void Enter(Criterion criterion, int way)
    {
        var times = _entered.GetValueOrDefault((criterion.Index, way));
        if (times == MostEntries)
        {
            return;
        }

        _entered[(criterion.Index, way)] = times + 1;
        AddBody(criterion.Body, way);

        // An open verdict hides that "met or not applicable" is certain: as if used twice.
        for (var twice = 0; twice < MostEntries && criterion.AppliesWhen is not Constant; twice++)
        {
            Add(criterion.AppliesWhen, BothWays);
        }

        AddSilent(criterion, BothWays);
    }

    private void AddBody(Body body, int way)
    {
        switch (body)
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
        Operator.AtLeast or Operator.Above => Up,
        Operator.AtMost or Operator.Below => -Up,
        _ => BothWays,
    };
}

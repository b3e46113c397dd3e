using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Plans;

/// <summary>The variables of a program, made as conditions ask for them: facts and findings in cells.</summary>
internal sealed class VariableTable
{
    /// <summary>The variable of conditions that are settled without any fact.</summary>
    public const int Fixed = 0;

    private readonly RulesInForce _rules;
    private readonly Dictionary<FactDefinition, Ratio[]> _bounds;
    private readonly Dictionary<object, int> _places = [];

    /// <param name="rules">The rules.</param>
    /// <param name="criteria">Those that will be compiled.</param>
    public VariableTable(RulesInForce rules, IEnumerable<Criterion> criteria)
    {
        _rules = rules;
        _bounds = criteria.SelectMany(criterion => criterion.Bounds).GroupBy(bound => bound.Fact)
            .ToDictionary(group => group.Key, group => group.Select(bound => bound.At).Order().Aggregate(new List<Ratio>(), AddOnce).ToArray());
    }

    /// <summary>The variables taken from facts, by their place; null for others.</summary>
    public List<FactVariable?> OfFacts { get; } = [null];

    /// <summary>The variables taken from findings.</summary>
    public List<FindingVariable> OfFindings { get; } = [];

    /// <summary>A condition on one variable, or null when what it reads has no cells.</summary>
    public Leaf? LeafOf(Predicate condition) => condition switch
    {
        Constant constant => Met(Fixed, constant.Holds ? Cells.One(0) : 0),
        YesNoLeaf leaf => Met(OfFact((leaf.Fact, "answer"), () => new YesNoVariable(leaf.Fact.Slot)), Cells.One(YesNoVariable.CellOf(leaf.Expected))),
        RecordedLeaf leaf => Met(OfFact((leaf.Fact, "recorded"), () => new RecordedVariable(leaf.Fact.Slot)), Cells.One(0)),
        ChoiceLeaf leaf => Choice(leaf),
        NumberLeaf { Bound.Low: var bound } leaf => Number(leaf, bound),
        StandingLeaf leaf => Met(OfFinding(leaf, FindingAspect.Standing), Cells.One((int)leaf.Expected)),
        BandLeaf { Highest: < Cells.Most } leaf => Met(OfFinding(leaf, FindingAspect.Band), Bands(leaf)),
        PointsLeaf leaf => Points(leaf),
        _ => null,
    };

    /// <summary>The variable of a number and its bounds, when it has few enough of them for one.</summary>
    public (int Variable, ScaledBounds Bounds)? Whole(FactDefinition fact, Rounding rounding) =>
        _bounds.TryGetValue(fact, out var bounds) && bounds.Length <= ScaledBounds.Most ? OfNumber(fact, rounding, 0) : null;

    /// <summary>The opposite of a condition.</summary>
    public static Leaf Opposite(bool negated, Leaf leaf) => negated ? leaf with { Cells = ~leaf.Cells } : leaf;

    private static Leaf Met(int variable, ulong by) => new(by | Cells.Meeting, variable);

    // "Is not" speaks of a grade too: it is no more met than "is" by a finding that does not apply, or may not stand.
    private static ulong Bands(BandLeaf leaf) =>
        leaf.Negated ? Cells.Range(0, leaf.Lowest - 1) | Cells.Range(leaf.Highest + 1, Cells.Most - 1) : Cells.Range(leaf.Lowest, leaf.Highest);

    private Leaf? Choice(ChoiceLeaf leaf)
    {
        if (leaf.Fact.Choices.Length > Cells.Most)
        {
            return null;
        }

        var words = leaf.Words.Aggregate(0UL, (cells, word) => cells | Cells.One(leaf.Fact.Choices.IndexOf(word)));
        return Opposite(leaf.Negated, Met(OfFact((leaf.Fact, "word"), () => new ChoiceVariable(leaf.Fact)), words));
    }

    // Many bounds make several variables, each with a stretch of them.
    private Leaf Number(NumberLeaf leaf, Ratio bound)
    {
        var place = Array.IndexOf(_bounds[leaf.Fact], bound);
        var (variable, bounds) = OfNumber(leaf.Fact, leaf.Rounding, place / ScaledBounds.Most);
        var (cell, last) = (bounds.CellOf(bound), bounds.CellCount - 1);
        var cells = leaf.Comparison switch
        {
            Operator.AtLeast => Cells.Range(cell, last),
            Operator.Above => Cells.Range(cell + 1, last),
            Operator.AtMost => Cells.Range(0, cell),
            Operator.Below => Cells.Range(0, cell - 1),
            _ => Cells.One(cell),
        };
        return Opposite(leaf.Comparison == Operator.Different, Met(variable, cells));
    }

    private Leaf? Points(PointsLeaf leaf)
    {
        // A total between two whole numbers is none, but a range that spans it counts as open.
        if (_rules.Criteria[leaf.Criterion.Index].Body is not ScoreBody { Most: < Cells.Most } score || score.Items.Any(item => item.Points < 0)
            || leaf.Bound != decimal.Floor(leaf.Bound.Rounded))
        {
            return null;
        }

        var meeting = Enumerable.Range(0, Cells.Most).Where(points => Comparison.Compare(Interval.Exactly(points), leaf.Comparison, Interval.Exactly(leaf.Bound)) == Truth.Met);
        return Met(OfFinding(leaf, FindingAspect.Points), meeting.Aggregate(0UL, (cells, points) => cells | Cells.One(points)));
    }

    private (int Variable, ScaledBounds Bounds) OfNumber(FactDefinition fact, Rounding rounding, int stretch)
    {
        var variable = OfFact(
            (fact, rounding, stretch),
            () => new NumberVariable(fact.Slot, rounding, new ScaledBounds(_bounds[fact].Skip(stretch * ScaledBounds.Most).Take(ScaledBounds.Most))));
        return (variable, ((NumberVariable)OfFacts[variable]!).Bounds);
    }

    private int OfFact(object key, Func<FactVariable> make) => Place(key, make);

    private int OfFinding(FindingLeaf leaf, FindingAspect aspect)
    {
        var key = (leaf.Criterion.Index, aspect);
        var known = _places.ContainsKey(key);
        var variable = Place(key, () => null);
        if (!known)
        {
            OfFindings.Add(new FindingVariable(leaf.Criterion.Index, aspect, variable));
        }

        return variable;
    }

    private int Place(object key, Func<FactVariable?> make)
    {
        if (!_places.TryGetValue(key, out var place))
        {
            place = _places[key] = OfFacts.Count;
            OfFacts.Add(make());
        }

        return place;
    }

    private static List<Ratio> AddOnce(List<Ratio> bounds, Ratio bound)
    {
        if (bounds.Count == 0 || bounds[^1] != bound)
        {
            bounds.Add(bound);
        }

        return bounds;
    }
}

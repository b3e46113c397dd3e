using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>Lays conditions flat.</summary>
internal sealed class ConditionWriter(VariableTable variables)
{
    private readonly List<Leaf> _leaves = [];
    private readonly List<Group> _groups = [];
    private readonly List<AskedLeaf> _asked = [];

    /// <summary>Adds a condition and gives the place of its group.</summary>
    public int Add(Predicate condition)
    {
        var top = new Draft(1);
        Put(condition, negated: false, top);

        // A condition that is one group needs no other around it.
        var only = top is { Leaves.Count: 0, Asked.Count: 0, Groups: [var inner] } ? inner : top;
        var place = _groups.Count;
        _groups.Add(default);
        Lay(only, place);
        return place;
    }

    /// <summary>All conditions added.</summary>
    public Conditions ToConditions() => new([.. _leaves], [.. _groups], [.. _asked]);

    // The opposite of a group is the group of the opposites with the count that is left (De Morgan, for any count), so no group is negated.
    private void Put(Predicate condition, bool negated, Draft into)
    {
        switch (condition)
        {
            case Negation { Parts: [var part] }:
                Put(part, !negated, into);
                break;
            case All { Parts: var parts }:
                Put(parts, parts.Length, negated, into);
                break;
            case Any { Parts: var parts }:
                Put(parts, 1, negated, into);
                break;
            case AtLeast { Parts: var parts, Count: var count }:
                Put(parts, count, negated, into);
                break;
            default:
                if (variables.LeafOf(condition) is { } leaf)
                {
                    into.Leaves.Add(VariableTable.Opposite(negated, leaf));
                }
                else
                {
                    into.Asked.Add(new AskedLeaf(condition, negated));
                }

                break;
        }
    }

    private void Put(IReadOnlyList<Predicate> parts, int count, bool negated, Draft into)
    {
        var group = new Draft(negated ? parts.Count - count + 1 : count);
        foreach (var part in parts)
        {
            Put(part, negated, group);
        }

        into.Groups.Add(group);
    }

    private void Lay(Draft draft, int place)
    {
        var groups = SpanOf(_groups, draft.Groups.Select(_ => default(Group)));
        _groups[place] = new Group(draft.Need, SpanOf(_leaves, draft.Leaves), groups, SpanOf(_asked, draft.Asked));
        for (var i = 0; i < draft.Groups.Count; i++)
        {
            Lay(draft.Groups[i], groups.First + i);
        }
    }

    private static Span SpanOf<T>(List<T> list, IEnumerable<T> more)
    {
        var first = list.Count;
        list.AddRange(more);
        return new Span(first, list.Count);
    }

    private sealed record Draft(int Need)
    {
        public List<Leaf> Leaves { get; } = [];

        public List<Draft> Groups { get; } = [];

        public List<AskedLeaf> Asked { get; } = [];
    }
}

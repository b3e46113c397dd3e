using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>A condition on one variable: the cells that meet it.</summary>
internal readonly record struct Leaf(ulong Cells, int Variable);

/// <summary>A condition that is asked as it stands, because its facts have no cells: dates, documents, codes, figures that agree.</summary>
internal readonly record struct AskedLeaf(Predicate Condition, bool Negated);

/// <summary>At least so many of its parts. All of them, any of them, and the opposites of both are such groups.</summary>
/// <param name="Need">How many.</param>
/// <param name="Leaves">Its leaves.</param>
/// <param name="Groups">The groups inside it.</param>
/// <param name="Asked">Its leaves that are asked.</param>
internal readonly record struct Group(int Need, Span Leaves, Span Groups, Span Asked);

/// <summary>A stretch of an array.</summary>
internal readonly record struct Span(int First, int End);

/// <summary>Conditions laid flat: groups in one array, their leaves in another, the parts of a group side by side.</summary>
internal sealed class Conditions(Leaf[] leaves, Group[] groups, AskedLeaf[] asked)
{
    /// <summary>What a group comes to, as a <see cref="Kleene"/> number.</summary>
    public int Weigh(int group, Frame frame)
    {
        ref readonly var at = ref groups[group];
        var known = frame.Known;
        var (met, open) = (0, 0);
        foreach (ref readonly var leaf in leaves.AsSpan(at.Leaves.First, at.Leaves.End - at.Leaves.First))
        {
            var possible = known[leaf.Variable];
            met += (possible & ~leaf.Cells) == 0 ? 1 : 0;
            open += (possible & leaf.Cells) != 0 ? 1 : 0;
        }

        // Leaves are counted without a branch; what costs more is left out once the group is settled.
        // INVARIANT: `open` counts what can be met, so it is never below `met`.
        var rest = at.Groups.End - at.Groups.First + at.Asked.End - at.Asked.First;
        for (var next = at.Groups.First; next < at.Groups.End && met < at.Need && open + rest >= at.Need; next++, rest--)
        {
            var truth = Weigh(next, frame);
            met += truth >> 1;
            open += truth == Kleene.NotMet ? 0 : 1;
        }

        for (var next = at.Asked.First; next < at.Asked.End && met < at.Need && open + rest >= at.Need; next++, rest--)
        {
            var truth = Ask(asked[next], frame);
            met += truth >> 1;
            open += truth == Kleene.NotMet ? 0 : 1;
        }

        return met >= at.Need ? Kleene.Met : open >= at.Need ? Kleene.Unknown : Kleene.NotMet;
    }

    private static int Ask(AskedLeaf leaf, Frame frame) => leaf.Condition.Evaluate(frame.View) switch
    {
        Truth.Unknown => Kleene.Unknown,
        Truth.Met => leaf.Negated ? Kleene.NotMet : Kleene.Met,
        _ => leaf.Negated ? Kleene.Met : Kleene.NotMet,
    };
}

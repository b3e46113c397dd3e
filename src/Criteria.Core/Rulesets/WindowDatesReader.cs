using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Finds the one relation of a criterion whose days a window shows.</summary>
internal sealed class WindowDatesReader(Vocabulary vocabulary, DiagnosticBag bag)
{
    // One relation; `From` are the names by which a window may ask for it.
    private sealed record Found(string Rule, ImmutableArray<string> From, WindowDates Dates);

    /// <summary>The days counted from a date, or null (and a diagnostic).</summary>
    /// <param name="from">A date fact, or `{ therapy: PAP }`.</param>
    /// <param name="id">The window's name.</param>
    /// <param name="bound">The criterion.</param>
    public WindowDates? Counted(Node from, ScalarNode id, BoundParts bound)
    {
        if (NameOf(from) is not { } name)
        {
            return null;
        }

        var condition = (bound.Body as ConditionBody)?.Condition ?? Constant.Never;
        var fitting = Relations(condition, name);
        if (fitting is { Length: > 0 })
        {
            return fitting.Length == 1 ? fitting[0].Dates : new AnyDates([.. fitting.Select(found => found.Dates)]);
        }

        var known = Names(condition).Distinct(StringComparer.Ordinal).ToArray();
        bag.Add(fitting is null
            ? RulesetDiagnostics.WindowOfSeveral(id.Text, name, bound.Shape.Reference.Id, from.Span)
            : RulesetDiagnostics.WindowNotCounted(id.Text, name, bound.Shape.Reference.Id, NearestName.Of(name, known), known, from.Span));
        return null;
    }

    private string? NameOf(Node from)
    {
        switch (from)
        {
            case ScalarNode { Text.Length: > 0 } fact:
                return fact.Text;
            case MapNode { Entries: [{ Value: ScalarNode kind } entry] }
                when vocabulary.Records.FirstOrDefault(list => ConditionReader.KeyOf(list) == entry.Key) is { } list:
                if (list.Kinds.Contains(kind.Text))
                {
                    return $"{entry.Key}: {kind.Text}";
                }

                bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(kind.Text), $"a kind of {list.Label.ToLowerInvariant()}", NearestName.Of(kind.Text, list.Kinds), list.Kinds, kind.Span));
                return null;
            default:
                bag.Add(ReadingDiagnostics.Expected("a date fact, or one record such as `{ therapy: PAP }`, for `from`", from.Described, from.Span));
                return null;
        }
    }

    // What makes the condition met, if it is done in time; null when several relations would have to hold at once.
    private Found[]? Relations(Predicate condition, string name)
    {
        if (condition is not Group group)
        {
            return [.. Leaf(condition).Where(found => found.From.Contains(name))];
        }

        var parts = Parts(group).Select(part => Relations(part, name)).ToArray();
        if (parts.Contains(null))
        {
            return null;
        }

        var found = parts.SelectMany(part => part!).DistinctBy(one => one.Rule).ToArray();
        return group is Any || found.Length <= 1 || parts.Count(part => part!.Length > 0) == 1 ? found : null;
    }

    private IEnumerable<string> Names(Predicate condition) =>
        condition is Group group ? Parts(group).SelectMany(Names) : Leaf(condition).SelectMany(found => found.From);

    // What a setting switches off, and what is denied, makes no window.
    private static IEnumerable<Predicate> Parts(Group group) => group switch
    {
        Negation => [],
        All when group.Parts.Any(part => part is Constant { Holds: false }) => [],
        _ => group.Parts,
    };

    private IEnumerable<Found> Leaf(Predicate condition) => condition switch
    {
        DateLeaf leaf => Of(leaf.Relation),
        RecordLeaf leaf => leaf.Search.Tests.OfType<AttributeDate>().SelectMany(test => Of(test.Relation)),
        NumberLeaf { Fact.Computed: { Run: { } run } computed } => Of(run, computed),
        _ => [],
    };

    private IEnumerable<Found> Of(DateRelation relation)
    {
        string[] from = relation.Anchor is { } anchor ? [anchor.Id]
            : relation.Record is { } record ? [.. vocabulary.Records.SelectMany(list => list.Kinds.Where(kind => record.Covers(list.At, kind)).Select(kind => $"{ConditionReader.KeyOf(list)}: {kind}"))]
            : [];
        return from.Length == 0 ? [] : [new Found(relation.Text, [.. from], new CountedDates(relation))];
    }

    // The fact that gives the start of the same trial, if the vocabulary has one.
    private IEnumerable<Found> Of(RunOfNights run, Computation computed) => vocabulary.Facts
        .Where(fact => fact is { Kind: FactKind.Date, Computed: { } start } && start.From.SequenceEqual(computed.From.Take(start.From.Length)))
        .Select(start => new Found($"first {run.Within} nights", [start.Id], new FirstNights(run, start)));
}

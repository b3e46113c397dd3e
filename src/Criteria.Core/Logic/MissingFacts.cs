using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>Collects the facts that could still decide something, each once, in the order found.</summary>
public sealed class MissingFacts
{
    private readonly List<MissingFact> _items = [];
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);

    /// <summary>What was collected.</summary>
    public ImmutableArray<MissingFact> ToArray() => [.. _items];

    /// <summary>Adds one.</summary>
    public void Add(MissingFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        if (_seen.Add(fact.Fact))
        {
            _items.Add(fact);
        }
    }

    /// <summary>Adds a fact that is open, or what it is computed from.</summary>
    /// <remarks>A fact that was said not to apply is not asked for.</remarks>
    internal void Add(FactDefinition definition, FactSet facts)
    {
        var fact = facts[definition];
        if (fact.State == FactState.NotApplicable)
        {
            return;
        }

        var inputs = Inputs(fact, facts).Where(input => !IsSettled(facts[input])).ToArray();

        // Once a part of it is known, the parts that are not are the better question.
        if (inputs.Length == 0 || (definition.Ask.Length > 0 && !IsPartlyKnown(fact, facts)))
        {
            Add(new MissingFact(definition.Id, definition.Label, definition.Ask, definition.Owner));
            return;
        }

        foreach (var input in inputs)
        {
            Add(input, facts);
        }

        // A computed fact that may be written as well can be settled that way too.
        if (definition.At is not null && !fact.IsKnown)
        {
            Add(new MissingFact(definition.Id, definition.Label, definition.Ask, definition.Owner));
        }
    }

    private static bool IsSettled(Fact fact) => fact.State == FactState.NotApplicable || fact is { IsKnown: true, Number: null or { IsExact: true } };

    // Of a rate, what its own line in the report gives counts; the time of the night is known for other reasons.
    private static bool IsPartlyKnown(Fact fact, FactSet facts)
    {
        if (fact.IsKnown || fact.Definition.Computed is null)
        {
            return fact.IsKnown;
        }

        var parts = IndexOf(fact.Definition, facts) is { } index
            ? [index.Events, index.Time, index.Printed]
            : fact.Definition.Computed.From.Select(facts.Vocabulary.Find).OfType<FactDefinition>();
        return parts.Any(part => facts[part].IsKnown);
    }

    private static IndexDefinition? IndexOf(FactDefinition definition, FactSet facts) =>
        facts.Vocabulary.Indices.FirstOrDefault(index => ReferenceEquals(index.Rate, definition));

    private static IEnumerable<FactDefinition> Inputs(Fact fact, FactSet facts)
    {
        var definition = fact.Definition;
        if (definition.Computed is null)
        {
            return [];
        }

        // A rate that is known only as printed is settled by its count and its time.
        if (IndexOf(definition, facts) is { } index)
        {
            var nightTime = facts.Vocabulary.Find(definition.Computed.From[3]);
            FactDefinition[] exact = nightTime is not null && facts[nightTime].IsKnown ? [index.Events] : [index.Events, index.Time];
            return fact.IsKnown ? exact : [.. exact, index.Printed];
        }

        // Of several indices that would do, only one that the case supplies is worth completing.
        var inputs = definition.Computed.From.Select(facts.Vocabulary.Find).OfType<FactDefinition>().ToArray();
        var supplied = inputs.Where(input => input.Index is not null && facts[input].IsKnown).Take(1).ToArray();
        return supplied.Length > 0 ? supplied : inputs;
    }
}

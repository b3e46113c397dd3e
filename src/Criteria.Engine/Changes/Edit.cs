using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>One change of a case, as it is tried.</summary>
internal sealed class Edit
{
    private readonly Func<FactSet, FactSet> _change;

    private Edit(IReadOnlyList<Dependent> dependents, int? night, Func<FactSet, FactSet> change) => (Dependents, Night, _change) = (dependents, night, change);

    /// <summary>The criteria that it can move, in the order of evaluation.</summary>
    public IReadOnlyList<Dependent> Dependents { get; }

    /// <summary>The place of the night that it is of, or null for the case.</summary>
    public int? Night { get; }

    /// <summary>The facts with it.</summary>
    public FactSet Change(FactSet facts) => _change(facts);

    /// <summary>Another value of a fact, without what no longer holds beside it.</summary>
    public static Edit Of(Dependents dependents, Fact fact, ImmutableArray<Fact> companions, int? night) =>
        new(dependents.Of(fact.Definition), night, set => set.With([fact, .. companions]));

    /// <summary>Another value of an attribute of a document or trial.</summary>
    public static Edit Of(Dependents dependents, RecordDefinition list, string item, Fact attribute) => new(dependents.Of(list), null, set =>
    {
        var records = set.RecordsOf(list);
        var old = records.Items.First(record => record.Id == item);
        return set.With(records with { Items = records.Items.Replace(old, old with { Attributes = old.Attributes.SetItem(attribute.Definition.Slot, attribute) }) });
    });

    /// <summary>One more document or trial.</summary>
    public static Edit Of(Dependents dependents, RecordDefinition list, CaseRecord added) => new(dependents.Of(list), null, set =>
    {
        var records = set.RecordsOf(list);
        return set.With(records with { Items = records.Items.Add(added) });
    });
}

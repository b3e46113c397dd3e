using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>One document or therapy trial.</summary>
/// <param name="Id">Its id in the case; reports name it so.</param>
/// <param name="Kind">One of the kinds of its list.</param>
/// <param name="Attributes">Its attributes, in the order of <see cref="RecordDefinition.Attributes"/>.</param>
public sealed record CaseRecord(string Id, string Kind, ImmutableArray<Fact> Attributes)
{
    /// <summary>The attribute of that definition.</summary>
    public Fact this[FactDefinition attribute] => Attributes[attribute?.Slot ?? throw new ArgumentNullException(nameof(attribute))];
}

/// <summary>All documents, or all therapy trials, that a case lists.</summary>
/// <param name="Definition">What the list is of.</param>
/// <param name="Items">The entries, in the order of their ids, so that the order of a file changes nothing.</param>
/// <param name="ClosedBy">Who said that there is no other, or null when there may be more.</param>
public sealed record RecordList(RecordDefinition Definition, ImmutableArray<CaseRecord> Items, string? ClosedBy)
{
    /// <summary>A list of which nothing is known.</summary>
    public static RecordList Unknown(RecordDefinition definition) => new(definition, [], null);
}

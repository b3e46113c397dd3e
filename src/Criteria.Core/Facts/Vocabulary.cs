using System.Collections.Frozen;
using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>A group of yes/no facts that a reviewer may close with <c>others: no</c>.</summary>
/// <param name="At">Its place in a case file.</param>
/// <param name="Label">A few words for reports.</param>
/// <param name="ListIsComplete">Whether it may be written as a list that is complete by meaning (the channels of a recorder).</param>
public sealed record FactGroup(string At, string Label, bool ListIsComplete);

/// <summary>A list of things with attributes: documents or therapy trials.</summary>
/// <param name="At">Its key in a case file.</param>
/// <param name="Label">A few words for reports.</param>
/// <param name="Kinds">The allowed words for <c>kind</c>.</param>
/// <param name="Attributes">The attributes, as facts of record scope.</param>
/// <param name="Identifies">What its entries identify a person by, one of <see cref="IdentifierClasses.All"/>: then no entry is shared.</param>
public sealed record RecordDefinition(
    string At, string Label, ImmutableArray<string> Kinds, ImmutableArray<FactDefinition> Attributes, string? Identifies = null)
{
    /// <summary>The attribute of that name, or null.</summary>
    public FactDefinition? Attribute(string name) =>
        Attributes.FirstOrDefault(attribute => attribute.At!.Length == At.Length + 1 + name.Length && attribute.At.EndsWith(name, StringComparison.Ordinal));
}

/// <summary>The four facts of one index.</summary>
/// <param name="Type">Its type.</param>
/// <param name="Rate">The rate, computed.</param>
/// <param name="Printed">The rate as printed.</param>
/// <param name="Events">The event count.</param>
/// <param name="Time">The denominator.</param>
public sealed record IndexDefinition(IndexType Type, FactDefinition Rate, FactDefinition Printed, FactDefinition Events, FactDefinition Time);

/// <summary>The catalogue of facts.</summary>
public sealed class Vocabulary
{
    private readonly FrozenDictionary<string, FactDefinition> _byId;
    private readonly FrozenDictionary<string, FactDefinition> _byPlace;
    private readonly FrozenDictionary<string, IndexDefinition> _indexByRate;
    private readonly ImmutableArray<FactDefinition>[] _computedFrom;

    internal Vocabulary(
        ImmutableArray<FactDefinition> facts, ImmutableArray<FactGroup> groups, ImmutableArray<RecordDefinition> records, ImmutableArray<IndexDefinition> indices,
        ImmutableArray<CodeSet> codeSets, PrintedWords printedWords)
    {
        (Facts, Groups, Records, Indices, CodeSets, PrintedWords) = (facts, groups, records, indices, codeSets, printedWords);
        for (var slot = 0; slot < facts.Length; slot++)
        {
            facts[slot].Slot = slot;
        }

        foreach (var record in records)
        {
            for (var place = 0; place < record.Attributes.Length; place++)
            {
                record.Attributes[place].Slot = place;
            }
        }

        _byId = facts.ToFrozenDictionary(fact => fact.Id, StringComparer.Ordinal);
        _byPlace = facts.Where(fact => fact.At is not null).ToFrozenDictionary(fact => fact.At!, StringComparer.Ordinal);
        _indexByRate = indices.ToFrozenDictionary(index => index.Rate.Id, StringComparer.Ordinal);
        _computedFrom = ComputedFrom();
        ComputedFromNights = [.. facts.Where(fact => fact.Computed is { } computed && Measures.MeasureNames.OverNights.Contains(computed.Measure))];
        NightGroups = [.. groups.Where(group => group.At.StartsWith(NightPlace, StringComparison.Ordinal))];
    }

    /// <summary>The place of nights in a case file.</summary>
    public const string NightPlace = "nights";

    /// <summary>The place in a case file of those whom a letter can go to.</summary>
    public const string RecipientPlace = "recipients";

    /// <summary>Facts of the case and of nights, in order; a fact's slot is its index here.</summary>
    public ImmutableArray<FactDefinition> Facts { get; }

    /// <summary>Groups that may be closed.</summary>
    public ImmutableArray<FactGroup> Groups { get; }

    /// <summary>Record lists.</summary>
    public ImmutableArray<RecordDefinition> Records { get; }

    /// <summary>Indices.</summary>
    public ImmutableArray<IndexDefinition> Indices { get; }

    /// <summary>Code sets.</summary>
    public ImmutableArray<CodeSet> CodeSets { get; }

    /// <summary>The words of printed summaries that are not the name of one fact.</summary>
    public PrintedWords PrintedWords { get; }

    internal ImmutableArray<FactGroup> NightGroups { get; }

    /// <summary>The fact of that id, or null.</summary>
    public FactDefinition? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>The fact that stands at that place of a case file, or null.</summary>
    public FactDefinition? At(string place) => _byPlace.GetValueOrDefault(place);

    /// <summary>The facts that are computed from a fact, directly or through others, each after what it rests on.</summary>
    public ImmutableArray<FactDefinition> ComputedFrom(FactDefinition fact) => _computedFrom[fact?.Slot ?? throw new ArgumentNullException(nameof(fact))];

    /// <summary>The slots of the facts that are computed from a fact.</summary>
    internal IEnumerable<int> SlotsComputedFrom(FactDefinition fact) => _computedFrom[fact.Slot].Select(computed => computed.Slot);

    /// <summary>The facts that are computed from the nights of a case.</summary>
    internal ImmutableArray<FactDefinition> ComputedFromNights { get; }

    /// <summary>The facts that are computed from a record list, directly or through others, each after what it rests on.</summary>
    public IEnumerable<FactDefinition> ComputedFrom(RecordDefinition list)
    {
        ArgumentNullException.ThrowIfNull(list);
        return Facts.Where(fact => RestsOn(fact, name => name == list.At));
    }

    private ImmutableArray<FactDefinition>[] ComputedFrom() =>
        [.. Facts.Select(input => Facts.Where(fact => fact != input && RestsOn(fact, name => name == input.Id)).ToImmutableArray())];

    private bool RestsOn(FactDefinition fact, Predicate<string> isInput) =>
        fact.Computed is { } computed && computed.From.Any(name => isInput(name) || (Find(name) is { } input && RestsOn(input, isInput)));

    /// <summary>The record list of that key, or null.</summary>
    public RecordDefinition? Record(string at) => Records.FirstOrDefault(record => record.At == at);

    /// <summary>The index whose rate has that id, or null.</summary>
    internal IndexDefinition? IndexOf(string rate) => _indexByRate.GetValueOrDefault(rate);

    /// <summary>The code set of that id, or null.</summary>
    public CodeSet? CodeSet(string id) => CodeSets.FirstOrDefault(set => set.Id == id);

    /// <summary>Reads vocabulary files.</summary>
    /// <param name="files">The files, in any order; they are read in the order of their names.</param>
    /// <param name="bag">Receives every problem.</param>
    /// <returns>The vocabulary, or null when a file has an error.</returns>
    internal static Vocabulary? Read(IEnumerable<SourceFile> files, DiagnosticBag bag) => new VocabularyReader(bag).Read(files);
}

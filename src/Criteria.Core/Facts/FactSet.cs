using System.Collections.Immutable;
using Criteria.Core.Measures;

namespace Criteria.Core.Facts;

/// <summary>What is known of one case or of one of its nights: a fact for every slot of the vocabulary, and the record lists.</summary>
/// <remarks>Immutable, but for a scratch copy in the hands of whoever made it. The facts of a night's set are those of the case together with those of the night.</remarks>
public sealed class FactSet
{
    private readonly Fact[] _facts;
    private readonly long[] _marks;
    private readonly Fact?[] _entered;

    private FactSet(Vocabulary vocabulary, Fact?[] entered, ImmutableArray<RecordList> records, ImmutableArray<FactSet> nights)
    {
        (Vocabulary, _entered, Records, Nights) = (vocabulary, entered, records, nights);
        (_facts, _marks) = (new Fact[vocabulary.Facts.Length], new long[vocabulary.Facts.Length]);

        // INVARIANT: the vocabulary orders computed facts after what they are computed from.
        Put(vocabulary.Facts);
    }

    // A copy in which only what was replaced, and what is computed from it, is made anew.
    private FactSet(FactSet other, Fact?[] entered, ImmutableArray<RecordList> records)
    {
        (Vocabulary, _entered, Records, Nights) = (other.Vocabulary, entered, records, other.Nights);
        (_facts, _marks) = ((Fact[])other._facts.Clone(), (long[])other._marks.Clone());
    }

    /// <summary>The vocabulary.</summary>
    public Vocabulary Vocabulary { get; }

    /// <summary>The record lists, in the vocabulary's order.</summary>
    public ImmutableArray<RecordList> Records { get; }

    /// <summary>The facts of the nights of the case, as far as measures look at them.</summary>
    internal ImmutableArray<FactSet> Nights { get; private init; }

    private bool IsScratch { get; init; }

    /// <summary>State and value of each fact in one number, in its slot; see <see cref="FactMark"/>.</summary>
    internal ReadOnlySpan<long> Marks => _marks;

    /// <summary>The fact in a slot.</summary>
    public Fact this[int slot] => _facts[slot];

    /// <summary>The fact of a definition.</summary>
    public Fact this[FactDefinition definition] => _facts[definition.Slot];

    /// <summary>The fact of an id.</summary>
    /// <exception cref="ArgumentException">The vocabulary has no such fact.</exception>
    public Fact this[string id] => _facts[(Vocabulary.Find(id) ?? throw new ArgumentException($"no fact `{id}`", nameof(id))).Slot];

    /// <summary>Makes a set; what is not given is unknown.</summary>
    /// <param name="vocabulary">The vocabulary.</param>
    /// <param name="facts">Entered facts, in any order.</param>
    /// <param name="records">Record lists; one that is not given is unknown.</param>
    public static FactSet Of(Vocabulary vocabulary, IEnumerable<Fact> facts, IEnumerable<RecordList>? records = null)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(facts);
        var entered = new Fact?[vocabulary.Facts.Length];
        foreach (var fact in facts)
        {
            entered[fact.Definition.Slot] = fact;
        }

        var given = (records ?? []).ToArray();
        var all = vocabulary.Records
            .Select(definition => given.FirstOrDefault(list => list.Definition.At == definition.At) ?? RecordList.Unknown(definition));
        return new FactSet(vocabulary, entered, [.. all], []);
    }

    /// <summary>The same set with facts replaced; what is computed from them is computed anew.</summary>
    public FactSet With(params IEnumerable<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var changed = new FactSet(this, (Fact?[])_entered.Clone(), Records);
        var computed = new SortedSet<int>();
        foreach (var fact in facts)
        {
            changed._entered[fact.Definition.Slot] = fact;
            computed.Add(fact.Definition.Slot);
            computed.UnionWith(Vocabulary.SlotsComputedFrom(fact.Definition));
        }

        // INVARIANT: the vocabulary orders computed facts after what they are computed from.
        foreach (var slot in computed)
        {
            changed.Put(Vocabulary.Facts[slot]);
        }

        return changed;
    }

    /// <summary>A copy for whoever tries many values: <see cref="Assume"/> changes it in place.</summary>
    internal FactSet Scratch() => new(this, _entered, Records) { IsScratch = true };

    /// <summary>Takes a fact of a scratch copy to be another; what is computed from it stays as it is.</summary>
    /// <exception cref="InvalidOperationException">The set is no scratch copy.</exception>
    internal void Assume(Fact fact)
    {
        if (!IsScratch)
        {
            throw new InvalidOperationException("a set of facts does not change");
        }

        Put(fact);
    }

    /// <summary>The same set with a record list replaced.</summary>
    public FactSet With(RecordList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var changed = new FactSet(this, _entered, [.. Records.Select(old => old.Definition.At == list.Definition.At ? list : old)]);
        foreach (var fact in Vocabulary.ComputedFrom(list.Definition))
        {
            changed.Put(fact);
        }

        return changed;
    }

    /// <summary>The same set with other nights; what is computed from nights is computed anew.</summary>
    internal FactSet WithNights(ImmutableArray<FactSet> nights)
    {
        var changed = new FactSet(this, _entered, Records) { Nights = nights };
        foreach (var fact in Vocabulary.ComputedFromNights)
        {
            changed.Put(fact);
            changed.Put(Vocabulary.ComputedFrom(fact));
        }

        return changed;
    }

    private void Put(ImmutableArray<FactDefinition> definitions)
    {
        foreach (var definition in definitions)
        {
            Put(definition);
        }
    }

    private void Put(FactDefinition definition)
    {
        var written = _entered[definition.Slot];
        Put(definition.Computed is null
            ? written ?? Fact.Absent(definition)
            : Measure.Compute(definition, written, this));
    }

    private void Put(Fact fact) => (_facts[fact.Definition.Slot], _marks[fact.Definition.Slot]) = (fact, FactMark.Of(fact));

    /// <summary>The facts that were entered, in the order of their slots.</summary>
    public IEnumerable<Fact> Entered => _entered.OfType<Fact>();

    /// <summary>The record list of that key.</summary>
    public RecordList RecordsOf(RecordDefinition definition)
    {
        foreach (var list in Records)
        {
            if (ReferenceEquals(list.Definition, definition))
            {
                return list;
            }
        }

        throw new ArgumentException("a record list of another vocabulary", nameof(definition));
    }
}

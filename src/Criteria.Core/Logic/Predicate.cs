using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A condition over a view. Total: it never throws, and what it cannot know is unknown.</summary>
public abstract class Predicate
{
    private string? _text;

    /// <summary>The condition in words. Said once and kept: a trace repeats it for every case.</summary>
    public string Text => _text ??= Describe();

    /// <summary>What it comes to.</summary>
    public abstract Truth Evaluate(View view);

    /// <summary>What it comes to, with every step and value.</summary>
    public abstract TraceNode Explain(View view);

    /// <summary>What remains once the known facts are put in: equivalent for every completion of the unknown ones.</summary>
    public virtual Predicate Reduce(View view) => Evaluate(view) switch
    {
        Truth.Met => Constant.Always,
        Truth.NotMet => Constant.Never,
        _ => this,
    };

    /// <summary>Adds the facts that are open in it. Called on what <see cref="Reduce"/> left.</summary>
    public abstract void AddMissing(View view, MissingFacts missing);

    /// <summary>Adds everything it may read.</summary>
    public abstract void AddReads(Reads reads);

    private protected abstract string Describe();
}

/// <summary>A condition that is settled without any fact.</summary>
public sealed class Constant : Predicate
{
    /// <summary>Always met.</summary>
    public static readonly Constant Always = new(true, "always");

    /// <summary>Never met.</summary>
    public static readonly Constant Never = new(false, "never");

    private readonly string _words;

    internal Constant(bool holds, string text) => (Holds, _words) = (holds, text);

    /// <summary>Whether it is met.</summary>
    internal bool Holds { get; }

    /// <inheritdoc/>
    public override Truth Evaluate(View view) => Truths.Of(Holds);

    /// <inheritdoc/>
    public override TraceNode Explain(View view) => TraceNode.Leaf("setting", Text, Evaluate(view), null, null);

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
    }

    private protected override string Describe() => _words;
}

/// <summary>What a condition may read.</summary>
public sealed class Reads
{
    /// <summary>The facts, by slot.</summary>
    public SortedSet<int> Facts { get; } = [];

    /// <summary>The criteria, by index.</summary>
    public SortedSet<int> Criteria { get; } = [];

    /// <summary>The record lists.</summary>
    public HashSet<RecordDefinition> Records { get; } = [];

    /// <summary>The fixed numbers that facts are compared with.</summary>
    public List<NumberBound> Bounds { get; } = [];

    /// <summary>The comparisons of a fact with another.</summary>
    public List<FactBound> FactBounds { get; } = [];

    /// <summary>The relations of dates.</summary>
    public List<DateBound> Dates { get; } = [];

    /// <summary>The documents and trials that are looked for.</summary>
    public List<Sought> Sought { get; } = [];

    /// <summary>Adds a fact and whatever it is computed from.</summary>
    internal void Add(FactDefinition fact, Vocabulary vocabulary)
    {
        if (!Facts.Add(fact.Slot) || fact.Computed is null)
        {
            return;
        }

        foreach (var input in fact.Computed.From)
        {
            if (vocabulary.Find(input) is { } definition)
            {
                Add(definition, vocabulary);
            }
            else if (vocabulary.Record(input) is { } record)
            {
                Records.Add(record);
            }
        }
    }
}

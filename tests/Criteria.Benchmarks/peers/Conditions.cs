namespace Criteria.Benchmarks.Peers;

/// <summary>A condition of the workload, before it is put into anybody's language.</summary>
internal abstract record Condition
{
    /// <summary>A number against a bound; <paramref name="Sign"/> is one of <c>&gt;= &gt; &lt;= &lt;</c>.</summary>
    internal sealed record Number(string Fact, string Sign, decimal Bound, string Unit) : Condition;

    /// <summary>A yes/no fact is yes.</summary>
    internal sealed record Yes(string Fact) : Condition;

    /// <summary>A choice is one of the words.</summary>
    internal sealed record Word(string Fact, params string[] Words) : Condition;

    /// <summary>Another criterion is met.</summary>
    internal sealed record Met(int Criterion) : Condition;

    /// <summary>At least so many of the parts.</summary>
    internal sealed record Some(int Need, params Condition[] Parts) : Condition;

    /// <summary>The opposite.</summary>
    internal sealed record Not(Condition Part) : Condition;

    /// <summary>All parts.</summary>
    public static Condition All(params Condition[] parts) => new Some(parts.Length, parts);

    /// <summary>Any part.</summary>
    public static Condition Any(params Condition[] parts) => new Some(1, parts);
}

/// <summary>How an engine with two truth values is told a condition.</summary>
internal enum Way
{
    /// <summary>As it stands, for cases of which everything is known.</summary>
    Complete = 0,

    /// <summary>So that it holds when it is certainly met.</summary>
    Certain,

    /// <summary>So that it holds when it may be met.</summary>
    Possible,
}

/// <summary>A condition for engines with two truth values.</summary>
/// <remarks>
/// Such an engine is told each criterion twice: whether it is certainly met, and whether it may be met. A leaf on an unknown fact
/// fails for the first and holds for the second. What is certain is met, what is not even possible is not met, the rest is undetermined.
/// The opposite of a condition is pushed down to the leaves, where "certainly not" is the opposite of "possibly".
/// </remarks>
internal abstract record TwoValued
{
    /// <summary>A number against a bound, or an unknown number where <paramref name="OrUnknown"/>.</summary>
    internal sealed record Number(string Fact, string Sign, decimal Bound, bool OrUnknown) : TwoValued;

    /// <summary>A yes/no fact has an answer.</summary>
    internal sealed record Answer(string Fact, bool Yes, bool OrUnknown) : TwoValued;

    /// <summary>A choice is one of the words, or none of them where <paramref name="Negated"/>.</summary>
    internal sealed record Word(string Fact, string[] Words, bool Negated, bool OrUnknown) : TwoValued;

    /// <summary>What an earlier criterion came to, or the opposite.</summary>
    internal sealed record Finding(int Criterion, bool Possible, bool Negated) : TwoValued;

    /// <summary>At least so many of the parts.</summary>
    internal sealed record Some(int Need, TwoValued[] Parts) : TwoValued
    {
        /// <summary>The same with all and any only, for languages that cannot count.</summary>
        public IEnumerable<TwoValued[]> Combinations() => Choose(Need, 0);

        private IEnumerable<TwoValued[]> Choose(int need, int from) => need == 0 ? [[]]
            : Enumerable.Range(from, Math.Max(0, Parts.Length - from - need + 1))
                .SelectMany(first => Choose(need - 1, first + 1).Select(rest => (TwoValued[])[Parts[first], .. rest]));
    }

    /// <summary>A condition, or its opposite, in one of the ways.</summary>
    public static TwoValued Of(Condition condition, Way way, bool negated = false) => condition switch
    {
        Condition.Not { Part: var part } => Of(part, way, !negated),
        Condition.Number number => new Number(number.Fact, negated ? Opposite(number.Sign) : number.Sign, number.Bound, way == Way.Possible),
        Condition.Yes yes => new Answer(yes.Fact, !negated, way == Way.Possible),
        Condition.Word word => new Word(word.Fact, word.Words, negated, way == Way.Possible),
        Condition.Met met => new Finding(met.Criterion, way != Way.Complete && (way == Way.Possible) != negated, negated),
        Condition.Some some => new Some(negated ? some.Parts.Length - some.Need + 1 : some.Need, [.. some.Parts.Select(part => Of(part, way, negated))]),
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private static string Opposite(string sign) => sign switch { ">=" => "<", "<" => ">=", ">" => "<=", _ => ">" };
}

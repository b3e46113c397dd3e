using System.Globalization;

namespace Criteria.Benchmarks.Peers;

/// <summary>Conditions as expressions of the peers that read expressions.</summary>
/// <param name="and">The word for "and".</param>
/// <param name="or">The word for "or".</param>
/// <param name="leaf">A leaf.</param>
/// <param name="count">How parts are counted; null for a language that must be given combinations.</param>
internal sealed class Expressions(string and, string or, Func<TwoValued, string> leaf, Func<int, IEnumerable<string>, string>? count = null)
{
    /// <summary>The expression of a condition.</summary>
    public string Of(TwoValued condition) => condition switch
    {
        TwoValued.Some { Parts: [var only] } => Of(only),
        TwoValued.Some some when some.Need == some.Parts.Length => Joined(and, some.Parts),
        TwoValued.Some { Need: 1 } some => Joined(or, some.Parts),
        TwoValued.Some some when count is not null => count(some.Need, some.Parts.Select(Of)),
        TwoValued.Some some => "(" + string.Join(or, some.Combinations().Select(parts => Joined(and, parts))) + ")",
        _ => leaf(condition),
    };

    /// <summary>A number as every language reads it.</summary>
    public static string Text(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    private string Joined(string word, IEnumerable<TwoValued> parts) => "(" + string.Join(word, parts.Select(Of)) + ")";
}

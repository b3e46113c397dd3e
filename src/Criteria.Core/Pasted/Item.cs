using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>What a part of a line is for the reading.</summary>
internal enum ItemKind
{
    /// <summary>A word or sign that nobody knows.</summary>
    Unknown = 0,

    /// <summary>The name of a fact.</summary>
    Name,

    /// <summary>A figure that may be a value.</summary>
    Value,

    /// <summary>A date.</summary>
    Date,

    /// <summary>The rule of an index.</summary>
    Rule,

    /// <summary>A unit that stands by itself.</summary>
    Unit,

    /// <summary>The number of a night.</summary>
    Night,

    /// <summary>What changes nothing.</summary>
    Filler,

    /// <summary>A word that makes it another figure.</summary>
    Aside,

    /// <summary>The border of two cells.</summary>
    Border,

    /// <summary>The border of two clauses: a comma, a full stop.</summary>
    Clause,
}

/// <summary>One number with the units printed behind it.</summary>
/// <param name="Digits">The number as printed.</param>
/// <param name="Units">What its unit may be; empty when there is none.</param>
/// <param name="IsClock">Whether it has colons.</param>
internal readonly record struct PrintedNumber(string Digits, ImmutableArray<Unit> Units, bool IsClock);

/// <summary>A part of a line.</summary>
internal sealed record Item(ItemKind Kind, int Start, int End, string Text)
{
    public ImmutableArray<FactDefinition> Facts { get; init; } = [];

    public ImmutableArray<Unit> Units { get; init; } = [];

    public ImmutableArray<PrintedNumber> Numbers { get; init; } = [];

    /// <summary>Why the figure is no value: a bound, a range, a sign before it.</summary>
    public string? Fault { get; init; }

    public bool IsSign(string sign) => Text == sign;
}

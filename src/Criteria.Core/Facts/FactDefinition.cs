using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>What kind of value a fact has.</summary>
public enum FactKind
{
    /// <summary>A number with a unit.</summary>
    Number = 0,

    /// <summary>A whole number, not negative.</summary>
    Count,

    /// <summary>A time within a night.</summary>
    Duration,

    /// <summary>A calendar date.</summary>
    Date,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One of a list of words.</summary>
    Choice,

    /// <summary>Free text; rules do not read it.</summary>
    Text,

    /// <summary>A list of times, one for each calendar night; measures read it, rules do not.</summary>
    Durations,

    /// <summary>A code of a coding system; a rule asks whether a code set has it on a date.</summary>
    Code,
}

/// <summary>What a fact belongs to.</summary>
public enum FactScope
{
    /// <summary>The whole case.</summary>
    Case = 0,

    /// <summary>One night.</summary>
    Night,

    /// <summary>One entry of a record list: a document or a therapy trial.</summary>
    Record,
}

/// <summary>The type of an index: two with the same letters but another rule or denominator are not the same.</summary>
/// <param name="Index">The name: REI, AHI, RDI with arousals, payer RDI, ODI.</param>
/// <param name="Rule">The hypopnea rule, or the desaturation for an ODI.</param>
/// <param name="Per">The denominator.</param>
public sealed record IndexType(string Index, string Rule, string Per)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Index}, {Rule} rule, per hour of {Per}";
}

/// <summary>How a computed fact is made.</summary>
/// <param name="Measure">The name of the measure.</param>
/// <param name="From">What it is computed from.</param>
/// <param name="Run">Which nights are counted, for the best run.</param>
public sealed record Computation(string Measure, ImmutableArray<string> From, RunOfNights? Run = null);

/// <summary>Consecutive nights near the start of a therapy.</summary>
/// <param name="Length">How many nights the run has.</param>
/// <param name="AtLeast">The time in minutes that a night must reach to count.</param>
/// <param name="Within">The run lies within so many first nights.</param>
public sealed record RunOfNights(int Length, Ratio AtLeast, int Within);

/// <summary>One entry of the vocabulary.</summary>
public sealed class FactDefinition
{
    /// <summary>The name rules use.</summary>
    public required string Id { get; init; }

    /// <summary>The place in a case file, or null for a computed fact that cannot be written.</summary>
    public string? At { get; init; }

    /// <summary>A few words for reports.</summary>
    public required string Label { get; init; }

    /// <summary>What kind of value it has.</summary>
    public required FactKind Kind { get; init; }

    /// <summary>What it belongs to.</summary>
    public required FactScope Scope { get; init; }

    /// <summary>The unit in which reports print it.</summary>
    public Unit Unit { get; init; } = Units.One;

    /// <summary>The possible values, in the base unit.</summary>
    public Interval? Range { get; init; }

    /// <summary>The plausible values, in the base unit.</summary>
    public Interval? Plausible { get; init; }

    /// <summary>Values that identify somebody by themselves (a very high age), in the base unit: shared as this whole range.</summary>
    public Interval? SharedAs { get; init; }

    /// <summary>What it identifies a person by, one of <see cref="IdentifierClasses.All"/>; null when it identifies nobody.</summary>
    /// <remarks>A text that declares nothing is free text, and a date a day: a fact is never shared for want of a declaration.</remarks>
    public string? Identifies { get; init; }

    /// <summary>The allowed words of a choice, in the vocabulary's order.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>The coding system of a code.</summary>
    public string? System { get; init; }

    /// <summary>Whether a written value is a rounded quotient and stands for an interval.</summary>
    public bool Rounded { get; init; }

    /// <summary>Whether yes or no may be written in place of the value (a signature date that is only known to exist).</summary>
    public bool AlsoYesNo { get; init; }

    /// <summary>Whether nothing that anybody does can change it: age, sex.</summary>
    public bool IsFixed { get; init; }

    /// <summary>One or two sentences.</summary>
    public required string Meaning { get; init; }

    /// <summary>Who can supply it.</summary>
    public string Owner { get; init; } = "";

    /// <summary>One sentence to ask.</summary>
    public string Ask { get; init; } = "";

    /// <summary>How it is computed, or null for a fact that is only entered.</summary>
    public Computation? Computed { get; init; }

    /// <summary>The index type, for an index fact.</summary>
    public IndexType? Index { get; init; }

    /// <summary>The words under which printed summaries give it; empty when it is never read out of a text.</summary>
    public ImmutableArray<string> PrintedAs { get; init; } = [];

    /// <summary>What to ask before a printed figure is taken for it, or null: the words alone do not tell.</summary>
    public string? PrintedDoubt { get; init; }

    /// <summary>The facts above which its value cannot lie, by id: a figure that does is swapped or misread.</summary>
    public ImmutableArray<string> NotAbove { get; init; } = [];

    /// <summary>Its place among the facts; for an attribute, among those of its list. Set by the vocabulary.</summary>
    public int Slot { get; internal set; } = -1;

    /// <summary>The fact of cases that do not mention it, once there is one.</summary>
    internal Fact? Absent { get; set; }

    /// <summary>Whether it has a number that can be compared.</summary>
    public bool IsNumeric => Kind is FactKind.Number or FactKind.Count or FactKind.Duration;

    /// <inheritdoc/>
    public override string ToString() => Id;

    internal FactDefinition InScope(FactScope scope) => new()
    {
        Id = Id,
        At = At,
        Label = Label,
        Kind = Kind,
        Scope = scope,
        Unit = Unit,
        Range = Range,
        Plausible = Plausible,
        SharedAs = SharedAs,
        Identifies = Identifies,
        Choices = Choices,
        System = System,
        Rounded = Rounded,
        AlsoYesNo = AlsoYesNo,
        IsFixed = IsFixed,
        Meaning = Meaning,
        Owner = Owner,
        Ask = Ask,
        Computed = Computed,
        Index = Index,
        PrintedAs = PrintedAs,
        PrintedDoubt = PrintedDoubt,
        NotAbove = NotAbove,
    };
}

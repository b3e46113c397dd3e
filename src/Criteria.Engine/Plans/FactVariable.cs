using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>How the cells of a variable are taken from a fact.</summary>
internal abstract class FactVariable(int slot)
{
    /// <summary>The slot of the fact.</summary>
    public int Slot { get; } = slot;

    /// <summary>The cells that are possible.</summary>
    public abstract ulong Possible(Fact fact);
}

/// <summary>Yes or no; what does not apply counts as no.</summary>
internal sealed class YesNoVariable(int slot) : FactVariable(slot)
{
    /// <summary>The cell of an answer.</summary>
    public static int CellOf(bool yes) => yes ? 1 : 0;

    /// <inheritdoc/>
    public override ulong Possible(Fact fact) =>
        fact.Value is YesNoValue answer ? Cells.One(CellOf(answer.Yes))
        : fact.State == FactState.NotApplicable ? Cells.One(CellOf(false))
        : Cells.Unknown;
}

/// <summary>One of several words: a cell for each.</summary>
internal sealed class ChoiceVariable(FactDefinition fact) : FactVariable(fact.Slot)
{
    /// <summary>The cell of a word; -1 for a word that is not in the vocabulary.</summary>
    public int CellOf(string word) => fact.Choices.IndexOf(word);

    /// <inheritdoc/>
    public override ulong Possible(Fact fact) =>
        fact.Value is not ChoiceValue { Word: var word } ? Cells.Unknown
        : CellOf(word) is >= 0 and var cell ? Cells.One(cell)
        : Cells.NotApplicable;
}

/// <summary>Whether a fact is in the case. Its one cell is that it is.</summary>
internal sealed class RecordedVariable(int slot) : FactVariable(slot)
{
    /// <inheritdoc/>
    public override ulong Possible(Fact fact) => fact.IsKnown ? Cells.One(0) : Cells.Unknown;
}

/// <summary>A number as the bounds see it with which rules compare it: on the first bound, between the first and the second, and so on.</summary>
internal sealed class NumberVariable(int slot, Rounding rounding, ScaledBounds bounds) : FactVariable(slot)
{
    /// <summary>The bounds.</summary>
    public ScaledBounds Bounds { get; } = bounds;

    /// <inheritdoc/>
    public override ulong Possible(Fact fact)
    {
        if (fact.Value is not NumberValue number)
        {
            return Cells.Unknown;
        }

        var range = Comparison.Round(number, rounding);
        var low = Bounds.CellOf(range.Low);
        var high = Bounds.CellOf(range.High);

        // INVARIANT: a range whose end is left out is not empty. Its end on a bound leaves the cell below as the highest.
        return Cells.Range(low, range.HighIncluded || !ScaledBounds.IsOnBound(high) ? high : Math.Max(low, high - 1));
    }
}

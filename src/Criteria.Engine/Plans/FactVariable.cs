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

    /// <summary>The cells of the first marks, from <see cref="FactMark.Unknown"/> on; a fact with a mark that is not among them is looked at.</summary>
    public virtual ulong[] OfMarks => [Cells.Unknown];
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

    /// <inheritdoc/>
    public override ulong[] OfMarks => [Cells.Unknown, Cells.One(CellOf(false)), Cells.One(CellOf(false)), Cells.One(CellOf(true))];
}

/// <summary>One of several words: a cell for each.</summary>
internal sealed class ChoiceVariable(FactDefinition definition) : FactVariable(definition.Slot)
{
    private readonly string[] _words = [.. definition.Choices];

    /// <inheritdoc/>
    public override ulong[] OfMarks => [.. Enumerable.Repeat(Cells.Unknown, (int)(FactMark.FirstWord - FactMark.Unknown)), .. _words.Select((_, cell) => Cells.One(cell))];

    /// <inheritdoc/>
    public override ulong Possible(Fact fact)
    {
        if (fact.Value is not ChoiceValue { Word: var word })
        {
            return Cells.Unknown;
        }

        for (var cell = 0; cell < _words.Length; cell++)
        {
            if (_words[cell] == word)
            {
                return Cells.One(cell);
            }
        }

        return Cells.NotApplicable;
    }
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
    /// <summary>The cells that are possible for an exact number: where they end, as <see cref="ScaledBounds.Ends"/>; null where it has to be looked at.</summary>
    public long[]? Ends => rounding == Rounding.ToWholeNumbers ? null : Bounds.Ends;

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

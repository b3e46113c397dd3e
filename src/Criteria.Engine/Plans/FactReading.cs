using Criteria.Core.Facts;

namespace Criteria.Engine.Plans;

/// <summary>Turns facts into the cells of variables: by their marks, and by a look at their values where the mark does not say.</summary>
internal sealed class FactReading
{
    private const int SignBit = 63;

    private readonly Looked[] _looked;
    private readonly Compared[] _compared;

    /// <param name="variables">The variables taken from facts, by their place; null for others.</param>
    public FactReading(IReadOnlyList<FactVariable?> variables)
    {
        var placed = variables.Select((variable, place) => (Variable: variable!, Place: place)).Where(placed => placed.Variable is not null)
            .OrderBy(placed => placed.Variable.Slot).ThenBy(placed => placed.Place).ToLookup(placed => placed.Variable is NumberVariable { Ends: not null });
        _looked = [.. placed[false].Select(placed => new Looked(placed.Variable.Slot, placed.Place, placed.Variable.OfMarks, placed.Variable))];
        _compared = [.. placed[true].Select(placed => new Compared(placed.Variable.Slot, placed.Place, ((NumberVariable)placed.Variable).Ends!, placed.Variable))];
    }

    /// <summary>Puts the cells of each variable in its place.</summary>
    public void Take(FactSet facts, ulong[] known)
    {
        var marks = facts.Marks;
        foreach (ref readonly var variable in _looked.AsSpan())
        {
            var cells = variable.OfMarks;
            var place = unchecked((ulong)(marks[variable.Slot] - FactMark.Unknown));
            known[variable.Place] = place < (ulong)cells.Length ? cells[place] : variable.Variable.Possible(facts[variable.Slot]);
        }

        foreach (ref readonly var variable in _compared.AsSpan())
        {
            var mark = marks[variable.Slot];
            known[variable.Place] = mark == FactMark.Other ? variable.Variable.Possible(facts[variable.Slot]) : CellOf(mark, variable.Ends) | NoNumber(mark);
        }
    }

    // INVARIANT: both are within the limit of marks, so the sign of their difference says which is greater, without a branch.
    private static ulong CellOf(long number, long[] ends)
    {
        var cell = 0;
        foreach (var end in ends)
        {
            cell += (int)(unchecked((ulong)(end - number)) >> SignBit);
        }

        return Cells.One(cell);
    }

    // Every cell for a mark that is no number, none for a number: those of numbers have two equal bits in front. A branch would be guessed wrong too often.
    private static ulong NoNumber(long mark) => unchecked((ulong)((mark ^ (mark << 1)) >> SignBit));

    private readonly record struct Looked(int Slot, int Place, ulong[] OfMarks, FactVariable Variable);

    private readonly record struct Compared(int Slot, int Place, long[] Ends, FactVariable Variable);
}

namespace Criteria.Documents.Figures;

/// <summary>Puts labels into rows so that none runs into another: each into the first row with room for it.</summary>
internal sealed class LabelRows(double gap, double width)
{
    private readonly List<List<(double Left, double Right)>> _rows = [];

    /// <summary>How many rows there are.</summary>
    public int Count => _rows.Count;

    /// <summary>The row for a label from one end to the other, no row above <paramref name="first"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The label is wider than the figure.</exception>
    public int Place(double left, double right, int first)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(right - left, width);
        var row = first;
        while (row < _rows.Count && _rows[row].Any(other => left < other.Right + gap && right > other.Left - gap))
        {
            row++;
        }

        while (_rows.Count <= row)
        {
            _rows.Add([]);
        }

        _rows[row].Add((left, right));
        return row;
    }
}

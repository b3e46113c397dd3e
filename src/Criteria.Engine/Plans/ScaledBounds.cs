using Criteria.Core.Facts;

namespace Criteria.Engine.Plans;

/// <summary>The bounds with which a number is compared, in order. Compared as whole numbers where that is exact, else as quotients.</summary>
internal sealed class ScaledBounds
{
    /// <summary>How many bounds one variable may have: each has a cell, and there is one below and one above each.</summary>
    public const int Most = (Cells.Most - 1) / 2;

    private readonly Ratio[] _bounds;
    private readonly long[]? _scaled;

    /// <param name="bounds">The bounds in ascending order, each once.</param>
    public ScaledBounds(IEnumerable<Ratio> bounds)
    {
        _bounds = [.. bounds];
        var scaled = new long[_bounds.Length];
        var exact = true;
        for (var i = 0; i < scaled.Length; i++)
        {
            exact &= _bounds[i].Denominator == 1 && ScaledNumber.TryScale(_bounds[i].Numerator, out scaled[i]);
        }

        _scaled = exact ? scaled : null;
    }

    /// <summary>Where the cells of scaled numbers end, in order: a number lies as many cells up as it is above. Null where numbers are compared as quotients.</summary>
    public long[]? Ends => _scaled?.All(FactMark.IsNumber) == true ? [.. _scaled.SelectMany(bound => (long[])[bound - 1, bound])] : null;

    /// <summary>How many cells there are.</summary>
    public int CellCount => (2 * _bounds.Length) + 1;

    /// <summary>Whether a cell is a bound itself.</summary>
    public static bool IsOnBound(int cell) => (cell & 1) == 1;

    /// <summary>A value of a cell.</summary>
    public Ratio ValueIn(int cell)
    {
        var above = cell / 2;
        return IsOnBound(cell) ? _bounds[above]
            : above == 0 ? _bounds[0].Rounded - 1
            : above == _bounds.Length ? _bounds[^1].Rounded + 1
            : (_bounds[above - 1].Rounded + _bounds[above].Rounded) / 2;
    }

    /// <summary>The cell of a value: one more for each bound that it reaches, and for each that it passes.</summary>
    public int CellOf(Ratio value)
    {
        var cell = 0;
        if (_scaled is { } scaled && ScaledNumber.TryScale(value.Numerator, out var numerator))
        {
            if (value.IsUndivided)
            {
                foreach (var bound in scaled)
                {
                    cell += (numerator >= bound ? 1 : 0) + (numerator > bound ? 1 : 0);
                }

                return cell;
            }

            if (ScaledNumber.TryScale(value.Denominator, out var denominator))
            {
                var left = (Int128)numerator * ScaledNumber.One;
                foreach (var bound in scaled)
                {
                    var right = (Int128)bound * denominator;
                    cell += (left >= right ? 1 : 0) + (left > right ? 1 : 0);
                }

                return cell;
            }
        }

        foreach (var bound in _bounds)
        {
            var order = value.CompareTo(bound);
            cell += (order >= 0 ? 1 : 0) + (order > 0 ? 1 : 0);
        }

        return cell;
    }
}

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>How much a table column asks for.</summary>
/// <param name="Least">The width of its longest word.</param>
/// <param name="Most">The width of its longest cell on one line.</param>
internal readonly record struct ColumnDemand(double Least, double Most);

/// <summary>Shares the width of the page among the columns of a table.</summary>
internal static class ColumnWidths
{
    // How much of the width a column may take to stand on one line although others hold far more.
    private const double Short = 0.25;

    // What is lost when points are added up in another order.
    private const double Slack = 0.01;

    /// <summary>The widths. A short column stands on one line; the others part what is left, those that hold more getting more.</summary>
    public static double[] Share(IReadOnlyList<ColumnDemand> columns, double width)
    {
        var most = columns.Sum(column => column.Most);
        if (most <= width)
        {
            var factor = most >= width * PdfDesign.Widened ? (width - Slack) / most : 1;
            return [.. columns.Select(column => (column.Most * factor) + Slack)];
        }

        return columns.Sum(column => column.Least) > width ? Even([.. columns.Select(column => column.Least)], width) : Fitted(columns, width);
    }

    // Too narrow even for the longest words: those that need least get it, the others get the same.
    private static double[] Even(double[] needs, double width)
    {
        var shares = new double[needs.Length];
        var left = width;
        var count = needs.Length;
        foreach (var i in Enumerable.Range(0, needs.Length).OrderBy(i => needs[i]))
        {
            shares[i] = Math.Min(needs[i], left / count);
            left -= shares[i];
            count--;
        }

        return shares;
    }

    private static double[] Fitted(IReadOnlyList<ColumnDemand> columns, double width)
    {
        var shares = columns.Select(column => column.Least).ToArray();
        var open = Enumerable.Range(0, columns.Count).OrderBy(i => columns[i].Most).ToList();
        var left = width;

        // Short columns first, each of which may take no more than its part or a quarter of the page, and leaves the longest words of the others room.
        foreach (var i in open.ToList())
        {
            var others = open.Where(other => other != i).Sum(other => shares[other]);
            var part = left * Weight(columns[i]) / open.Sum(other => Weight(columns[other]));
            if (columns[i].Most > Math.Max(part, width * Short) || columns[i].Most > left - others)
            {
                break;
            }

            shares[i] = columns[i].Most + Slack;
            left -= shares[i];
            open.Remove(i);
        }

        return Proportional(columns, open, shares, left);
    }

    private static double[] Proportional(IReadOnlyList<ColumnDemand> columns, List<int> open, double[] shares, double left)
    {
        // A column whose part would be less than its longest word gets that word's width, and the others share again.
        while (TooSmall(columns, open, left) is var small and >= 0)
        {
            shares[small] = columns[small].Least;
            left -= shares[small];
            open.Remove(small);
        }

        var sum = open.Sum(i => Weight(columns[i]));
        foreach (var i in open)
        {
            shares[i] = left * Weight(columns[i]) / sum;
        }

        return shares;
    }

    private static int TooSmall(IReadOnlyList<ColumnDemand> columns, List<int> open, double left)
    {
        var sum = open.Sum(i => Weight(columns[i]));
        return open.FirstOrDefault(i => left * Weight(columns[i]) / sum < columns[i].Least, -1);
    }

    // Less than in proportion: one long cell among many short ones shall not narrow every other column.
    private static double Weight(ColumnDemand column) => Math.Sqrt(column.Most);
}

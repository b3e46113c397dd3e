namespace Criteria.Documents.Renderers;

/// <summary>A table in fixed width. One that is too wide for that gives each row a block of lines; nothing is cut off.</summary>
internal static class TextTable
{
    private const int Gap = 2;
    private const int Narrowest = 10;

    /// <summary>The lines of a table whose first row is its head.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<string[]> rows, int width)
    {
        if (rows.Count == 0)
        {
            return [];
        }

        var columns = rows.Max(row => row.Length);
        return Widths(rows, columns, width) is { } widths ? Grid(rows, widths) : Blocks(rows, width);
    }

    // The widest column gives way first, as far as a column can.
    private static int[]? Widths(IReadOnlyList<string[]> rows, int columns, int width)
    {
        var widths = Enumerable.Range(0, columns).Select(column => Math.Max(1, rows.Max(row => column < row.Length ? row[column].Length : 0))).ToArray();
        while (widths.Sum() + (Gap * (columns - 1)) > width)
        {
            var widest = Array.IndexOf(widths, widths.Max());
            if (widths[widest] <= Narrowest)
            {
                return null;
            }

            widths[widest]--;
        }

        return widths;
    }

    private static IEnumerable<string> Grid(IReadOnlyList<string[]> rows, int[] widths)
    {
        for (var i = 0; i < rows.Count; i++)
        {
            var cells = widths.Select((width, column) => Wrap(column < rows[i].Length ? rows[i][column] : "", width).ToArray()).ToArray();
            for (var line = 0; line < cells.Max(cell => cell.Length); line++)
            {
                yield return string.Join(new string(' ', Gap), cells.Select((cell, column) => (line < cell.Length ? cell[line] : "").PadRight(widths[column]))).TrimEnd();
            }

            if (i == 0)
            {
                yield return string.Join(new string(' ', Gap), widths.Select(width => new string('-', width)));
            }
        }
    }

    private static IEnumerable<string> Blocks(IReadOnlyList<string[]> rows, int width)
    {
        for (var i = 1; i < rows.Count; i++)
        {
            if (i > 1)
            {
                yield return "";
            }

            for (var column = 0; column < rows[i].Length; column++)
            {
                var label = column < rows[0].Length ? $"{rows[0][column]}: " : "";
                foreach (var line in Wrap(label + rows[i][column], width))
                {
                    yield return line;
                }
            }
        }
    }

    /// <summary>A text in lines of at most so many characters; a longer word goes on in the next line.</summary>
    public static IEnumerable<string> Wrap(string text, int width)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            if (line.Length > 0 && line.Length + 1 + rest.Length > width)
            {
                yield return line;
                line = "";
            }

            while (rest.Length > width)
            {
                yield return rest[..width];
                rest = rest[width..];
            }

            line = line.Length == 0 ? rest : $"{line} {rest}";
        }

        yield return line;
    }
}

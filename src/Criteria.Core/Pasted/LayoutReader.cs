using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>Walks through the lines of a text: rows, tables with a heading, words on one line and their figure on the next, nights.</summary>
internal sealed class LayoutReader(IReadOnlyList<List<Item>> lines)
{
    private readonly List<Group> _groups = [];
    private string? _night;

    /// <summary>The nights, in the order in which they are named.</summary>
    public List<string> Nights { get; } = [];

    public IReadOnlyList<Group> Read()
    {
        for (var line = 0; line < lines.Count; line++)
        {
            if (IsDecoration(line))
            {
                continue;
            }

            if (IsNightHeading(lines[line]))
            {
                _night = NightOf(lines[line]);
                Row(line);
            }
            else if (IsHeading(line))
            {
                line = Table(line);
            }
            else if (IsNamesOnly(line))
            {
                line = Stacked(line);
            }
            else
            {
                Row(line);
            }
        }

        return _groups;
    }

    private void Row(int line, params ImmutableArray<string> doubts)
    {
        var night = NightOf(lines[line]) ?? _night;
        _groups.AddRange(RowReader.Read(line, [.. lines[line].Where(item => item.Kind != ItemKind.Night)], night, doubts));
    }

    private string? NightOf(IEnumerable<Item> items)
    {
        var nights = items.Where(item => item.Kind == ItemKind.Night).Select(item => item.Text).Distinct().ToArray();
        foreach (var night in nights.Where(night => !Nights.Contains(night)))
        {
            Nights.Add(night);
        }

        return nights.Length == 1 ? nights[0] : null;
    }

    private static bool IsNightHeading(List<Item> items) => items.Any(item => item.Kind == ItemKind.Night)
        && items.All(item => item.Kind is ItemKind.Night or ItemKind.Date or ItemKind.Filler or ItemKind.Clause
            || (item.Kind == ItemKind.Name && item.Facts.All(fact => fact.Kind == FactKind.Date)));

    private bool IsDecoration(int line) => lines[line].All(item => item.Kind is ItemKind.Filler or ItemKind.Border or ItemKind.Clause && !item.Text.Any(char.IsLetter));

    private bool IsBlank(int line) => line < 0 || line >= lines.Count || lines[line].Count == 0;

    private bool IsNamesOnly(int line) => !IsBlank(line) && lines[line].Any(item => item.Kind == ItemKind.Name) && !lines[line].Any(RowReader.IsFigure);

    private bool IsFiguresOnly(int line) => !IsBlank(line) && lines[line].Any(RowReader.IsFigure) && !lines[line].Any(item => item.Kind is ItemKind.Name or ItemKind.Unknown or ItemKind.Aside);

    // Words, figure, words, figure: each pair belongs together. Two lines of words before the figures may mean another order.
    private int Stacked(int line)
    {
        var start = line;
        while (!IsBlank(start - 1))
        {
            start--;
        }

        var names = 1;
        while (IsNamesOnly(line + names))
        {
            names++;
        }

        var figures = 0;
        while (IsFiguresOnly(line + names + figures))
        {
            figures++;
        }

        var isClear = names == 1 && figures == 1 && !IsFiguresOnly(start) && !Enumerable.Range(start, line - start).Any(IsFiguresOnlyUnpaired);
        for (var pair = 0; pair < Math.Min(names, figures); pair++)
        {
            var (label, row) = (lines[line + pair], lines[line + names + pair]);
            var first = row.FindIndex(RowReader.IsFigure);
            _groups.Add(new Group(line + names + pair, [.. label.Where(item => item.Kind != ItemKind.Night), .. row[..first]], [.. row.Where(RowReader.IsFigure)],
                [.. row[first..].Where(item => !RowReader.IsFigure(item))], NightOf(label) ?? _night, isClear ? [] : [Doubts.Lines]));
        }

        return line + names + figures - 1;
    }

    private bool IsFiguresOnlyUnpaired(int line) => IsFiguresOnly(line) && !IsNamesOnly(line - 1);

    private bool IsHeading(int line)
    {
        var cells = Cells(lines[line]);
        var next = line + 1;
        while (next < lines.Count && lines[next].Count > 0 && IsDecoration(next))
        {
            next++;
        }

        return cells.Count > 1 && !lines[line].Any(item => RowReader.IsFigure(item) || item.IsSign(":") || item.IsSign("="))
            && cells.Skip(1).Any(cell => cell.Count > 0 && cell.All(item => item.Kind != ItemKind.Unknown))
            && next < lines.Count && lines[next].Any(RowReader.IsFigure) && Cells(lines[next]).Count > 1;
    }

    private int Table(int heading)
    {
        var heads = Cells(lines[heading]);
        NightOf(lines[heading]);
        var line = heading + 1;
        for (; !IsBlank(line) && !IsHeading(line) && !IsNightHeading(lines[line]); line++)
        {
            if (!lines[line].Any(RowReader.IsFigure))
            {
                continue;
            }

            var cells = Cells(lines[line]);
            var shift = cells.Count - heads.Count;
            if (shift is not (0 or 1))
            {
                Row(line, Doubts.Columns);
                continue;
            }

            Row(line, cells, [.. Enumerable.Repeat(new List<Item>(), shift), .. heads]);
        }

        return line - 1;
    }

    private void Row(int line, List<List<Item>> cells, List<List<Item>> heads)
    {
        for (var column = 0; column < cells.Count; column++)
        {
            var cell = cells[column];
            var first = cell.FindIndex(RowReader.IsFigure);
            if (first < 0)
            {
                continue;
            }

            var before = cells.Take(column).Where(other => !other.Any(RowReader.IsFigure)).SelectMany(other => other);
            var behind = cells.Skip(column + 1).Where(other => !other.Any(RowReader.IsFigure)).SelectMany(other => other);
            Item[] label = [.. before, .. heads[column], .. cell[..first]];
            if (label.Any(item => item.Kind == ItemKind.Name))
            {
                _groups.Add(new Group(line, [.. label.Where(item => item.Kind != ItemKind.Night)], [.. cell.Where(RowReader.IsFigure)],
                    [.. cell[first..].Where(item => !RowReader.IsFigure(item)), .. behind], NightOf(label) ?? _night, []));
            }
        }
    }

    // An upright line at either end is no border between cells.
    private static List<List<Item>> Cells(List<Item> items)
    {
        var cells = new List<List<Item>> { new() };
        foreach (var item in items)
        {
            if (item.Kind != ItemKind.Border)
            {
                cells[^1].Add(item);
            }
            else if (item.Start > 0 || cells[0].Count > 0)
            {
                cells.Add([]);
            }
        }

        if (cells.Count > 1 && cells[^1].Count == 0)
        {
            cells.RemoveAt(cells.Count - 1);
        }

        return cells;
    }
}

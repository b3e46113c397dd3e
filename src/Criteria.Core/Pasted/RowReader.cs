using System.Collections.Immutable;

namespace Criteria.Core.Pasted;

/// <summary>Puts the names and the figures of one line together.</summary>
internal static class RowReader
{
    public static IEnumerable<Group> Read(int line, IReadOnlyList<Item> all, string? night, params ImmutableArray<string> doubts)
    {
        var items = WithoutListNumber(WithoutAsides(all));
        var names = Places(items, item => item.Kind == ItemKind.Name);
        var figures = Places(items, IsFigure);
        if (names.Count == 0 || figures.Count == 0)
        {
            yield break;
        }

        if (figures[0] < names[0])
        {
            var clear = names.Count == 1 && figures[^1] < names[0];
            yield return new Group(line, items[(figures[^1] > names[^1] ? 0 : figures.Last(place => place < names[^1]) + 1)..], [.. figures.Select(place => items[place])],
                [.. items[..figures[^1]].Where(item => !IsFigure(item) && item.Kind != ItemKind.Name)], night, clear ? doubts : [.. doubts, Doubts.Order]);
            yield break;
        }

        var start = 0;
        for (var name = 0; name < names.Count; name++)
        {
            var end = name + 1 < names.Count ? names[name + 1] : items.Count;
            var own = figures.Where(place => place > names[name] && place < end).ToArray();
            if (own.Length == 0)
            {
                continue;
            }

            // Between the last figure and the next name: what is parted belongs to the next, what is not parted to both.
            var zone = Enumerable.Range(own[^1] + 1, end - own[^1] - 1).ToArray();
            var border = zone.FirstOrDefault(place => items[place].Kind is ItemKind.Border or ItemKind.Clause, -1);
            var tailEnd = end == items.Count || border < 0 ? end : border;
            var between = Enumerable.Range(own[0], own[^1] - own[0]).Where(place => !own.Contains(place));
            yield return new Group(line, items[start..own[0]], [.. own.Select(place => items[place])],
                [.. between.Concat(Enumerable.Range(own[^1] + 1, tailEnd - own[^1] - 1)).Select(place => items[place])], night, doubts);
            start = border < 0 ? own[^1] + 1 : border;
        }
    }

    public static bool IsFigure(Item item) => item.Kind is ItemKind.Value or ItemKind.Date;

    private static List<int> Places(List<Item> items, Func<Item, bool> isOne) => [.. Enumerable.Range(0, items.Count).Where(place => isOne(items[place]))];

    // `1. AHI`, `2) AHI`: the number of a line in a list.
    private static List<Item> WithoutListNumber(List<Item> items) =>
        items is [{ Kind: ItemKind.Value, Text.Length: < 3 } number, { } sign, ..] && number.Numbers[0].Units.IsEmpty && (sign.IsSign(".") || sign.IsSign(")")) && sign.Start == number.End ? items[2..] : items;

    // `(normal < 5)`, `(124 events)`: a figure of its own in brackets, with words of its own.
    private static List<Item> WithoutAsides(IReadOnlyList<Item> items)
    {
        var kept = items.ToList();
        for (var open = 0; open < kept.Count; open++)
        {
            var close = kept[open].IsSign("(") ? kept.FindIndex(open, item => item.IsSign(")")) : kept[open].IsSign("[") ? kept.FindIndex(open, item => item.IsSign("]")) : -1;
            if (close > open && kept[open..close].Any(IsFigure) && kept[open..close].Any(item => item.Kind is ItemKind.Aside or ItemKind.Unknown) && !kept[open..close].Any(item => item.Kind is ItemKind.Name or ItemKind.Rule))
            {
                kept.RemoveRange(open, close - open + 1);
            }
        }

        return kept;
    }
}

using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Turns a table into strips, one a row. The row of heads is repeated on each page; only a very tall row is parted.</summary>
internal sealed class TableBuilder(Flow flow, TextMeter meter, double textHeight, Func<ContainerInline?, List<TextWord>> cellWords, Func<ContainerInline?, List<TextWord>> headWords)
{
    private readonly LineBreaker _breaker = new(meter);
    private readonly List<TableColumnAlign?> _align = [];
    private double[] _widths = [];
    private double _left;

    /// <summary>Adds the table.</summary>
    public void Add(Table table, double left, double width)
    {
        var rows = table.OfType<TableRow>().Select(row => (row.IsHeader, Cells: row.OfType<TableCell>().Select(cell => Words(cell, row.IsHeader)).ToList())).Where(row => row.Cells.Count > 0).ToList();
        if (rows.Count == 0)
        {
            return;
        }

        _left = left;
        _widths = ColumnWidths.Share(_breaker.Demands([.. rows.Select(row => row.Cells)]), width);
        _align.AddRange(table.ColumnDefinitions.Select(column => column.Alignment).Concat(Enumerable.Repeat<TableColumnAlign?>(null, _widths.Length)).Take(_widths.Length));
        var before = flow.Strips.Count;
        flow.Open("Table");
        Rows([.. rows.Select(row => (row.IsHeader, Lines(row.Cells)))]);
        flow.Close();
        KeepShort(flow.Strips[before..]);
    }

    private void KeepShort(List<Strip> rows)
    {
        if (rows.Sum(row => row.Height) <= textHeight * PdfDesign.WholeTable)
        {
            rows[..^1].ForEach(row => row.KeepWithNext = true);
        }
    }

    private void Rows(IReadOnlyList<(bool IsHeader, List<List<Line>> Cells)> rows)
    {
        Strip? head = null;
        var body = 0;
        var count = rows.Count(row => !row.IsHeader);
        foreach (var (isHeader, cells) in rows)
        {
            if (isHeader)
            {
                var strip = Row(cells, true, true, null);
                head = strip.Height < textHeight * PdfDesign.WholeRow ? strip : null;
                flow.Open("THead");
                flow.Add(strip);
                flow.Close();
                strip.Before = Math.Max(strip.Before, PdfDesign.AroundRule);
                strip.KeepWithNext = count > 0;
                continue;
            }

            if (body++ == 0)
            {
                flow.Open("TBody");
            }

            flow.Add(Row(cells, false, body == count, head));

            // No single line stands alone under the heads or at the top of a page.
            flow.Strips[^1].KeepWithNext = (body == 1 && body < count && IsShort(cells)) || (body == count - 1 && IsShort(rows[^1].Cells));
        }

        if (count > 0)
        {
            flow.Close();
        }
    }

    private static bool IsShort(List<List<Line>> cells) => cells.TrueForAll(cell => cell.Count <= 1);

    private Strip Row(List<List<Line>> cells, bool isHeader, bool closes, Strip? head)
    {
        var style = isHeader ? PdfDesign.Head : PdfDesign.Cell;
        var lines = cells.Max(cell => cell.Count);
        var height = (lines * style.Leading) + (2 * PdfDesign.CellTop);
        var inks = new List<Ink>();
        if (isHeader)
        {
            inks.Add(new RuleInk(_left, 0, _widths.Sum(), PdfDesign.Thick));
        }

        inks.Add(new OpenInk("TR"));
        var x = _left;
        for (var i = 0; i < _widths.Length; i++)
        {
            inks.Add(isHeader ? new OpenInk("TH", "Column") : i == 0 ? new OpenInk("TH", "Row") : new OpenInk("TD"));
            inks.AddRange(i < cells.Count ? Cell(cells[i], style, i, x) : []);
            inks.Add(new CloseInk());
            x += _widths[i];
        }

        inks.Add(new CloseInk());
        inks.Add(new RuleInk(_left, height, _widths.Sum(), closes ? PdfDesign.Thick : PdfDesign.Thin));
        return new Strip
        {
            Inks = inks,
            Height = height,
            Head = head,
            Split = !isHeader && height > textHeight * PdfDesign.WholeRow ? room => Split(cells, closes, head, room) : null,
        };
    }

    private IEnumerable<Ink> Cell(List<Line> lines, TextStyle style, int column, double x)
    {
        var room = _widths[column] - (2 * PdfDesign.CellSide);
        for (var i = 0; i < lines.Count; i++)
        {
            var shift = _align[column] switch
            {
                TableColumnAlign.Right => room - lines[i].Width,
                TableColumnAlign.Center => (room - lines[i].Width) / 2,
                _ => 0,
            };
            foreach (var ink in TextSetter.Set(lines[i], x + PdfDesign.CellSide + Math.Max(0, shift), PdfDesign.CellTop + (i * style.Leading) + style.BaseLine, meter))
            {
                yield return ink;
            }
        }
    }

    private (Strip First, Strip Second)? Split(List<List<Line>> cells, bool closes, Strip? head, double room)
    {
        var fits = (int)Math.Floor((room - (2 * PdfDesign.CellTop)) / PdfDesign.Cell.Leading);
        var all = cells.Max(cell => cell.Count);
        if (fits < 2 || all < 2 + 2)
        {
            return null;
        }

        fits = Math.Min(fits, all - 2);
        return (Row([.. cells.Select(cell => cell.Take(fits).ToList())], false, false, head), Row([.. cells.Select(cell => cell.Skip(fits).ToList())], false, closes, head));
    }

    private List<List<Line>> Lines(List<List<TextWord>> cells) => [.. cells.Select((cell, i) => _breaker.Break(cell, _widths[i] - (2 * PdfDesign.CellSide)))];

    private List<TextWord> Words(TableCell cell, bool isHeader) => [.. cell.OfType<ParagraphBlock>().SelectMany(paragraph => (isHeader ? headWords : cellWords)(paragraph.Inline))];
}

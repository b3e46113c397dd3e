using Criteria.Documents.Renderers.Pdf;
using DocumentFormat.OpenXml.Wordprocessing;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using TableCell = Markdig.Extensions.Tables.TableCell;
using TableRow = Markdig.Extensions.Tables.TableRow;

namespace Criteria.Documents.Renderers.Word;

/// <summary>A table of a Word file: its row of heads is repeated on each page, and no row is parted.</summary>
internal sealed class WordTable(DocumentPage page, WordInlines inlines, TextMeter meter)
{
    /// <summary>The table.</summary>
    public DocumentFormat.OpenXml.Wordprocessing.Table Of(Markdig.Extensions.Tables.Table table, double width)
    {
        var widths = Widths(table, width);
        var made = new DocumentFormat.OpenXml.Wordprocessing.Table(
            new TableProperties(
                new TableStyle { Val = WordStyles.Table },
                new TableWidth { Width = WordMeasures.Length(widths.Sum()), Type = TableWidthUnitValues.Dxa },
                new TableLayout { Type = TableLayoutValues.Fixed },
                new TableLook { Val = "0020", FirstRow = true, LastRow = false, FirstColumn = false, LastColumn = false, NoHorizontalBand = true, NoVerticalBand = true }),
            new TableGrid(widths.Select(column => new GridColumn { Width = WordMeasures.Length(column) })));
        foreach (var row in table.OfType<TableRow>())
        {
            var keeps = row.IsHeader || (table.Count <= WordMeasures.WholeTable && row != table.LastChild);
            made.AppendChild(Row(row, table, widths, keeps));
        }

        return made;
    }

    private DocumentFormat.OpenXml.Wordprocessing.TableRow Row(TableRow row, Markdig.Extensions.Tables.Table table, double[] widths, bool keeps)
    {
        var properties = new TableRowProperties(new CantSplit());
        if (row.IsHeader)
        {
            properties.AppendChild(new TableHeader());
        }

        var made = new DocumentFormat.OpenXml.Wordprocessing.TableRow(properties);
        for (var i = 0; i < widths.Length; i++)
        {
            var align = i < table.ColumnDefinitions.Count ? table.ColumnDefinitions[i].Alignment : null;
            made.AppendChild(new DocumentFormat.OpenXml.Wordprocessing.TableCell(
                new TableCellProperties(new TableCellWidth { Width = WordMeasures.Length(widths[i]), Type = TableWidthUnitValues.Dxa }),
                Paragraph(i < row.Count ? (TableCell)row[i] : null, align, keeps)));
        }

        return made;
    }

    private Paragraph Paragraph(TableCell? cell, TableColumnAlign? align, bool keeps)
    {
        var properties = new ParagraphProperties(new ParagraphStyleId { Val = WordStyles.TableText });
        if (keeps)
        {
            properties.AddChild(new KeepNext());
        }

        if (align is TableColumnAlign.Right or TableColumnAlign.Center)
        {
            properties.AddChild(new Justification { Val = align == TableColumnAlign.Right ? JustificationValues.Right : JustificationValues.Center });
        }

        return new Paragraph([properties, .. cell?.OfType<ParagraphBlock>().SelectMany(paragraph => inlines.Runs(paragraph.Inline)) ?? []]);
    }

    private double[] Widths(Markdig.Extensions.Tables.Table table, double width)
    {
        var glyphs = new Glyphs(meter);
        return ColumnWidths.Share(new LineBreaker(meter).Demands([.. table.OfType<TableRow>().Select(row => (IReadOnlyList<IReadOnlyList<TextWord>>)[.. row.OfType<TableCell>()
            .Select(cell => cell.OfType<ParagraphBlock>().SelectMany(paragraph => WordReader.Read(paragraph.Inline, page, glyphs, row.IsHeader ? PdfDesign.Head : PdfDesign.Cell)).ToList())])]), width);
    }
}

using System.Globalization;
using Criteria.Documents.Renderers.Pdf;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Renderers.Word;

/// <summary>The styles of a Word file. Changing one there changes all text set in it.</summary>
internal static class WordStyles
{
    /// <summary>Running text.</summary>
    public const string Normal = "Normal";

    /// <summary>An item of a list.</summary>
    public const string ListItem = "ListParagraph";

    /// <summary>A quotation.</summary>
    public const string Quote = "Quote";

    /// <summary>A table.</summary>
    public const string Table = "CriteriaTable";

    /// <summary>Text in a table.</summary>
    public const string TableText = "TableText";

    /// <summary>Running header.</summary>
    public const string Header = "Header";

    /// <summary>Running footer, and the versions at the end.</summary>
    public const string Footer = "Footer";

    /// <summary>A reason at the end.</summary>
    public const string Note = "Reason";

    /// <summary>An item of a list in a reason.</summary>
    public const string NoteItem = "ReasonItem";

    /// <summary>The mark of a reason.</summary>
    public const string Mark = "ReasonMark";

    /// <summary>A line across the page.</summary>
    public const string Rule = "Rule";

    /// <summary>The style of a heading.</summary>
    public static string Heading(int level) => string.Create(CultureInfo.InvariantCulture, $"Heading{level}");

    /// <summary>All styles.</summary>
    public static Styles All(string language) => new(
        Defaults(language),
        Paragraph(Normal, "Normal", PdfDesign.Body, Spacing(PdfDesign.Body.Before), isDefault: true),
        HeadingStyle(1, PdfDesign.Title),
        HeadingStyle(2, PdfDesign.Heading(2)),
        HeadingStyle(3, PdfDesign.Heading(3)),
        HeadingStyle(4, PdfDesign.Heading(4)),
        Paragraph(ListItem, "List Paragraph", PdfDesign.Item, Spacing(PdfDesign.Item.Before)),
        Paragraph(Quote, "Quote", PdfDesign.Body, Spacing(PdfDesign.Body.Before), new Indentation { Left = WordMeasures.Length(PdfDesign.QuoteIndent), Right = WordMeasures.Length(PdfDesign.QuoteIndent) }),
        Paragraph(TableText, "Table Text", PdfDesign.Cell, Spacing(2 * PdfDesign.CellTop)),
        Paragraph(Rule, "Rule", PdfDesign.Small, Spacing(PdfDesign.AroundRule), new ParagraphBorders(Border<BottomBorder>(PdfDesign.Thin))),
        Paragraph(Header, "header", PdfDesign.Small, Spacing(0)),
        Paragraph(Footer, "footer", PdfDesign.Small, Spacing(0)),
        Paragraph(Note, "Reason", PdfDesign.Note, Spacing(PdfDesign.Note.Before)),
        Paragraph(NoteItem, "Reason Item", PdfDesign.NoteItem, Spacing(PdfDesign.NoteItem.Before)),
        new Style(new StyleName { Val = "Reason Mark" }, new StyleRunProperties(new VerticalTextAlignment { Val = VerticalPositionValues.Superscript }))
        {
            Type = StyleValues.Character,
            StyleId = Mark,
        },
        TableStyle());

    /// <summary>A border of a thickness, in black.</summary>
    public static T Border<T>(double points)
        where T : BorderType, new() => new() { Val = BorderValues.Single, Size = WordMeasures.Line(points), Space = 1, Color = "000000" };

    private static DocDefaults Defaults(string language) => new(
        new RunPropertiesDefault(new RunPropertiesBaseStyle(
            new RunFonts { Ascii = WordMeasures.Font, HighAnsi = WordMeasures.Font, ComplexScript = WordMeasures.Font, EastAsia = WordMeasures.Font },
            new FontSize { Val = WordMeasures.Size(PdfDesign.Body.Size) },
            new Languages { Val = language })),
        new ParagraphPropertiesDefault(new ParagraphPropertiesBaseStyle(new WidowControl())));

    private static Style HeadingStyle(int level, TextStyle style) => new(
        new StyleName { Val = string.Create(CultureInfo.InvariantCulture, $"heading {level}") },
        new BasedOn { Val = Normal },
        new NextParagraphStyle { Val = Normal },
        new PrimaryStyle(),
        new StyleParagraphProperties(new KeepNext(), new KeepLines(), new SpacingBetweenLines { Before = WordMeasures.Length(style.Before), After = WordMeasures.Length(PdfDesign.Body.Before / 2) }, new OutlineLevel { Val = level - 1 }),
        new StyleRunProperties(new Bold(), new FontSize { Val = WordMeasures.Size(style.Size) }))
    {
        Type = StyleValues.Paragraph,
        StyleId = Heading(level),
    };

    private static Style Paragraph(string id, string name, TextStyle style, SpacingBetweenLines spacing, OpenXmlElement? more = null, bool isDefault = false)
    {
        var properties = new StyleParagraphProperties();
        properties.AddChild(spacing);
        if (more is not null)
        {
            properties.AddChild(more);
        }

        var made = new Style { Type = StyleValues.Paragraph, StyleId = id };
        made.AddChild(new StyleName { Val = name });
        if (isDefault)
        {
            made.Default = true;
        }
        else
        {
            made.AddChild(new BasedOn { Val = Normal });
        }

        made.AddChild(new PrimaryStyle());
        made.AddChild(properties);
        made.AddChild(new StyleRunProperties(new FontSize { Val = WordMeasures.Size(style.Size) }));
        return made;
    }

    private static Style TableStyle() => new(
        new StyleName { Val = "Criteria Table" },
        new StyleTableProperties(
            new TableBorders(Border<TopBorder>(PdfDesign.Thick), Border<BottomBorder>(PdfDesign.Thick), Border<InsideHorizontalBorder>(PdfDesign.Thin)),
            new TableCellMarginDefault(
                new TableCellLeftMargin { Width = (short)WordMeasures.Count(PdfDesign.CellSide), Type = TableWidthValues.Dxa },
                new TableCellRightMargin { Width = (short)WordMeasures.Count(PdfDesign.CellSide), Type = TableWidthValues.Dxa })),
        new TableStyleProperties(
            new RunPropertiesBaseStyle(new Bold()),
            new TableStyleConditionalFormattingTableCellProperties(new TableCellBorders(Border<BottomBorder>(PdfDesign.Thick))))
        {
            Type = TableStyleOverrideValues.FirstRow,
        })
    {
        Type = StyleValues.Table,
        StyleId = Table,
    };

    // Half above and half below: a table that follows stands off too.
    private static SpacingBetweenLines Spacing(double between) => new() { Before = WordMeasures.Length(between / 2), After = WordMeasures.Length(between / 2) };
}

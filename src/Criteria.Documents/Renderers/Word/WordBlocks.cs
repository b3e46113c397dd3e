using Criteria.Documents.Renderers.Pdf;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Table = Markdig.Extensions.Tables.Table;

namespace Criteria.Documents.Renderers.Word;

/// <summary>Turns the blocks of the text into the paragraphs and tables of a Word file.</summary>
internal sealed class WordBlocks(DocumentPage page, MainDocumentPart part, WordNumbering numbering, double width, double height)
{
    private readonly WordInlines _inlines = new(page);
    private readonly TextMeter _meter = new();
    private uint _figures;

    /// <summary>How the paragraphs of some blocks are set.</summary>
    /// <param name="Style">The style of paragraphs.</param>
    /// <param name="Level">How many lists they stand in.</param>
    public sealed record Place(string Style, int Level);

    /// <summary>The blocks.</summary>
    public IEnumerable<OpenXmlElement> Blocks(ContainerBlock container, Place place) => container.SelectMany(block => Block(block, place));

    private IEnumerable<OpenXmlElement> Block(Block block, Place place) => block switch
    {
        HeadingBlock heading => [Paragraph(WordStyles.Heading(Math.Clamp(heading.Level, 2, 2 + 2)), _inlines.Runs(heading.Inline))],
        ParagraphBlock { Inline: { FirstChild: LinkInline { IsImage: true, NextSibling: null } image } } when Inlines.Figure(image, page) is { } figure => [Figure(figure, place)],
        ParagraphBlock { Inline: { } words } when !IsLinkBack(words) => [Paragraph(place.Style, _inlines.Runs(words), Indent(place.Level))],
        ListBlock list => List(list, place),
        Table { Count: > 0 } table => [new WordTable(page, _inlines, _meter).Of(table, width), Paragraph(WordStyles.Footer, [])],
        ThematicBreakBlock => [Paragraph(WordStyles.Rule, [])],
        QuoteBlock quote => Blocks(quote, place with { Style = WordStyles.Quote }),
        FootnoteGroup notes => WordNotes.Of(notes, this),
        _ => [],
    };

    private IEnumerable<OpenXmlElement> List(ListBlock list, Place place)
    {
        var level = Math.Min(place.Level, WordMeasures.ListLevels - 1);
        var number = numbering.Add(list.IsOrdered, level, int.TryParse(list.OrderedStart, System.Globalization.CultureInfo.InvariantCulture, out var start) ? start : 1);
        var label = new NumberingProperties(new NumberingLevelReference { Val = level }, new NumberingId { Val = number });
        var style = place.Style is WordStyles.Note or WordStyles.NoteItem ? WordStyles.NoteItem : WordStyles.ListItem;
        var inner = new Place(style, place.Level + 1);
        foreach (var item in list.OfType<ListItemBlock>())
        {
            var first = item.FirstOrDefault() as ParagraphBlock;
            yield return Paragraph(style, _inlines.Runs(first?.Inline), (NumberingProperties)label.CloneNode(true));
            foreach (var element in item.Where(block => block != first).SelectMany(block => Block(block, inner)))
            {
                yield return element;
            }
        }
    }

    private Paragraph Figure(DocumentFigure figure, Place place)
    {
        if (figure.Png.IsDefaultOrEmpty)
        {
            return Paragraph(place.Style, [WordInlines.Run($"[Figure: {figure.Alternative}]", italic: true)], Indent(place.Level));
        }

        _figures++;
        var id = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"figure{_figures}");
        var image = part.AddImagePart(ImagePartType.Png, id);
        using var stream = new MemoryStream([.. figure.Png]);
        image.FeedData(stream);
        return Paragraph(place.Style, [WordPicture.Of(figure, id, _figures, width, height * PdfDesign.WholeRow)]);
    }

    /// <summary>A paragraph in a style.</summary>
    public static Paragraph Paragraph(string style, IEnumerable<OpenXmlElement> runs, OpenXmlElement? more = null)
    {
        var properties = new ParagraphProperties(new ParagraphStyleId { Val = style });
        if (more is not null)
        {
            properties.AddChild(more);
        }

        return new Paragraph([properties, .. runs]);
    }

    private static Indentation? Indent(int level) => level == 0 ? null : new Indentation { Left = WordMeasures.Length(level * WordMeasures.ListStep) };

    private static bool IsLinkBack(ContainerInline words) => words.All(inline => inline is FootnoteLink { IsBackLink: true });
}

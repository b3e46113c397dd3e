using System.Globalization;
using Markdig.Extensions.Footnotes;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Turns the blocks of the text into strips.</summary>
internal sealed class FlowBuilder(DocumentPage page, Flow flow, TextMeter meter, double textHeight)
{
    private readonly Glyphs _glyphs = new(meter);
    private readonly LineBreaker _breaker = new(meter);

    /// <summary>Where blocks stand and how their text is set.</summary>
    /// <param name="Left">From the left edge of the text area.</param>
    /// <param name="Width">How wide they may be.</param>
    /// <param name="Text">The style of paragraphs.</param>
    /// <param name="Item">The style of list items.</param>
    /// <param name="Depth">How many lists they stand in.</param>
    private sealed record Place(double Left, double Width, TextStyle Text, TextStyle Item, int Depth);

    /// <summary>The whole document: title, text, versions.</summary>
    public void Document(double width)
    {
        var place = new Place(0, width, PdfDesign.Body, PdfDesign.Item, 0);
        Lines("H1", WordReader.Read(page.Title, page, _glyphs, PdfDesign.Title), PdfDesign.Title, place, keep: true);
        Blocks(MarkdownTree.Parse(page.Markdown), place);
        Rule(place);
        var versions = $"Rules: {string.Join(", ", page.Rulesets)}. {page.Program}.";
        Lines("P", WordReader.Read(versions, page, _glyphs, PdfDesign.Small), PdfDesign.Small with { Before = 0 }, place, keep: false);
    }

    private void Blocks(ContainerBlock container, Place place)
    {
        for (var i = 0; i < container.Count; i++)
        {
            Block(container[i], place, i + 1 < container.Count ? container[i + 1] : null);
        }
    }

    private void Block(Block block, Place place, Block? next)
    {
        switch (block)
        {
            case HeadingBlock { Inline: { FirstChild: not null } words } heading:
                Heading(heading.Level, words, place);
                break;
            case ParagraphBlock { Inline: { FirstChild: LinkInline { IsImage: true, NextSibling: null } image } } when Inlines.Figure(image, page) is { } figure:
                Figure(figure, place);
                break;
            case ParagraphBlock { Inline: { FirstChild: not null } words }:
                Lines("P", Words(words, place.Text), place.Text, place, keep: Announces(words, next));
                break;
            case ListBlock list:
                List(list, place);
                break;
            case Table table:
                new TableBuilder(flow, meter, textHeight, inline => Words(inline, PdfDesign.Cell), inline => Words(inline, PdfDesign.Head)).Add(table, place.Left, place.Width);
                flow.Gap(PdfDesign.Below);
                break;
            case ThematicBreakBlock:
                Rule(place);
                break;
            case QuoteBlock quote:
                flow.Open("BlockQuote");
                Blocks(quote, place with { Left = place.Left + PdfDesign.QuoteIndent, Width = place.Width - (2 * PdfDesign.QuoteIndent) });
                flow.Close();
                break;
            case FootnoteGroup notes:
                Notes(notes, place);
                break;
        }
    }

    // A sentence that announces a list or a table stays with it, and so does the first line of a reason.
    private static bool Announces(ContainerInline words, Block? next) => next is ListBlock or Table
        && (next.Parent is Footnote || (words.LastChild is LiteralInline last && last.Content.ToString().EndsWith(':')));

    private void Heading(int level, ContainerInline words, Place place)
    {
        var style = PdfDesign.Heading(level);
        flow.Beside(new OutlineInk(_glyphs.Shown(Inlines.Text(words, page)), level));
        Lines(string.Create(CultureInfo.InvariantCulture, $"H{level}"), Words(words, style), style, place, keep: true);
    }

    private void List(ListBlock list, Place place)
    {
        var items = list.OfType<ListItemBlock>().ToList();
        var first = int.TryParse(list.OrderedStart, CultureInfo.InvariantCulture, out var start) ? start : 1;
        var labels = items.Select((_, i) => list.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"{first + i}.") : place.Depth % 2 == 0 ? "\u2022" : "\u2013").ToList();
        Items([.. items.Zip(labels)], place.Item, place with { Text = place.Item, Depth = place.Depth + 1 });
    }

    private void Notes(FootnoteGroup notes, Place place) =>
        Items([.. notes.OfType<Footnote>().Select(note => ((ContainerBlock)note, string.Create(CultureInfo.InvariantCulture, $"[{note.Order}]")))],
            PdfDesign.Note, place with { Text = PdfDesign.Note, Item = PdfDesign.NoteItem });

    private void Items(IReadOnlyList<(ContainerBlock Item, string Label)> items, TextStyle style, Place place)
    {
        var indent = items.Select(item => meter.Width(item.Label, style.Face, style.Size)).Append(PdfDesign.LabelLeast - PdfDesign.LabelGap).Max() + PdfDesign.LabelGap;
        var inner = place with { Left = place.Left + indent, Width = place.Width - indent };
        flow.Open("L");
        for (var i = 0; i < items.Count; i++)
        {
            var (item, label) = items[i];
            flow.Open("LI");
            if (item is Footnote note)
            {
                flow.Beside(new AnchorInk(note.Order));
            }

            flow.Open("Lbl");
            flow.Beside(new TextInk(new Run(label, style.Face, style.Size, 0), place.Left, style.BaseLine));
            flow.Close();
            flow.Open("LBody");
            var before = flow.Strips.Count;
            Blocks(item, inner);
            if (flow.Strips.Count == before)
            {
                flow.Add(new Strip { Height = style.Leading });
            }

            flow.Strips[before].Before = Math.Max(flow.Strips[before].Before, style.Before);

            // A first or last item of one line does not stand alone on a page.
            if (flow.Strips.Count - before == 1 && items.Count > 1 && (i == 0 || i == items.Count - 2))
            {
                flow.Strips[^1].KeepWithNext = true;
            }

            flow.Close();
            flow.Close();
        }

        flow.Close();
    }

    private void Lines(string tag, IReadOnlyList<TextWord> words, TextStyle style, Place place, bool keep)
    {
        if (words.Count == 0)
        {
            return; // such as the links back that end a note
        }

        var lines = _breaker.Break(words, place.Width);
        flow.Open(tag);
        for (var i = 0; i < lines.Count; i++)
        {
            flow.Add(new Strip
            {
                Inks = [.. TextSetter.Set(lines[i], place.Left, style.BaseLine, meter)],
                Height = style.Leading,
                Before = i == 0 ? style.Before : 0,

                // The first two lines and the last two stay together.
                KeepWithNext = i == lines.Count - 1 ? keep : keep || i == 0 || i == lines.Count - 2,
            });
        }

        flow.Close();
    }

    private void Figure(DocumentFigure figure, Place place)
    {
        if (figure.Png.IsDefaultOrEmpty)
        {
            Lines("P", WordReader.Read($"[Figure: {figure.Alternative}]", page, _glyphs, place.Text with { Face = Face.Italic }), place.Text, place, keep: false);
            return;
        }

        var (width, height) = Pictures.SizeOf(figure, place.Width, textHeight * PdfDesign.WholeRow);
        flow.Add(new Strip { Inks = [new PictureInk(figure, place.Left, width, height)], Height = height, Before = PdfDesign.AroundRule });
        flow.Gap(PdfDesign.Below);
    }

    private void Rule(Place place) => flow.Add(new Strip
    {
        Inks = [new RuleInk(place.Left, PdfDesign.AroundRule, place.Width, PdfDesign.Thin)],
        Height = 2 * PdfDesign.AroundRule,
        Before = PdfDesign.AroundRule,
        KeepWithNext = true,
    });

    private List<TextWord> Words(ContainerInline? inline, TextStyle style) => WordReader.Read(inline, page, _glyphs, style);
}

using System.Globalization;
using System.Text;
using Criteria.Documents.Wording;
using Markdig.Extensions.Footnotes;
using Markdig.Extensions.Tables;
using Markdig.Syntax;

namespace Criteria.Documents.Renderers;

/// <summary>Plain text for any chart box: 80 columns, case key and study date on top, seven bits on request.</summary>
/// <param name="ascii">Whether to use characters of seven bits only.</param>
internal sealed class PlainTextRenderer(bool ascii) : IRenderer
{
    /// <inheritdoc/>
    public string Format => "text";

    /// <inheritdoc/>
    public string Extension => ".txt";

    /// <inheritdoc/>
    public byte[] Render(DocumentPage page)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var sheet = new Sheet(page, new PlainText(writer), ascii);
        sheet.Write();
        return Encoding.UTF8.GetBytes(writer.ToString());
    }

    private sealed class Sheet(DocumentPage page, PlainText text, bool ascii)
    {
        private const int Step = 2;

        public void Write()
        {
            text.Spread(Safe($"{page.KeyWord.ToUpperInvariant()} {page.CaseKey}"), Safe(page.StateWords));
            text.Hanging("", Safe($"{page.Title}{(page.Study.Length > 0 ? $". {Words.Capital(page.Study)}" : "")}."), 0);
            foreach (var block in MarkdownTree.Parse(page.Markdown))
            {
                Block(block, 0);
            }

            text.Line();
            text.Line(new string('-', PlainText.Width));
            text.Hanging("", Safe(Foot.Of(page)), 0);
        }

        private void Block(Block block, int indent)
        {
            switch (block)
            {
                case HeadingBlock { Level: <= 2 } heading:
                    text.Part(Safe(Inlines.Text(heading.Inline, page)).ToUpperInvariant());
                    break;
                case HeadingBlock heading:
                    text.Line();
                    text.Hanging("", Safe(Inlines.Text(heading.Inline, page)), 0);
                    break;
                case ParagraphBlock paragraph when Inlines.Text(paragraph.Inline, page).Length > 0:
                    Gap(block, indent);
                    Lines("", Inlines.Text(paragraph.Inline, page), indent);
                    break;
                case ListBlock list:
                    Gap(block, indent);
                    Items(list, indent);
                    break;
                case Table table:
                    text.Line();
                    foreach (var line in TextTable.Lines([.. table.OfType<TableRow>().Select(Cells)], PlainText.Width))
                    {
                        text.Line(line);
                    }

                    break;
                case ThematicBreakBlock:
                    text.Line();
                    text.Line(new string('-', PlainText.Width));
                    break;
                case QuoteBlock quote:
                    Inner(quote, indent + Step);
                    break;
                case FootnoteGroup notes:
                    foreach (var note in notes.OfType<Footnote>())
                    {
                        text.Line();
                        Item($"[{note.Order.ToString(CultureInfo.InvariantCulture)}]", note, 0);
                    }

                    break;
            }
        }

        // A paragraph is set apart from what comes before it, but not from the heading that it stands under.
        private void Gap(Block block, int indent)
        {
            var at = block.Parent!.IndexOf(block);
            if (indent == 0 && at > 0 && block.Parent[at - 1] is not HeadingBlock)
            {
                text.Line();
            }
        }

        private void Items(ListBlock list, int indent)
        {
            var number = int.TryParse(list.OrderedStart, CultureInfo.InvariantCulture, out var start) ? start : 1;
            foreach (var item in list.OfType<ListItemBlock>())
            {
                Item($"{new string(' ', indent)}  {(list.IsOrdered ? $"{(number++).ToString(CultureInfo.InvariantCulture)}." : "*")}", item, indent);
            }
        }

        private void Item(string lead, ContainerBlock item, int indent)
        {
            var inner = Math.Max(indent + Step + Step, lead.Length + 1);
            for (var i = 0; i < item.Count; i++)
            {
                if (i == 0 && item[i] is ParagraphBlock first)
                {
                    Lines(lead, Inlines.Text(first.Inline, page), inner);
                }
                else
                {
                    Block(item[i], inner);
                }
            }
        }

        private void Inner(ContainerBlock container, int indent)
        {
            foreach (var block in container)
            {
                Block(block, indent);
            }
        }

        private void Lines(string lead, string words, int indent)
        {
            foreach (var line in Safe(words).Split('\n'))
            {
                text.Hanging(lead, line, indent);
                lead = "";
            }
        }

        private string[] Cells(TableRow row) =>
            [.. row.OfType<TableCell>().Select(cell => Safe(string.Join(' ', cell.OfType<ParagraphBlock>().Select(paragraph => Inlines.Text(paragraph.Inline, page)))).Replace('\n', ' '))];

        private string Safe(string words) => ascii ? SevenBits.Of(words) : words;
    }
}

using System.Globalization;
using System.Net;
using System.Text;
using Markdig.Extensions.Footnotes;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Criteria.Documents.Renderers;

/// <summary>One HTML file that needs nothing else: language, headings in order, table headers with their scope, text for every figure.</summary>
internal sealed class HtmlRenderer : IRenderer
{
    /// <inheritdoc/>
    public string Format => "html";

    /// <inheritdoc/>
    public string Extension => ".html";

    /// <inheritdoc/>
    public byte[] Render(DocumentPage page) => Encoding.UTF8.GetBytes(new Sheet(page).Write());

    private sealed class Sheet(DocumentPage page)
    {
        private readonly StringBuilder _html = new();

        public string Write()
        {
            var paper = page.Paper == Paper.A4 ? "A4" : "letter";
            _html.Append(CultureInfo.InvariantCulture, $"""
                <!DOCTYPE html>
                <html lang="{Safe(page.Language)}">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta name="generator" content="{Safe(page.Program)}">
                <meta name="dcterms.identifier" content="{Safe(page.Id)}">
                <title>{Safe(page.Title)}, {Safe(page.KeyWord.ToLowerInvariant())} {Safe(page.CaseKey)}, {Safe(page.StateWords)}</title>
                <style>
                {HtmlStyle.Text.Replace("PAPER", paper, StringComparison.Ordinal)}</style>
                </head>
                <body>
                <header>
                <p><span>{Safe(page.KeyWord)} {Safe(page.CaseKey)}</span> <span>{Safe(Wording.Words.Capital(page.Study))}</span> <strong>{Safe(page.StateWords)}</strong></p>
                </header>
                <main>
                <h1>{Safe(page.Title)}</h1>

                """);
            foreach (var block in MarkdownTree.Parse(page.Markdown))
            {
                Block(block);
            }

            _html.Append(CultureInfo.InvariantCulture, $"</main>\n<footer>\n<p>{Safe(Foot.Of(page))}</p>\n</footer>\n</body>\n</html>\n");
            return _html.ToString().ReplaceLineEndings("\n");
        }

        private void Block(Block block)
        {
            switch (block)
            {
                case HeadingBlock heading:
                    Element($"h{Math.Max(2, heading.Level).ToString(CultureInfo.InvariantCulture)}", heading.Inline);
                    break;
                case ParagraphBlock { Inline: { } only } when only.FirstChild is LinkInline { IsImage: true, NextSibling: null } image:
                    Figure(image);
                    break;
                case ParagraphBlock paragraph when Inlines.Text(paragraph.Inline, page).Length > 0:
                    Element("p", paragraph.Inline);
                    break;
                case ListBlock list:
                    List(list);
                    break;
                case Table table:
                    TableOf(table);
                    break;
                case ThematicBreakBlock:
                    _html.Append("<hr>\n");
                    break;
                case QuoteBlock quote:
                    _html.Append("<blockquote>\n");
                    Inner(quote);
                    _html.Append("</blockquote>\n");
                    break;
                case FootnoteGroup notes:
                    Notes(notes);
                    break;
            }
        }

        private void Inner(ContainerBlock container)
        {
            foreach (var block in container)
            {
                Block(block);
            }
        }

        private void List(ListBlock list)
        {
            var name = list.IsOrdered ? "ol" : "ul";
            _html.Append(CultureInfo.InvariantCulture, $"<{name}>\n");
            foreach (var item in list.OfType<ListItemBlock>())
            {
                _html.Append("<li>");
                if (item is [ParagraphBlock only])
                {
                    Words(only.Inline);
                }
                else
                {
                    Inner(item);
                }

                _html.Append("</li>\n");
            }

            _html.Append(CultureInfo.InvariantCulture, $"</{name}>\n");
        }

        // The first cell of a row names it.
        private void TableOf(Table table)
        {
            _html.Append("<table>\n");
            var inBody = false;
            foreach (var row in table.OfType<TableRow>())
            {
                if (!row.IsHeader && !inBody)
                {
                    _html.Append("<tbody>\n");
                    inBody = true;
                }

                _html.Append(row.IsHeader ? "<thead>\n<tr>" : "<tr>");
                for (var i = 0; i < row.Count; i++)
                {
                    var (open, close) = row.IsHeader ? ("<th scope=\"col\">", "</th>") : i == 0 ? ("<th scope=\"row\">", "</th>") : ("<td>", "</td>");
                    _html.Append(open);
                    foreach (var paragraph in ((TableCell)row[i]).OfType<ParagraphBlock>())
                    {
                        Words(paragraph.Inline);
                    }

                    _html.Append(close);
                }

                _html.Append(row.IsHeader ? "</tr>\n</thead>\n" : "</tr>\n");
            }

            _html.Append(inBody ? "</tbody>\n</table>\n" : "</table>\n");
        }

        private void Notes(FootnoteGroup notes)
        {
            _html.Append("<ol class=\"why\">\n");
            foreach (var note in notes.OfType<Footnote>())
            {
                _html.Append(CultureInfo.InvariantCulture, $"<li id=\"why-{note.Order}\" value=\"{note.Order}\">");
                Inner(note);
                _html.Append("</li>\n");
            }

            _html.Append("</ol>\n");
        }

        private void Figure(LinkInline image)
        {
            if (Inlines.Figure(image, page) is not { } figure)
            {
                Element("p", image);
                return;
            }

            _html.Append(CultureInfo.InvariantCulture, $"<figure role=\"img\" aria-label=\"{Safe(figure.Alternative)}\">\n{figure.Svg}\n</figure>\n");
        }

        private void Element(string name, ContainerInline? inline)
        {
            _html.Append(CultureInfo.InvariantCulture, $"<{name}>");
            Words(inline);
            _html.Append(CultureInfo.InvariantCulture, $"</{name}>\n");
        }

        private void Words(ContainerInline? container)
        {
            foreach (var inline in container ?? [])
            {
                Word(inline);
            }
        }

        private void Word(Inline inline)
        {
            switch (inline)
            {
                case EmphasisInline emphasis:
                    var name = emphasis.DelimiterCount > 1 ? "strong" : "em";
                    _html.Append(CultureInfo.InvariantCulture, $"<{name}>");
                    Words(emphasis);
                    _html.Append(CultureInfo.InvariantCulture, $"</{name}>");
                    break;
                case CodeInline code:
                    _html.Append(CultureInfo.InvariantCulture, $"<code>{Safe(code.Content)}</code>");
                    break;
                case LineBreakInline line:
                    _html.Append(line.IsHard ? "<br>\n" : "\n");
                    break;
                case FootnoteLink { IsBackLink: false } mark:
                    _html.Append(CultureInfo.InvariantCulture, $"<sup><a href=\"#why-{mark.Footnote.Order}\" aria-label=\"reason {mark.Footnote.Order}\">{mark.Footnote.Order}</a></sup> ");
                    break;
                case FootnoteLink:
                    break;
                case LinkInline { IsImage: true } image:
                    _html.Append(Safe(Inlines.Figure(image, page)?.Alternative ?? Inlines.Text(image, page)));
                    break;
                case LiteralInline literal:
                    _html.Append(Safe(literal.Content.ToString()));
                    break;
                case HtmlEntityInline entity:
                    _html.Append(Safe(entity.Transcoded.ToString()));
                    break;
                case AutolinkInline link:
                    _html.Append(Safe(link.Url));
                    break;
                case ContainerInline inner:
                    Words(inner);
                    break;
            }
        }

        private static string Safe(string text) => WebUtility.HtmlEncode(text);
    }
}

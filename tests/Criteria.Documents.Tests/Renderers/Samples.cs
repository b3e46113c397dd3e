using System.Text;
using Criteria.Documents.Renderers;
using Criteria.Documents.Tests.Support;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax;

namespace Criteria.Documents.Tests.Renderers;

/// <summary>Pages to be set, and what has to be found in the result.</summary>
internal static class Samples
{
    /// <summary>A white square, eight points wide.</summary>
    private const string Square = "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAIAAABLbSncAAAAD0lEQVR4nGP4jwMwDC0JALoev0Ewkwr8AAAAAElFTkSuQmCC";

    public const string Everything = """
        First *stressed* and **strong** words.[^1] More of them.[^2]

        ## Section

        ### Part

        - one ≥ 5 ½ µ²
          - inner
        - two

        3. third
        4. fourth

        > Quoted – words.

        | Left | Right |
        |:--|--:|
        | cell one[^1] | 12.5 |
        | cell two | 7 |

        ![what it shows](figure:severity)

        ---

        Last.

        ## Why: the reasons behind the marks

        [^1]: **Rule one** (a.b). Met.

            - Fact of one.
            - Source of one.
        [^2]: **Rule two** (c.d). Not met.
        """;

    public static TheoryData<string, string> Examples
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var example in Written.Examples)
            {
                foreach (var document in new[] { "impression", "checklist" })
                {
                    if (Written.Document(Written.ExampleText(example), document).Page is not null)
                    {
                        all.Add(example, document);
                    }
                }
            }

            return all;
        }
    }

    public static DocumentPage Page(string markdown) => PlainTextTests.Page(markdown) with { Figures = [new DocumentFigure("severity", "<svg/>", [], "Mild, 10.8/h.")] };

    public static DocumentPage WithPicture(this DocumentPage page) => page with { Figures = [page.Figures[0] with { Png = [.. Convert.FromBase64String(Square)] }] };

    /// <summary>The text of each paragraph, heading, cell and reason, without spaces.</summary>
    public static IReadOnlyList<string> Texts(DocumentPage page) => [.. MarkdownTree.Parse(page.Markdown).Descendants<LeafBlock>()
        .Where(block => block is not LinkReferenceDefinition && block.Inline is not null && !block.Inline.All(inline => inline is FootnoteLink { IsBackLink: true }))
        .Select(block => Squeezed(Inlines.Text(block.Inline, page))).Where(text => text.Length > 0)];

    public static string Squeezed(string text) => string.Concat(text.EnumerateRunes().Where(rune => !Rune.IsWhiteSpace(rune)));
}

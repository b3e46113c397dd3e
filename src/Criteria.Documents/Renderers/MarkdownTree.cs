using Markdig;
using Markdig.Extensions.Footnotes;
using Markdig.Syntax;

namespace Criteria.Documents.Renderers;

/// <summary>The one place that reads Markdown, so that every format is set from the same tree.</summary>
/// <remarks>
/// What a renderer meets: <see cref="HeadingBlock"/> (level 2 to 4), <see cref="ParagraphBlock"/>, <see cref="ListBlock"/>, <c>Table</c> of
/// Markdig.Extensions.Tables, <see cref="ThematicBreakBlock"/>, <see cref="QuoteBlock"/>; inline literals, emphasis, code, links, <c>LinkInline</c> images whose address is
/// <c>figure:NAME</c>, line breaks and <see cref="FootnoteLink"/>. The <see cref="FootnoteGroup"/> holds the "Why" of the document: it is
/// the last block; each <see cref="Footnote"/> has an <see cref="Footnote.Order"/> (from 1) and its blocks, among them links back that are to be left out.
/// HTML is switched off: a text that looks like a tag is text.
/// </remarks>
internal static class MarkdownTree
{
    /// <summary>The scheme of an image that names a figure of the page.</summary>
    public const string FigureScheme = "figure:";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseFootnotes().DisableHtml().Build();

    /// <summary>The tree of a text.</summary>
    public static MarkdownDocument Parse(string markdown) => Markdown.Parse(markdown, Pipeline);
}

using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;
using Markdig.Extensions.Footnotes;
using Footnote = Markdig.Extensions.Footnotes.Footnote;

namespace Criteria.Documents.Renderers.Word;

/// <summary>The reasons at the end: a counted list, to which the marks are cross-references.</summary>
/// <remarks>
/// Not endnotes: some word processors put those on a page of their own, without header and away from their heading, and no mark may
/// name a note twice. Cross-references follow when a reason is taken away, once the fields are updated.
/// </remarks>
internal static class WordNotes
{
    /// <summary>The name by which a mark finds its reason.</summary>
    public static string Bookmark(int number) => string.Create(CultureInfo.InvariantCulture, $"why_{number}");

    /// <summary>The mark of a reason, as it is shown until the fields are updated.</summary>
    public static SimpleField Mark(int number) => new(WordInlines.Mark(new Text(string.Create(CultureInfo.InvariantCulture, $"[{number}]"))))
    {
        Instruction = $" REF {Bookmark(number)} \\r \\h ",
    };

    /// <summary>The reasons.</summary>
    public static IEnumerable<OpenXmlElement> Of(FootnoteGroup notes, WordBlocks blocks) => notes.OfType<Footnote>().SelectMany(note => Of(note, blocks));

    private static List<OpenXmlElement> Of(Footnote note, WordBlocks blocks)
    {
        var content = blocks.Blocks(note, new WordBlocks.Place(WordStyles.Note, 1)).ToList();
        if (content is not [Paragraph, ..])
        {
            content.Insert(0, WordBlocks.Paragraph(WordStyles.Note, []));
        }

        var first = (Paragraph)content[0];
        var properties = first.ParagraphProperties!;
        properties.Indentation = null;
        properties.AddChild(new NumberingProperties(new NumberingLevelReference { Val = 0 }, new NumberingId { Val = WordNumbering.Notes }));
        var id = note.Order.ToString(CultureInfo.InvariantCulture);
        properties.InsertAfterSelf(new BookmarkStart { Id = id, Name = Bookmark(note.Order) });
        first.AppendChild(new BookmarkEnd { Id = id });
        return content;
    }
}

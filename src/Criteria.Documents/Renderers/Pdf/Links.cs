using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Leads from each mark to its reason.</summary>
internal sealed class Links
{
    private readonly Dictionary<int, (int Page, double Top)> _places = [];
    private readonly double _height;

    /// <summary>Knows where every reason stands.</summary>
    public Links(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper)
    {
        _height = PdfDesign.Size(paper).Height;
        for (var i = 0; i < pages.Count; i++)
        {
            foreach (var (strip, y, _) in pages[i])
            {
                foreach (var anchor in strip.Opening.OfType<AnchorInk>())
                {
                    _places[anchor.Note] = (i + 1, _height - PdfDesign.TopMargin - y);
                }
            }
        }
    }

    /// <summary>How a mark is called where it is read aloud.</summary>
    public static string Spoken(int note) => string.Create(CultureInfo.InvariantCulture, $"reason {note}");

    /// <summary>The link over a mark in a strip at a height of the paper; null where no reason has its number.</summary>
    public PdfLinkAnnotation? To(TextInk mark, double y, TextMeter meter)
    {
        if (!_places.TryGetValue(mark.Run.Note, out var place))
        {
            return null;
        }

        var left = PdfDesign.SideMargin + mark.X;
        var bottom = _height - y - mark.BaseLine;
        var width = meter.Width(mark.Run.Text, mark.Run.Face, mark.Run.Size);
        var box = new PdfRectangle(new XRect(left, bottom, width, mark.Run.Size));
        var link = PdfLinkAnnotation.CreateDocumentLink(box, place.Page, new XPoint(0, place.Top));

        // A name drawn at random and the time of now; a link needs neither.
        link.Elements.Remove(PdfAnnotation.Keys.NM);
        link.Elements.Remove(PdfAnnotation.Keys.M);
        return link;
    }
}

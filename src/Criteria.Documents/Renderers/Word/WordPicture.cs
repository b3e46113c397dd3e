using Criteria.Documents.Renderers.Pdf;
using DocumentFormat.OpenXml.Drawing;
using DocumentFormat.OpenXml.Drawing.Wordprocessing;
using Drawing = DocumentFormat.OpenXml.Wordprocessing.Drawing;
using BlipFill = DocumentFormat.OpenXml.Drawing.Pictures.BlipFill;
using NonVisualDrawingProperties = DocumentFormat.OpenXml.Drawing.Pictures.NonVisualDrawingProperties;
using NonVisualPictureDrawingProperties = DocumentFormat.OpenXml.Drawing.Pictures.NonVisualPictureDrawingProperties;
using NonVisualPictureProperties = DocumentFormat.OpenXml.Drawing.Pictures.NonVisualPictureProperties;
using Picture = DocumentFormat.OpenXml.Drawing.Pictures.Picture;
using ShapeProperties = DocumentFormat.OpenXml.Drawing.Pictures.ShapeProperties;

namespace Criteria.Documents.Renderers.Word;

/// <summary>A figure in a line of a Word file, with its text alternative.</summary>
internal static class WordPicture
{
    private const string PictureUri = "http://schemas.openxmlformats.org/drawingml/2006/picture";

    /// <summary>The run that holds the figure.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="relationship">The id under which the file holds its picture.</param>
    /// <param name="number">A number no other figure has.</param>
    /// <param name="mostWide">The width of the text.</param>
    /// <param name="mostTall">How tall it may be.</param>
    public static DocumentFormat.OpenXml.Wordprocessing.Run Of(DocumentFigure figure, string relationship, uint number, double mostWide, double mostTall)
    {
        var (width, height) = Pictures.SizeOf(figure, mostWide, mostTall);
        var (across, down) = (WordMeasures.Picture(width), WordMeasures.Picture(height));
        var picture = new Picture(
            new NonVisualPictureProperties(
                new NonVisualDrawingProperties { Id = number, Name = figure.Name, Description = figure.Alternative },
                new NonVisualPictureDrawingProperties()),
            new BlipFill(new Blip { Embed = relationship }, new Stretch(new FillRectangle())),
            new ShapeProperties(
                new Transform2D(new Offset { X = 0, Y = 0 }, new Extents { Cx = across, Cy = down }),
                new PresetGeometry(new AdjustValueList()) { Preset = ShapeTypeValues.Rectangle }));
        return new DocumentFormat.OpenXml.Wordprocessing.Run(new Drawing(new Inline(
            new Extent { Cx = across, Cy = down },
            new DocProperties { Id = number, Name = figure.Name, Description = figure.Alternative },
            new Graphic(new GraphicData(picture) { Uri = PictureUri }))
        {
            DistanceFromTop = 0,
            DistanceFromBottom = 0,
            DistanceFromLeft = 0,
            DistanceFromRight = 0,
        }));
    }
}

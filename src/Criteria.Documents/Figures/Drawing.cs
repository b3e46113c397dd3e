using System.Collections.Immutable;

namespace Criteria.Documents.Figures;

/// <summary>A drawing in black on white: what the SVG and the PNG of a figure are both made from, so that they cannot differ.</summary>
/// <param name="Width">The width, in the drawing's own units.</param>
/// <param name="Height">The height.</param>
/// <param name="Shapes">The shapes, the hindmost first.</param>
internal sealed record Drawing(double Width, double Height, ImmutableArray<Shape> Shapes);

/// <summary>One shape of a drawing.</summary>
internal abstract record Shape;

/// <summary>A line.</summary>
internal sealed record Stroke(double FromX, double FromY, double ToX, double ToY, double Thickness, bool Dashed = false) : Shape;

/// <summary>A filled polygon.</summary>
internal sealed record Solid(ImmutableArray<(double X, double Y)> Corners) : Shape;

/// <summary>One line of text; <paramref name="Y"/> is its base line.</summary>
internal sealed record Label(double X, double Y, string Text, double Size, Align Align = Align.Middle, bool Bold = false) : Shape;

/// <summary>Which point of a text its X is.</summary>
internal enum Align
{
    /// <summary>Its left end.</summary>
    Start = 0,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}

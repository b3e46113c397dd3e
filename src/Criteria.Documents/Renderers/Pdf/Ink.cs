namespace Criteria.Documents.Renderers.Pdf;

/// <summary>One thing to draw, or one mark of the structure, at a place inside its strip.</summary>
internal abstract record Ink;

/// <summary>Text.</summary>
/// <param name="Run">What and in which font.</param>
/// <param name="X">From the left edge of the text area.</param>
/// <param name="BaseLine">From the top of the strip.</param>
internal sealed record TextInk(Run Run, double X, double BaseLine) : Ink;

/// <summary>A line from left to right, which carries no meaning.</summary>
/// <param name="X">From the left edge of the text area.</param>
/// <param name="Y">From the top of the strip.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Thickness">How thick it is.</param>
internal sealed record RuleInk(double X, double Y, double Length, double Thickness) : Ink;

/// <summary>The picture of a figure.</summary>
/// <param name="Figure">The figure.</param>
/// <param name="X">From the left edge of the text area.</param>
/// <param name="Width">The width.</param>
/// <param name="Height">The height.</param>
internal sealed record PictureInk(DocumentFigure Figure, double X, double Width, double Height) : Ink;

/// <summary>The begin of an element of the structure that reading aids follow.</summary>
/// <param name="Tag">The standard name of the element: <c>P</c>, <c>H2</c>, <c>TH</c>.</param>
/// <param name="Scope">For a table's head cell, what it names: <c>Column</c> or <c>Row</c>.</param>
internal sealed record OpenInk(string Tag, string? Scope = null) : Ink;

/// <summary>The end of the element that was begun last.</summary>
internal sealed record CloseInk : Ink;

/// <summary>An entry of the outline that a viewer shows beside the page.</summary>
/// <param name="Text">The heading.</param>
/// <param name="Level">The level, from 2.</param>
internal sealed record OutlineInk(string Text, int Level) : Ink;

/// <summary>The place to which the marks of a reason lead.</summary>
/// <param name="Note">The number of the reason.</param>
internal sealed record AnchorInk(int Note) : Ink;

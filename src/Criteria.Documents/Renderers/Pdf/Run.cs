namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Text set in one way.</summary>
/// <param name="Text">The text.</param>
/// <param name="Face">The cut of the font.</param>
/// <param name="Size">The size in points.</param>
/// <param name="Rise">How far above the base line it stands, in points.</param>
/// <param name="Note">The reason that it leads to; zero for none.</param>
internal readonly record struct Run(string Text, Face Face, double Size, double Rise, int Note = 0)
{
    /// <summary>Whether two runs look alike, so that one can go on where the other ends.</summary>
    public bool Joins(Run other) => Face == other.Face && Size.Equals(other.Size) && Rise.Equals(other.Rise) && Note == other.Note;
}

/// <summary>Runs between two places where a line may break.</summary>
/// <param name="Runs">The runs, without spaces at either end.</param>
/// <param name="EndsLine">Whether the text says that a new line begins after it.</param>
internal sealed record TextWord(IReadOnlyList<Run> Runs, bool EndsLine = false);

/// <summary>One line of set text.</summary>
/// <param name="Runs">From left to right.</param>
/// <param name="Width">The width in points.</param>
internal sealed record Line(IReadOnlyList<Run> Runs, double Width);

namespace Criteria.Core.Reading;

/// <summary>A place in a file; lines and columns count from 1, the end is exclusive.</summary>
/// <param name="File">The name the file was given by; never a full machine path unless the user gave one.</param>
/// <param name="Line">First line, from 1.</param>
/// <param name="Column">First column, from 1.</param>
/// <param name="EndLine">Line of the first character after the place.</param>
/// <param name="EndColumn">Column of the first character after the place.</param>
public readonly record struct SourceSpan(string File, int Line, int Column, int EndLine, int EndColumn)
{
    /// <summary>A place that names the file only.</summary>
    public static SourceSpan StartOf(string file) => new(file, 1, 1, 1, 1);

    /// <summary>The part of a one-line place that starts <paramref name="offset"/> characters in and is <paramref name="length"/> long.</summary>
    /// <remarks>A place over several lines, or a quoted one whose text was unescaped, is kept whole.</remarks>
    public SourceSpan Part(int offset, int length) =>
        Line == EndLine && offset >= 0 && Column + offset + length <= EndColumn
            ? new SourceSpan(File, Line, Column + offset, Line, Column + offset + length)
            : this;

    /// <inheritdoc/>
    public override string ToString() => $"{File}:{Line}:{Column}";
}

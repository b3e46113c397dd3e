using System.Collections.Immutable;

namespace Criteria.Documents;

/// <summary>The paper a document is set on.</summary>
public enum Paper
{
    /// <summary>8.5 by 11 inches.</summary>
    Letter = 0,

    /// <summary>210 by 297 mm.</summary>
    A4,
}

/// <summary>How far a document has come. The program never signs.</summary>
public enum DocumentState
{
    /// <summary>Not reviewed; printed on every page.</summary>
    Draft = 0,

    /// <summary>Reviewed by a named person on a named day, the text locked.</summary>
    Final,

    /// <summary>A final text with something added to it.</summary>
    Addendum,
}

/// <summary>A figure that the text names as <c>![text alternative](figure:severity)</c>.</summary>
/// <param name="Name">The name after <c>figure:</c>.</param>
/// <param name="Svg">The figure as SVG text, without an XML declaration.</param>
/// <param name="Png">The same as PNG, for formats that cannot hold SVG; empty when there is none.</param>
/// <param name="Alternative">What the figure shows, in one or two sentences, for those who do not see it.</param>
public sealed record DocumentFigure(string Name, string Svg, ImmutableArray<byte> Png, string Alternative);

/// <summary>One document, ready to be set: everything a renderer may know of it.</summary>
/// <remarks>A renderer adds no sentence of its own, reads no clock and gives the same bytes for the same page.</remarks>
public sealed record DocumentPage
{
    /// <summary>The document's name on the command line: <c>impression</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The title. The Markdown does not repeat it: a renderer prints it as the only heading of the first level.</summary>
    public required string Title { get; init; }

    /// <summary>The case key; on every page.</summary>
    public required string CaseKey { get; init; }

    /// <summary>The word in front of the key: a document about no case has another.</summary>
    public string KeyWord { get; init; } = "Case";

    /// <summary>The date of the study in words ("night of 3 June 2026"); on every page. Empty when the case has no night.</summary>
    public required string Study { get; init; }

    /// <summary>The rulesets that the text rests on, with their versions, one string each ("severity 2026.1"); on every page, as far as they fit, and whole at the end. May be empty.</summary>
    public required ImmutableArray<string> Rulesets { get; init; }

    /// <summary>How far it has come.</summary>
    public required DocumentState State { get; init; }

    /// <summary>The state in words for the header: <c>DRAFT, not signed</c>.</summary>
    public required string StateWords { get; init; }

    /// <summary>The paper, where the format has pages.</summary>
    public Paper Paper { get; init; }

    /// <summary>The language of the text, as HTML and PDF name it.</summary>
    public string Language { get; init; } = "en";

    /// <summary>The text: headings from the second level on, paragraphs, lists, tables, footnotes, images of figures, emphasis, rules and hard breaks; no HTML.</summary>
    public required string Markdown { get; init; }

    /// <summary>The figures that the text may name.</summary>
    public ImmutableArray<DocumentFigure> Figures { get; init; } = [];

    /// <summary>The date for the metadata of a file: the date the assessment was made for. Never today.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>32 small hexadecimal digits for the metadata of a file, the same for the same content.</summary>
    public required string Id { get; init; }

    /// <summary>The program with its version, for the metadata of a file.</summary>
    public required string Program { get; init; }
}

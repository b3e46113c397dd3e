namespace Criteria.Core.Facts;

/// <summary>Where a fact came from.</summary>
public enum OriginKind
{
    /// <summary>Written in the case file.</summary>
    Entered = 0,

    /// <summary>Written in the case file with a pointer to where it stands.</summary>
    Document,

    /// <summary>Computed from other facts.</summary>
    Computed,

    /// <summary>Left out of a list that a reviewer closed.</summary>
    ClosedList,
}

/// <summary>Where a fact came from.</summary>
/// <param name="Kind">How it came.</param>
/// <param name="Text">The document and page, what it was computed from, or who closed the list.</param>
public sealed record Provenance(OriginKind Kind, string Text)
{
    /// <summary>Written in the case file, no more said.</summary>
    public static readonly Provenance Entered = new(OriginKind.Entered, "");

    /// <summary>A few words for a trace; empty when there is nothing to say.</summary>
    public string Words => Kind switch
    {
        OriginKind.Document => Text,
        OriginKind.Computed => $"computed from {Text}",
        OriginKind.ClosedList => $"list closed by {Text}",
        _ => "",
    };
}

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
public sealed class Provenance : IEquatable<Provenance>
{
    // Most facts are computed without anybody reading what from: the words wait until they are asked for.
    private readonly Func<string>? _words;
    private string? _text;

    /// <summary>An origin that is told in words.</summary>
    /// <param name="kind">How it came.</param>
    /// <param name="text">The document and page, or who closed the list.</param>
    public Provenance(OriginKind kind, string text) => (Kind, _text) = (kind, text);

    /// <summary>Computed from other facts.</summary>
    /// <param name="from">Tells from what.</param>
    internal Provenance(Func<string> from) => (Kind, _words) = (OriginKind.Computed, from);

    /// <summary>How it came.</summary>
    public OriginKind Kind { get; }

    /// <summary>The document and page, what it was computed from, or who closed the list.</summary>
    public string Text => _text ??= _words!();

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

    /// <inheritdoc/>
    public bool Equals(Provenance? other) => other is not null && Kind == other.Kind && Text == other.Text;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Provenance);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Text);

    /// <inheritdoc/>
    public override string ToString() => Words;
}

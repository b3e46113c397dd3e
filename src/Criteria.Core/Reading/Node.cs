namespace Criteria.Core.Reading;

/// <summary>A value of a YAML or JSON file with its place.</summary>
internal abstract record Node(SourceSpan Span)
{
    /// <summary>What it is, for messages.</summary>
    public abstract string Described { get; }
}

/// <summary>A text as written. JSON numbers and truth values are their texts.</summary>
/// <param name="Text">The text without quotes.</param>
/// <param name="Quoted">Whether it stood in quotes, so that its columns may differ from the text's.</param>
/// <param name="Span">Where it stands.</param>
internal sealed record ScalarNode(string Text, bool Quoted, SourceSpan Span) : Node(Span)
{
    public override string Described => Text.Length == 0 ? "nothing" : $"`{Wording.Quote(Text)}`";

    /// <summary>The place of a part of the text.</summary>
    public SourceSpan Part(int offset, int length) => Quoted ? Span : Span.Part(offset, length);
}

internal sealed record ListNode(IReadOnlyList<Node> Items, SourceSpan Span) : Node(Span)
{
    public override string Described => "a list";
}

internal sealed record MapEntry(string Key, SourceSpan KeySpan, Node Value);

internal sealed record MapNode(IReadOnlyList<MapEntry> Entries, SourceSpan Span) : Node(Span)
{
    public override string Described => "a map of keys and values";

    public MapEntry? Find(string key) => Entries.FirstOrDefault(entry => entry.Key == key);

    public Node? this[string key] => Find(key)?.Value;
}

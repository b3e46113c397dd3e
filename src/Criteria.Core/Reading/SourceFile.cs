namespace Criteria.Core.Reading;

/// <summary>A file's name and content, wherever it was stored.</summary>
/// <param name="Name">The name for messages.</param>
/// <param name="Content">The bytes.</param>
public sealed record SourceFile(string Name, ReadOnlyMemory<byte> Content);

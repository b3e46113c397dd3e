namespace Criteria.Documents.Renderers;

/// <summary>Sets a document in one output format. One file a format.</summary>
internal interface IRenderer
{
    /// <summary>The word for <c>--format</c>: <c>pdf</c>.</summary>
    public string Format { get; }

    /// <summary>The end of a file's name, with its dot: <c>.pdf</c>.</summary>
    public string Extension { get; }

    /// <summary>The file. The same page gives the same bytes.</summary>
    public byte[] Render(DocumentPage page);
}

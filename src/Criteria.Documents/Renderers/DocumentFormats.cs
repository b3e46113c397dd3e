namespace Criteria.Documents.Renderers;

/// <summary>The output formats.</summary>
public static class DocumentFormats
{
    private static readonly IRenderer[] Renderers = [new PlainTextRenderer(ascii: false), new MarkdownRenderer(), new HtmlRenderer(), new PdfRenderer(), new WordRenderer()];
    private static readonly PlainTextRenderer Ascii80 = new(ascii: true);

    /// <summary>The words for formats, the usual one first.</summary>
    public static IReadOnlyList<string> All => [.. Renderers.Select(renderer => renderer.Format)];

    /// <summary>The end of a file's name in a format, with its dot.</summary>
    public static string ExtensionOf(string format) => Find(format).Extension;

    /// <summary>A document in a format.</summary>
    /// <param name="page">The document.</param>
    /// <param name="format">One of <see cref="All"/>.</param>
    /// <param name="ascii">In plain text: seven bits only.</param>
    public static ReadOnlyMemory<byte> Render(DocumentPage page, string format, bool ascii = false)
    {
        ArgumentNullException.ThrowIfNull(page);
        var renderer = Find(format);
        return ascii && renderer.Format == Ascii80.Format ? Ascii80.Render(page) : renderer.Render(page);
    }

    private static IRenderer Find(string format) =>
        Array.Find(Renderers, renderer => renderer.Format == format) ?? throw new ArgumentException($"no format `{format}`", nameof(format));
}

using System.Text;
using Criteria.Documents.Templating;

namespace Criteria.Documents.Renderers;

/// <summary>The Markdown itself, with its title and a head that names case, study, state and rules.</summary>
internal sealed class MarkdownRenderer : IRenderer
{
    /// <inheritdoc/>
    public string Format => "markdown";

    /// <inheritdoc/>
    public string Extension => ".md";

    /// <inheritdoc/>
    public byte[] Render(DocumentPage page)
    {
        var study = page.Study.Length > 0 ? $" · {Safe(Wording.Words.Capital(page.Study))}" : "";
        return Encoding.UTF8.GetBytes(
            $"# {Safe(page.Title)}\n\n{Safe(page.KeyWord)} {Safe(page.CaseKey)}{study} · **{Safe(page.StateWords)}**\n\n{page.Markdown}\n---\n\n{Safe(Foot.Of(page))}\n");
    }

    private static string Safe(string text) => MarkdownEncoder.Instance.Encode(text);
}

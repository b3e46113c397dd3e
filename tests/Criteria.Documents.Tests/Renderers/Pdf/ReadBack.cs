using Criteria.Documents.Renderers;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Criteria.Documents.Tests.Renderers.Pdf;

/// <summary>A PDF as another reader sees it.</summary>
internal sealed class ReadBack
{
    // The text area, from the lower edge of the paper; running header and footer stand outside of it.
    private const double Above = 60;
    private const double Below = 75;

    private ReadBack(byte[] file)
    {
        File = file;
        using var document = PdfDocument.Open(file);
        Pages = [.. document.GetPages()];
        Title = document.Information.Title ?? "";
        Created = document.Information.CreationDate ?? "";
        Changed = document.Information.ModifiedDate ?? "";
    }

    public byte[] File { get; }

    public IReadOnlyList<Page> Pages { get; }

    public string Title { get; }

    public string Created { get; }

    public string Changed { get; }

    /// <summary>The file as text, for what stands outside of compressed streams.</summary>
    public string Raw => System.Text.Encoding.Latin1.GetString(File);

    public static ReadBack Of(DocumentPage page) => new(new PdfRenderer().Render(page));

    /// <summary>The text between header and footer in the order of reading, without spaces.</summary>
    public string Body => string.Concat(Pages.Select(BodyOf));

    public static string BodyOf(Page page) => Samples.Squeezed(string.Concat(Inside(page).Select(letter => letter.Value)));

    public static IEnumerable<Letter> Inside(Page page) => page.Letters.Where(letter => letter.StartBaseLine.Y > Above && letter.StartBaseLine.Y < page.Height - Below);

    /// <summary>All text of a page with its spaces, header and footer too.</summary>
    public static string AllOf(Page page) => string.Concat(page.Letters.Select(letter => letter.Value));
}

using PdfSharp.Pdf;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>What the file says of itself.</summary>
internal static class FileFacts
{
    /// <summary>Title, program and dates.</summary>
    public static void Describe(PdfDocument document, DocumentPage page)
    {
        var date = page.Date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        document.Info.Title = $"{page.Title}, case {page.CaseKey}, {page.StateWords}";
        document.Info.Creator = page.Program;
        document.Info.CreationDate = date;
        document.Info.ModificationDate = date;
    }

    /// <summary>The same bytes.</summary>
    public static byte[] Steady(byte[] file, DocumentPage page) => file;
}

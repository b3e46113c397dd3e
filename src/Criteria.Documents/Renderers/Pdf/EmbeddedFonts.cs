using PdfSharp.Fonts;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Hands the fonts inside the program to the PDF library, so that no font of the machine is used.</summary>
internal sealed class EmbeddedFonts : IFontResolver
{
    /// <summary>The name of the one family.</summary>
    public const string Family = "Open Sans";

    // The library knows one resolver for the whole process. One that a host program has set stays; ours then stands in for what it lacks.
    static EmbeddedFonts()
    {
        var fonts = new EmbeddedFonts();
        if (GlobalFontSettings.FontResolver is null)
        {
            GlobalFontSettings.FontResolver = fonts;
        }
        else
        {
            GlobalFontSettings.FallbackFontResolver ??= fonts;
        }
    }

    /// <summary>Sees to it that the fonts are known.</summary>
    public static void Register()
    {
        // The static constructor has done it, once.
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName == Family ? new FontResolverInfo(bold ? "OpenSans-Bold" : italic ? "OpenSans-Italic" : "OpenSans-Regular") : null;

    /// <inheritdoc/>
    public byte[] GetFont(string faceName)
    {
        using var stream = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream($"{faceName}.ttf")
            ?? throw new ArgumentException($"no font `{faceName}`", nameof(faceName));
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

using System.Reflection;
using SkiaSharp;

namespace Criteria.Documents.Figures;

/// <summary>The font that the program carries, so that a figure's text is the same on every machine.</summary>
internal static class FigureFont
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Load("OpenSans-Regular.ttf"));
    private static readonly Lazy<SKTypeface> Bold = new(() => Load("OpenSans-Bold.ttf"));

    /// <summary>The upright face, or its bold one.</summary>
    public static SKTypeface Of(bool bold) => (bold ? Bold : Regular).Value;

    private static SKTypeface Load(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"the font {name} is not in the program");
        return SKTypeface.FromStream(stream);
    }
}

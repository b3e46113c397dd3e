using System.Globalization;

namespace Criteria.Documents.Renderers.Word;

/// <summary>The measures of a Word file, which counts in half points, twentieths of a point and parts of an inch.</summary>
internal static class WordMeasures
{
    /// <summary>Half points of a point: sizes of fonts.</summary>
    private const double HalfPoints = 2;

    /// <summary>Twips of a point: lengths on the page.</summary>
    private const double Twips = 20;

    /// <summary>English metric units of a point: pictures.</summary>
    private const double Emus = 12700;

    /// <summary>Eighths of a point: thickness of lines.</summary>
    private const double Eighths = 8;

    /// <summary>The steps of a list's indent, in points.</summary>
    public const double ListStep = 18;

    /// <summary>How deep lists may stand in each other.</summary>
    public const int ListLevels = 9;

    /// <summary>Most rows of a table that stays on one page.</summary>
    public const int WholeTable = 8;

    /// <summary>The font, one that every word processor has or has a double of.</summary>
    public const string Font = "Arial";

    /// <summary>A font size.</summary>
    public static string Size(double points) => Text(points * HalfPoints);

    /// <summary>A length as text.</summary>
    public static string Length(double points) => Text(points * Twips);

    /// <summary>A length as a number.</summary>
    public static int Count(double points) => (int)Math.Round(points * Twips);

    /// <summary>A side of a picture.</summary>
    public static long Picture(double points) => (long)Math.Round(points * Emus);

    /// <summary>The thickness of a line.</summary>
    public static uint Line(double points) => (uint)Math.Round(points * Eighths);

    private static string Text(double value) => Math.Round(value).ToString(CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Figures;

/// <summary>An index on its severity scale: the bands with their boundaries, the value, and what counting alone leaves open.</summary>
/// <remarks>Black on white; bands are told apart by their words and frames, so that a fax or a grey print loses nothing.</remarks>
public sealed class SeverityFigure
{
    private readonly Drawing _drawing;
    private readonly string _id;

    private SeverityFigure(Finding finding, GradeBody grade)
    {
        Title = $"{finding.Criterion.Title}{(finding.Night is { } night ? $", {Words.Night(night)}" : "")}";
        Alternative = Describe(finding, grade);
        _id = Identifier($"{finding.Id}-{finding.Night}");
        _drawing = SeverityDrawing.Of(finding, grade);
    }

    /// <summary>What the figure is of.</summary>
    public string Title { get; }

    /// <summary>What the figure shows, in a few sentences.</summary>
    public string Alternative { get; }

    /// <summary>The figure of a graded rate; null of any other finding, and where the number itself is not known.</summary>
    public static SeverityFigure? Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding is { Criterion.Body: GradeBody { Bands.Length: > 1 } grade, Value.Number: not null } && grade.Of.Unit.Dimension == Dimension.Rate
            ? new SeverityFigure(finding, grade)
            : null;
    }

    /// <summary>The figure as SVG text, without an XML declaration.</summary>
    public string ToSvg() => SvgWriter.Write(_drawing, _id, Title, Alternative);

    /// <summary>The same as PNG.</summary>
    public ImmutableArray<byte> ToPng() => PngWriter.Write(_drawing);

    /// <summary>The figure under a name, for a document.</summary>
    public DocumentFigure ToDocument(string name, bool png) => new(name, ToSvg(), png ? ToPng() : [], Alternative);

    private static string Describe(Finding finding, GradeBody grade)
    {
        var bands = Words.List(grade.Bands.Select(band => band.Grade == band.Text ? band.Grade : $"{band.Grade} ({band.Text})"));
        var found = finding.Standing == Standing.Met ? $"The value {finding.Value!.NumberText} lies in {finding.Value.Band}."
            : finding.Value!.Text.Length > 0 ? $"The value {finding.Value.NumberText} would be {finding.Value.Text}; the grade is open."
            : $"The value {finding.Value.NumberText} is not graded.";
        return $"A scale in events per hour with the bands {bands}. {found} {Reach(finding)}";
    }

    /// <summary>Why the figure shows no counting interval.</summary>
    internal static string NoInterval(Finding finding) => finding is { Value.Number.IsExact: true, Standing: not Standing.Met }
        ? "No counting interval: the grade is open."
        : "No counting interval: it needs the number of events and the time, both exactly.";

    private static string Reach(Finding finding)
    {
        if (finding.Closeness is not { } closeness)
        {
            return NoInterval(finding);
        }

        // The bands that the interval touches, apart from the value's own.
        var beyond = new List<string>();
        if (closeness.Below is { } below && closeness.Low < (double)below.At.Rounded)
        {
            beyond.Add(below.Grade);
        }

        if (closeness.Above is { } above && closeness.High >= (double)above.At.Rounded)
        {
            beyond.Add(above.Grade);
        }

        var where = beyond.Count == 0 ? "This does not leave the band." : $"This reaches into {Words.List(beyond)}.";
        return $"{CountingText.Interval(closeness)} {where} {CountingText.Floor}";
    }

    private static string Identifier(string text) =>
        string.Concat(text.Select(letter => char.IsAsciiLetterOrDigit(letter) ? char.ToLower(letter, CultureInfo.InvariantCulture) : '-')).Trim('-');
}

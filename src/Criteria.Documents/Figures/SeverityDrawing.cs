using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Figures;

/// <summary>Places the parts of a severity figure: head, value, interval, bands, boundaries, foot, from top to bottom.</summary>
internal sealed class SeverityDrawing
{
    private const double Width = 640;
    private const double Margin = 46;
    private const double Row = 16;

    // Below the head, from its last line on.
    private const double ValueLine = 26;
    private const double IntervalLine = 40;
    private const double BandTop = 56;
    private const double BandBottom = 84;
    private const double TickLine = 100;
    private const double Mark = 6;
    private const double Large = 13;
    private const double Small = 11;
    private const double Gap = 6;
    private const double Thin = 1;
    private const double Thick = 3;

    private readonly ImmutableArray<Shape>.Builder _shapes = ImmutableArray.CreateBuilder<Shape>();
    private readonly SeverityScale _scale;
    private readonly Finding _finding;
    private readonly GradeBody _grade;
    private readonly Interval _value;
    private double _head;

    private SeverityDrawing(Finding finding, GradeBody grade)
    {
        (_finding, _grade, _value) = (finding, grade, finding.Value!.Number!.Value);
        var furthest = Math.Max((double)_value.High.Rounded, finding.Closeness?.High ?? 0);
        _scale = SeverityScale.For(grade, furthest, Margin, Width - Margin);
    }

    public static Drawing Of(Finding finding, GradeBody grade) => new SeverityDrawing(finding, grade).Draw();

    private Drawing Draw()
    {
        Lines($"{_finding.Criterion.Title}: {Found()}", Large, bold: true);
        Lines(_finding.Night is { } night ? Words.Capital(Words.Night(night)) : "", Small, bold: false);
        var below = _head;
        Bands();
        Interval();
        Value();
        _head = below + TickLine + (BoundaryRows() * Row) - Row + Gap;
        Lines($"Events per hour. {Note()}", Small, bold: false);
        if (_finding.Closeness is not null)
        {
            Lines(CountingText.Floor, Small, bold: false);
        }

        return new Drawing(Width, _head + Gap + Gap, _shapes.ToImmutable());
    }

    private void Lines(string text, double size, bool bold)
    {
        foreach (var line in TextWidth.Lines(text, size, bold, Width - Margin - Gap))
        {
            _head += Row + (bold ? 3 : 0);
            _shapes.Add(new Label(Margin, _head, line, size, Align.Start, bold));
        }
    }

    private string Note() => _finding.Closeness is { } closeness ? CountingText.Interval(closeness)
        : _value.IsExact ? SeverityFigure.NoInterval(_finding)
        : $"A printed figure stands for the range it was rounded from. {SeverityFigure.NoInterval(_finding)}";

    private string Found() => _finding.Standing switch
    {
        Standing.Met => _finding.Value!.Band,
        Standing.Undetermined when _finding.Value!.Text.Length > 0 => $"open, {_finding.Value.Text}",
        Standing.Undetermined => "open",
        _ => "not graded",
    };

    private void Bands()
    {
        var verdict = _finding.Conclusion.Verdict;
        for (var i = 0; i < _grade.Bands.Length; i++)
        {
            var band = _grade.Bands[i];
            var (left, right) = (band.Lower is { } lower ? _scale.At(lower) : _scale.Left, band.Upper is { } upper ? _scale.At(upper) : _scale.Right);
            var possible = i >= verdict.LowestBand && i <= verdict.HighestBand && _finding.Standing is Standing.Met or Standing.Undetermined;

            // What is possible has a heavy frame, the rest a light one; the last band is open at its end.
            var weight = possible ? Thick : Thin;
            var inset = possible ? Thick / 2 : 0;
            Frame(left + inset, right - inset, weight, isLast: i == _grade.Bands.Length - 1);
            if (FitsInside(band.Grade, right - left, possible))
            {
                _shapes.Add(new Label((left + right) / 2, _head + BandBottom - Gap - 3, band.Grade, Small, Align.Middle, possible));
            }
        }
    }

    private void Frame(double left, double right, double weight, bool isLast)
    {
        var half = weight / 2;
        var (top, bottom) = (_head + BandTop + half, _head + BandBottom - half);
        _shapes.Add(new Stroke(left - half, top, right + half, top, weight));
        _shapes.Add(new Stroke(left - half, bottom, right + half, bottom, weight));
        _shapes.Add(new Stroke(left, top, left, bottom, weight));
        if (!isLast)
        {
            _shapes.Add(new Stroke(right, top, right, bottom, weight));
        }
    }

    private void Interval()
    {
        if (_finding.Closeness is not { } closeness || _scale.IsBeyond(closeness.Low))
        {
            // Wholly beyond the scale: the foot has the numbers, and a line would have no length.
            return;
        }

        var (low, high) = (_scale.At(closeness.Low), _scale.At(closeness.High));
        _shapes.Add(new Stroke(low, _head + IntervalLine, high, _head + IntervalLine, 2));
        Cap(low);
        _shapes.Add(new Label(low - Gap, _head + IntervalLine + 4, Rate(closeness.Low), Small, Align.End));
        if (_scale.IsBeyond(closeness.High))
        {
            Arrow();
        }
        else
        {
            Cap(high);
        }

        _shapes.Add(new Label(high + Gap, _head + IntervalLine + 4, Rate(closeness.High), Small, Align.Start));
    }

    private void Cap(double x) => _shapes.Add(new Stroke(x, _head + IntervalLine - Mark + 1, x, _head + IntervalLine + Mark - 1, 2));

    private void Arrow() => _shapes.Add(new Solid(
        [(_scale.Right + 3, _head + IntervalLine), (_scale.Right - Mark, _head + IntervalLine - Mark + 1), (_scale.Right - Mark, _head + IntervalLine + Mark - 1)]));

    private void Value()
    {
        var text = _value.IsExact ? QuantityText.Of(_value.Low, _grade.Of.Unit) : $"{_value.Low.ToText(2)} to {_value.High.ToText(2)}{_grade.Of.Unit.Symbol}";
        var middle = ((double)_value.Low.Rounded + (double)_value.High.Rounded) / 2;
        var x = _scale.At(middle);
        if (_scale.IsBeyond(middle))
        {
            Arrow();
            _shapes.Add(new Label(Width - Gap, _head + ValueLine, $"{text}, beyond the scale", Large, Align.End, Bold: true));
            return;
        }

        if (!_value.IsExact)
        {
            // A printed figure stands for a range; a thick bar on the line shows it where it is wide enough to be seen.
            _shapes.Add(new Stroke(_scale.At(_value.Low), _head + IntervalLine, _scale.At(_value.High), _head + IntervalLine, Mark));
        }

        _shapes.Add(new Stroke(x, _head + IntervalLine, x, _head + BandTop, Thin, Dashed: true));
        _shapes.Add(new Solid([(x, _head + IntervalLine - Mark), (x + Mark, _head + IntervalLine), (x, _head + IntervalLine + Mark), (x - Mark, _head + IntervalLine)]));
        var half = TextWidth.Of(text, Large, bold: true) / 2;
        _shapes.Add(new Label(Math.Clamp(x, half + Gap, Width - half - Gap), _head + ValueLine, text, Large, Align.Middle, Bold: true));
    }

    // The boundaries below the bands, and below them the names of bands too narrow to hold theirs; each in the first row with room.
    private int BoundaryRows()
    {
        var rows = new LabelRows(Gap, Width);
        Place(rows, _scale.Left, "0", 0);
        foreach (var band in _grade.Bands)
        {
            if (band.Lower is { } lower)
            {
                Place(rows, _scale.At(lower), lower.ToText(1), 0);
            }
        }

        var first = rows.Count;
        foreach (var band in _grade.Bands)
        {
            var (left, right) = (band.Lower is { } lower ? _scale.At(lower) : _scale.Left, band.Upper is { } upper ? _scale.At(upper) : _scale.Right);
            if (!FitsInside(band.Grade, right - left, bold: true) && !FitsInside(band.Grade, right - left, bold: false))
            {
                Place(rows, (left + right) / 2, band.Grade, first);
            }
        }

        return rows.Count;
    }

    private void Place(LabelRows rows, double x, string text, int firstRow)
    {
        var width = TextWidth.Of(text, Small, bold: false);
        var at = Math.Clamp(x, (width / 2) + Gap, Width - (width / 2) - Gap);
        var row = rows.Place(at - (width / 2), at + (width / 2), firstRow);
        var (top, y) = (_head + BandBottom, _head + TickLine + (row * Row));
        _shapes.Add(new Stroke(x, top, x, row == 0 ? top + Gap - 2 : y - Small, Thin, Dashed: row > 0));
        _shapes.Add(new Label(at, y, text, Small));
    }

    private static bool FitsInside(string text, double width, bool bold) => TextWidth.Of(text, Small, bold) + (bold ? Thick + Thick : 2) <= width;

    private static string Rate(double rate) => rate.ToString("0.0", CultureInfo.InvariantCulture);
}

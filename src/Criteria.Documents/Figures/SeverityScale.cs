using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Documents.Figures;

/// <summary>Where a rate lies across the figure. Even steps from zero, so that lengths can be compared by eye.</summary>
internal sealed class SeverityScale
{
    private readonly double _end;

    private SeverityScale(double left, double right, double end) => (Left, Right, _end) = (left, right, end);

    /// <summary>The left end, at zero.</summary>
    public double Left { get; }

    /// <summary>The right end; the last band goes on beyond it.</summary>
    public double Right { get; }

    /// <summary>A scale that shows the highest boundary with half as much behind it; twice as much where what is shown reaches further.</summary>
    public static SeverityScale For(GradeBody grade, double furthest, double left, double right)
    {
        var highest = (double)grade.Bands.Max(band => band.Lower ?? 0).Rounded;
        var near = highest * 3 / 2;
        return new SeverityScale(left, right, furthest <= near ? near : highest * 2);
    }

    /// <summary>Whether the rate lies beyond the right end.</summary>
    public bool IsBeyond(double rate) => rate > _end;

    /// <summary>The place of a rate; the right end for one that lies beyond.</summary>
    public double At(double rate) => Left + ((Right - Left) * Math.Min(rate, _end) / _end);

    /// <summary>The place of a rate.</summary>
    public double At(Ratio rate) => At((double)rate.Rounded);
}

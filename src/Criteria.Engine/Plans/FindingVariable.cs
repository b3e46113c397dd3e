using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>What conditions ask of a finding.</summary>
internal enum FindingAspect
{
    /// <summary>Its standing: a cell for each.</summary>
    Standing = 0,

    /// <summary>Its grade or class: a cell for each band.</summary>
    Band,

    /// <summary>Its points: a cell for each.</summary>
    Points,
}

/// <summary>How the cells of a variable are taken from the verdict of a criterion.</summary>
internal readonly record struct FindingVariable(int Criterion, FindingAspect Aspect, int Variable)
{
    /// <summary>The cells that are possible.</summary>
    public ulong Possible(in Verdict verdict) => Aspect switch
    {
        FindingAspect.Standing => verdict.Standing == Standing.Undetermined ? Cells.Unknown : Cells.One((int)verdict.Standing),
        FindingAspect.Band => verdict.Standing == Standing.NotApplicable ? Cells.NotApplicable
            : verdict.LowestBand < 0 ? Cells.Unknown
            : OnlyNoIsSafe(verdict, Cells.Range(verdict.LowestBand, verdict.HighestBand)),
        _ => verdict.Standing == Standing.NotApplicable ? Cells.NotApplicable
            : verdict.Points is not { } points ? Cells.Unknown
            : OnlyNoIsSafe(verdict, Cells.Range(points.Low, points.High)),
    };

    // While it is open whether the finding stands at all, no condition on its value is met.
    private static ulong OnlyNoIsSafe(in Verdict verdict, ulong possible) => verdict.Stands == Truth.Met ? possible : possible | Cells.Failing;
}

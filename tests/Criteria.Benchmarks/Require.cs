using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>A benchmark checks its own answer before it is timed: a fast wrong answer is worth nothing.</summary>
internal static class Require
{
    /// <summary>The standing, and the value in words if one is given, that each finding of a criterion must have.</summary>
    public static void Finding(Assessment assessment, string criterion, Standing standing, string? band = null)
    {
        var findings = assessment.Of(criterion).ToArray();
        if (findings.Length == 0 || findings.Any(finding => finding.Standing != standing || (band is not null && finding.Value?.Band != band)))
        {
            var found = string.Join(", ", findings.Select(finding => $"{finding.Standing} {finding.Value?.Text}"));
            throw new InvalidOperationException($"{assessment.Case}: {criterion} should be {standing} {band} and is: {found}");
        }
    }

    /// <summary>The library of a loading without errors.</summary>
    public static RulesetLibrary Library(LibraryLoading loading) =>
        loading.Library ?? throw new InvalidOperationException("rules do not load: " + string.Join("; ", loading.Problems));
}

using System.Collections.Immutable;
using Criteria.Core.Logic;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Sharing;

/// <summary>A finding that a de-identified case no longer gives alike.</summary>
/// <param name="Id">The name of the finding.</param>
/// <param name="Title">Its title.</param>
/// <param name="Night">The number of the night that it is about, from 1 on; null for the case.</param>
/// <param name="Was">What the case gives.</param>
/// <param name="Is">What the de-identified case gives.</param>
public sealed record Lost(string Id, string Title, int? Night, string Was, string Is)
{
    private const string NoRule = "no rule in force";

    /// <summary>The findings that differ, in the order of the report, after them those that only the de-identified case has.</summary>
    /// <param name="whole">The assessment of the case.</param>
    /// <param name="shared">That of the de-identified case.</param>
    public static ImmutableArray<Lost> Between(Assessment whole, Assessment shared)
    {
        ArgumentNullException.ThrowIfNull(whole);
        ArgumentNullException.ThrowIfNull(shared);
        var after = Table(shared);
        var before = Table(whole);
        return
        [
            .. before.Keys.Concat(after.Keys.Where(key => !before.ContainsKey(key)))
                .Select(key => (Key: key, Was: before.GetValueOrDefault(key), Is: after.GetValueOrDefault(key)))
                .Where(pair => Result(pair.Was) != Result(pair.Is))
                .Select(pair => new Lost(pair.Key.Id, (pair.Was ?? pair.Is)!.Criterion.Title, pair.Key.Night, Result(pair.Was), Result(pair.Is))),
        ];
    }

    private static OrderedDictionary<(string Id, int? Night), Finding> Table(Assessment assessment)
    {
        var table = new OrderedDictionary<(string, int?), Finding>();
        foreach (var finding in assessment.Findings)
        {
            // Nights by their number: without its day, a night has another label.
            table[(finding.Id, finding.Night is { } night ? assessment.Nights.IndexOf(night) + 1 : null)] = finding;
        }

        return table;
    }

    private static string Result(Finding? finding) => finding is null ? NoRule
        : finding.Value is { Band.Length: > 0 } value ? $"{finding.Standing.Words()}, {value.Band}"
        : finding.Standing.Words();
}

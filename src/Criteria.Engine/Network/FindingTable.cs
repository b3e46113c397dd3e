using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Network;

/// <summary>Collects the findings of one session, and which criteria fired.</summary>
internal sealed class FindingTable
{
    private readonly SortedDictionary<(int Criterion, int Subject), Finding> _findings = [];

    /// <summary>The ids of the criteria that fired since the last reset, in the order of firing.</summary>
    public List<string> Fired { get; } = [];

    public IEnumerable<Finding> Findings => _findings.Values;

    public void Put(Criterion criterion, int subject, Finding finding)
    {
        Fired.Add(criterion.Id);
        _findings[(criterion.Index, subject)] = finding;
    }
}

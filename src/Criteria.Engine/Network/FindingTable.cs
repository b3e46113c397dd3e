using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Network;

/// <summary>Collects the findings of one session, and which criteria fired.</summary>
/// <param name="criteria">How many criteria there are.</param>
/// <param name="subjects">How many subjects: the case and its nights, at least one.</param>
internal sealed class FindingTable(int criteria, int subjects)
{
    // One row for each criterion, the case first and then the nights, so that reading along is the order of the report.
    private readonly Finding?[] _findings = new Finding?[criteria * subjects];

    /// <summary>The ids of the criteria that fired since the last reset, in the order of firing.</summary>
    public List<string> Fired { get; } = [];

    public IEnumerable<Finding> Findings => _findings.OfType<Finding>();

    public void Put(Criterion criterion, int subject, Finding finding)
    {
        Fired.Add(criterion.Id);
        _findings[(criterion.Index * subjects) + (subject - Subject.CaseNumber)] = finding;
    }
}

using Criteria.Engine.Findings;
using NRules.RuleModel;

namespace Criteria.Engine.Network;

/// <summary>A finding as a fact of the network. Its identity is its criterion and its subject.</summary>
internal sealed class FindingFact(Finding finding, int subject) : IIdentityProvider
{
    public Finding Finding { get; } = finding;

    public int Criterion { get; } = finding.Criterion.Index;

    public int Subject { get; } = subject;

    public object GetIdentity() => (Criterion, Subject);
}

using Criteria.Core.Facts;
using Criteria.Core.Logic;
using NRules.RuleModel;

namespace Criteria.Engine.Network;

/// <summary>What criteria are evaluated about: the case, or one of its nights. The fact that rules match.</summary>
/// <remarks>
/// One object with slots, not one object for each fact: the engine tries every object at every condition. Its identity is
/// its number, so that an update replaces it.
/// </remarks>
internal sealed class Subject(int number, string? night, FactSet facts, int criteria, FindingTable table) : IIdentityProvider
{
    /// <summary>The number of the case among the subjects; nights count from 0.</summary>
    public const int CaseNumber = -1;

    public int Number { get; } = number;

    public string? Night { get; } = night;

    public bool IsNight => Number != CaseNumber;

    public bool IsCase => Number == CaseNumber;

    public FactSet Facts { get; } = facts;

    public FindingTable Table { get; } = table;

    /// <summary>A view without conclusions: each criterion puts in those it was matched with.</summary>
    public View NewView() => new(Facts, criteria);

    public object GetIdentity() => Number;
}

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

    /// <summary>A view that every criterion finds without conclusions: it puts in those it was matched with, and takes them out.</summary>
    /// <remarks>One for all, because a new one for each would grow with the square of the number of criteria.</remarks>
    public View View { get; } = new(facts, criteria);

    public object GetIdentity() => Number;
}

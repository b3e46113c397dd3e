using Criteria.Core.Facts;

namespace Criteria.Engine.Plans;

/// <summary>A case in the cells of a plan: all that the plan needs to know of it, in little memory. Does not change.</summary>
public sealed class PreparedCase
{
    internal PreparedCase(Plan plan, PreparedFacts ofCase, PreparedFacts[] nights) => (Plan, OfCase, Nights) = (plan, ofCase, nights);

    /// <summary>The plan that it is prepared for.</summary>
    internal Plan Plan { get; }

    /// <summary>What criteria of the case read.</summary>
    internal PreparedFacts OfCase { get; }

    /// <summary>What criteria of each night read.</summary>
    internal PreparedFacts[] Nights { get; }
}

/// <summary>Facts in cells.</summary>
/// <param name="Facts">The facts themselves, for conditions that are asked.</param>
/// <param name="Known">For each variable the cells that are possible; for a variable taken from a finding, nothing yet.</param>
internal sealed record PreparedFacts(FactSet Facts, ulong[] Known);

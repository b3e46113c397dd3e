using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>The signs of comparison.</summary>
internal static class Operators
{
    private static readonly Operator[] All = Enum.GetValues<Operator>();

    /// <summary>Whether the text is a sign, and which.</summary>
    public static bool TryFind(string sign, out Operator found)
    {
        foreach (var candidate in All)
        {
            if (candidate.Sign() == sign)
            {
                found = candidate;
                return true;
            }
        }

        found = default;
        return false;
    }
}

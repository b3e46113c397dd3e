using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>The three values as numbers in order: how many of "can be met" and "cannot fail" hold.</summary>
internal static class Kleene
{
    public const int NotMet = 0;
    public const int Unknown = 1;
    public const int Met = 2;

    public static Truth ToTruth(int value) => value switch
    {
        Met => Truth.Met,
        NotMet => Truth.NotMet,
        _ => Truth.Unknown,
    };
}

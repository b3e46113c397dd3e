namespace Criteria.Core.Cases;

/// <summary>What a case file says of how its nights are read together.</summary>
/// <param name="ReadBy">The rule, a word of the vocabulary.</param>
/// <param name="By">Who declared it, and when; null where names are taken out.</param>
public sealed record NightsDeclaration(string ReadBy, string? By)
{
    /// <summary>Where a case file names who declared it.</summary>
    public const string ByPlace = $"{NightsPlaces.Section}.declared_by";
}

/// <summary>The places of a case file that declare it.</summary>
internal static class NightsPlaces
{
    public const string Section = "nights_together";
    public const string ReadBy = $"{Section}.read_by";
}

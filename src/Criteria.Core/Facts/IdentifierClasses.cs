using System.Collections.Immutable;

namespace Criteria.Core.Facts;

/// <summary>What a fact can identify a person by: the classes that a de-identified case is without.</summary>
/// <remarks>
/// The eighteen classes of the Safe Harbor method of the HIPAA privacy rule, in short words, and free text, which may hold any of them.
/// Source: row R8 of the regulation register, a university's summary of that rule; the rule itself was not read.
/// </remarks>
public static class IdentifierClasses
{
    /// <summary>The day of something: only its year is shared.</summary>
    public const string Day = "day";

    /// <summary>The day of birth: of a very high age its year identifies as well, so nothing of it is shared.</summary>
    public const string BirthDate = "birth date";

    /// <summary>Text in somebody's own words.</summary>
    public const string FreeText = "free text";

    /// <summary>A code that no list knows may be any number.</summary>
    public const string OtherNumber = "other number";

    /// <summary>All classes.</summary>
    public static readonly ImmutableArray<string> All =
    [
        "name", "place", Day, BirthDate, "telephone", "fax", "e-mail", "social security number", "record number", "member number", "account", "licence", "vehicle", "device",
        "web address", "network address", "biometric", "photograph", OtherNumber, FreeText,
    ];
}

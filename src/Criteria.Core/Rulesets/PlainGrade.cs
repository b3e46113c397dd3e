using System.Collections.Immutable;

namespace Criteria.Core.Rulesets;

/// <summary>What a grade means, in words for the patient.</summary>
/// <param name="Grades">The grades.</param>
/// <param name="Say">The words: one or more short sentences.</param>
public sealed record PlainGrade(ImmutableArray<string> Grades, string Say);

using Criteria.Core.BoundTests;
using Criteria.Core.Rulesets;
using Criteria.Engine.BoundTests;

namespace Criteria.Documents.PolicyBook;

/// <summary>What a policy book is made of: rules, and what their tests gave.</summary>
/// <param name="Library">All rules.</param>
/// <param name="Rules">Those that the book shows.</param>
/// <param name="Scope">Which they are, in words: <c>in force on 1 July 2026, every payer and item</c>.</param>
/// <param name="Date">The date for the metadata of a file.</param>
/// <param name="Tests">The tests that stand beside them.</param>
/// <param name="Run">What the tests gave.</param>
public sealed record BookOrder(RulesetLibrary Library, RulesInForce Rules, string Scope, DateOnly Date, IReadOnlyCollection<BoundTest> Tests, BoundTestRun Run)
{
    /// <summary>The paper, where the format has pages.</summary>
    public Paper Paper { get; init; }

    /// <summary>One digest of the rules shown: what <c>rules list</c> and an assessment under the same rules print.</summary>
    public string Digest => Rules.Digest(Library.VocabularyDigest);
}

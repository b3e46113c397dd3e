using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Reading;

namespace Criteria.Core.BoundTests;

/// <summary>One test of a ruleset: a case, and what criteria must say of it.</summary>
/// <param name="Ruleset">The ruleset it is bound to.</param>
/// <param name="Name">What it is about, in a few words.</param>
/// <param name="Case">The case.</param>
/// <param name="Expectations">What is expected; at least one.</param>
public sealed record BoundTest(string Ruleset, string Name, Case Case, ImmutableArray<Expectation> Expectations);

/// <summary>What one criterion must say.</summary>
/// <param name="Criterion">The criterion's id.</param>
/// <param name="Word">A standing, or the word of a grade or class.</param>
/// <param name="Question">The open question that must be put, or null.</param>
/// <param name="Span">Where it stands.</param>
public sealed record Expectation(string Criterion, string Word, string? Question, SourceSpan Span);

/// <summary>A gap that cannot be closed, and why.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="What">The gap, in the words in which it is reported.</param>
/// <param name="Because">The reason.</param>
/// <param name="Span">Where it stands.</param>
public sealed record AcceptedGap(string Criterion, string What, string Because, SourceSpan Span);

/// <summary>What reading test files gave.</summary>
/// <param name="Tests">The tests, in the order of their files.</param>
/// <param name="AcceptedGaps">The gaps that cannot be closed.</param>
/// <param name="Problems">Every problem found; with an error no test can be relied on.</param>
public sealed record BoundTestReading(ImmutableArray<BoundTest> Tests, ImmutableArray<AcceptedGap> AcceptedGaps, ImmutableArray<Diagnostic> Problems);

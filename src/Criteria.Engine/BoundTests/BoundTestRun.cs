using System.Collections.Immutable;
using Criteria.Core.BoundTests;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.BoundTests;

/// <summary>An expectation that does not hold.</summary>
/// <param name="Test">The test.</param>
/// <param name="Expectation">What was expected.</param>
/// <param name="Found">What was found, and in a few words why.</param>
public sealed record BoundTestFailure(BoundTest Test, Expectation Expectation, string Found)
{
    /// <inheritdoc/>
    public override string ToString() =>
        $"{Expectation.Span}: {Expectation.Criterion}{(Test.Name.Length > 0 ? $" ({Test.Name})" : "")}: expected {Expected}, found {Found}";

    private string Expected => Expectation.Question is { } question ? $"{Expectation.Word} with the question {question}" : Expectation.Word;
}

/// <summary>What a criterion's own tests leave out.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="What">What no test shows.</param>
public sealed record BoundTestGap(Criterion Criterion, string What)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Criterion.Id}: {What}";
}

/// <summary>Runs the tests that stand beside rulesets, and finds what they leave out.</summary>
public sealed class BoundTestRun
{
    private readonly Dictionary<string, SeenStates> _seen = new(StringComparer.Ordinal);
    private readonly RulesetLibrary _library;
    private readonly Assessor _assessor;
    private readonly List<BoundTestFailure> _failures = [];

    private BoundTestRun(RulesetLibrary library)
    {
        _library = library;
        _assessor = new Assessor(library);
    }

    /// <summary>How many expectations were compared.</summary>
    public int Compared { get; private set; }

    /// <summary>The expectations that do not hold.</summary>
    public IReadOnlyList<BoundTestFailure> Failures => _failures;

    /// <summary>Runs tests.</summary>
    /// <param name="library">The rules.</param>
    /// <param name="tests">The tests.</param>
    public static BoundTestRun Of(RulesetLibrary library, IEnumerable<BoundTest> tests)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(tests);
        var run = new BoundTestRun(library);
        foreach (var test in tests)
        {
            run.Run(test);
        }

        return run;
    }

    /// <summary>What the tests of a ruleset leave out, without the gaps that were accepted with a reason.</summary>
    /// <param name="ruleset">The ruleset.</param>
    /// <param name="accepted">Accepted gaps.</param>
    public ImmutableArray<BoundTestGap> Gaps(string ruleset, IEnumerable<AcceptedGap> accepted)
    {
        var allowed = accepted.Select(gap => (gap.Criterion, gap.What)).ToHashSet();
        return
        [
            .. _library.All.Criteria.Where(criterion => criterion.Ruleset.Id == ruleset)
                .SelectMany(criterion => (_seen.GetValueOrDefault(criterion.Id) ?? new SeenStates()).Gaps(criterion).Select(what => new BoundTestGap(criterion, what)))
                .Where(gap => !allowed.Contains((gap.Criterion.Id, gap.What))),
        ];
    }

    private void Run(BoundTest test)
    {
        var assessment = _assessor.Assess(test.Case, test.Case.RulesDate ?? DateOnly.MaxValue);
        foreach (var expectation in test.Expectations)
        {
            Compared++;
            if (assessment.Findings.FirstOrDefault(finding => finding.Id == expectation.Criterion) is not { } finding)
            {
                _failures.Add(new BoundTestFailure(test, expectation, "no such finding: its ruleset is not in force for this payer, item and date"));
                continue;
            }

            if (!_seen.TryGetValue(finding.Id, out var seen))
            {
                _seen.Add(finding.Id, seen = new SeenStates());
            }

            seen.Add(finding, finding.Criterion.PerNight && test.Case.Nights is [var night, ..] ? night.Facts : test.Case.Facts);
            if (!Holds(expectation, finding))
            {
                _failures.Add(new BoundTestFailure(test, expectation, Described(finding)));
            }
        }
    }

    private static bool Holds(Expectation expectation, Finding finding) =>
        (finding.Standing.Words() == expectation.Word || (finding.Standing == Standing.Met && finding.Value?.Band == expectation.Word))
        && (expectation.Question is null || finding.Silent.Any(question => question.Id == expectation.Question));

    private static string Described(Finding finding)
    {
        var words = finding is { Standing: Standing.Met, Value.Band.Length: > 0 } ? finding.Value!.Band : finding.Standing.Words();
        var why = finding.Standing != Standing.Undetermined ? finding.Value?.NumberText ?? ""
            : !finding.Silent.IsEmpty ? $"open question {string.Join(", ", finding.Silent.Select(question => question.Id))}"
            : $"missing: {string.Join("; ", finding.Missing.Select(fact => fact.Fact))}";
        return why.Length == 0 ? words : $"{words} ({why})";
    }
}

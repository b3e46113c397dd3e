using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Engine.Findings;

/// <summary>The messages about an assessment as a whole.</summary>
internal static class AssessmentDiagnostics
{
    public static Diagnostic NoCoverageRules(string payer, string item, DateOnly date, IEnumerable<string> known, string file)
    {
        var all = known.ToArray();
        return new Diagnostic(
            "CA0001", Severity.Warning, $"no ruleset for `{payer}`, `{item}` in force on {date.ToIso()}; coverage was not checked", SourceSpan.StartOf(file),
            all.Length == 0 ? null : $"there are rules for {string.Join("; ", all)}");
    }

    public static Diagnostic ReviewPassed(string ruleset, DateOnly reviewBy, string file) => new(
        "CA0002", Severity.Warning, $"the ruleset `{ruleset}` was to be reviewed by {reviewBy.ToIso()}", SourceSpan.StartOf(file), "check its sources before relying on it");

    public static Diagnostic PayerWithoutItem(string present, string absent, string file) => new(
        "CA0003", Severity.Warning, $"the case names the {present} and not the {absent}; coverage was not checked", SourceSpan.StartOf(file));

    public static Diagnostic LeftOut(string ruleset, DateOnly date, string file) => new(
        "CA0004", Severity.Warning, $"the ruleset `{ruleset}` is left out: it refers to rules that are not in force on {date.ToIso()}", SourceSpan.StartOf(file),
        "check its dates against those of the rulesets it reads");
}

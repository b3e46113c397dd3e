using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Wording;

/// <summary>Which findings of an assessment a reader is shown. JSON and traces hold all.</summary>
internal sealed class ShownFindings(Assessment assessment)
{
    /// <summary>Whether a finding gets lines of its own.</summary>
    public bool IsInFull(Finding finding) => finding.Standing != Standing.NotApplicable && finding.Criterion.Shown != Shown.InTheTrace
        && (finding.Criterion.Shown != Shown.WhenMet || finding.Standing == Standing.Met || !finding.Silent.IsEmpty) && !IsEmptyOption(finding) && !MayNotConcernTheClaim(finding);

    /// <summary>Whether it is a part of a ruleset about another kind of claim: its results say so, and their parts need not.</summary>
    public bool IsOfAnotherClaim(Finding finding) => finding.Criterion is { Shown: Shown.Always, Ruleset: { Function: RulesetFunction.Coverage, Id: var id } }
        && assessment.Findings.Where(result => result.Criterion.Ruleset.Id == id && result.Criterion.Shown == Shown.AtTheTop).ToArray() is { Length: > 0 } results
        && results.All(result => result.Standing == Standing.NotApplicable);

    /// <summary>Whether it is open that the claim needs it. What a claim needs is spelt out once one result of the ruleset applies.</summary>
    public bool MayNotConcernTheClaim(Finding finding) => finding is { Standing: Standing.Undetermined, Criterion.Ruleset.Function: RulesetFunction.Coverage }
        && IsOpenWhetherItApplies(finding)
        && assessment.Findings.Where(result => result.Criterion.Ruleset.Id == finding.Criterion.Ruleset.Id && result.Criterion.Shown == Shown.AtTheTop)
            .All(result => result.Standing == Standing.NotApplicable || IsOpenWhetherItApplies(result));

    /// <summary>Whether it is a clinical flag, answer or option of which it is open whether it concerns this patient at all: naming each would bury the rest.</summary>
    public static bool IsFlagThatMayNotApply(Finding finding) => finding is
    {
        Standing: Standing.Undetermined, Silent.IsEmpty: true, Criterion: { Shown: Shown.WhenMet or Shown.WhenItApplies, Ruleset.Function: RulesetFunction.Clinical },
    } && IsOpenWhetherItApplies(finding);

    /// <summary>Whether it is an option of which nothing is known, for or against; it is no help to anyone.</summary>
    public static bool IsEmptyOption(Finding finding) => finding.Option is { For.IsEmpty: true, Against.IsEmpty: true, Unknown.IsEmpty: true };

    /// <summary>What is missing; and what would mend a documentation item that is not met.</summary>
    public static IEnumerable<(string Ask, string Owner, Finding Finding)> Questions(Finding finding)
    {
        foreach (var fact in finding.Missing.Where(fact => fact.Ask.Length > 0))
        {
            yield return (fact.Ask, fact.Owner, finding);
        }

        if (finding is { Standing: Standing.NotMet, Criterion: { Ask: { } ask, Shown: Shown.Always, Ruleset.Function: RulesetFunction.Coverage } criterion })
        {
            yield return (ask, criterion.Owner ?? "", finding);
        }
    }

    private static bool IsOpenWhetherItApplies(Finding finding) => finding.Because.Parts.Any(part => part is { Kind: "applies-when", Truth: Truth.Unknown });
}

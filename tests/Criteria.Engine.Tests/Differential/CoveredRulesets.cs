using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Differential;

/// <summary>Which rulesets are derived a second time, and what their random cases need beside their thresholds.</summary>
internal static class CoveredRulesets
{
    /// <summary>Rulesets without a second derivation. The list is to shrink to nothing.</summary>
    public static readonly string[] NotYet =
    [
        "figures-that-must-agree",
        "follow-up",
        "grading-second-view",
        "home-test-report",
        "jaw-muscle",
        "medicare-oral-appliance",
        "medicare-oral-appliance-documents",
        "medicare-pap",
        "medicare-pap-changes",
        "medicare-pap-continued",
        "medicare-pap-documents",
        "medicare-pap-entering",
        "night-adequacy",
        "night-preparation",
        "occupational-driving",
        "osa-diagnosis",
        "osa-severity",
        "oxygen-burden",
        "pathway-appliance",
        "pathway-laboratory",
        "pathway-pap",
        "pathway-position-weight",
        "pathway-steps",
        "pathway-surgery",
        "perioperative-grade",
        "perioperative-pregnancy",
        "recorded-channels",
        "safety-cautions",
        "uk-guidance",
    ];

    /// <summary>Criteria that are left out of a covered ruleset, with the reason.</summary>
    public static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
    };

    /// <summary>Standings that no case can have, with the reason.</summary>
    public static readonly Dictionary<(string Criterion, string Says), string> CannotBe = new()
    {
    };

    /// <summary>The kinds of documents and trials that a ruleset asks for; for others, every kind.</summary>
    public static readonly Dictionary<string, string[]> Kinds = new(StringComparer.Ordinal)
    {
        ["medicare-pap-supplies"] = ["order", "supply delivery", "refill request", "clinical evaluation", "adherence report", "patient statement"],
    };

    /// <summary>Values near limits that are not fixed numbers, such as a multiple of another fact.</summary>
    public static readonly Dictionary<string, decimal[]> Near = new(StringComparer.Ordinal)
    {
        ["height"] = [160, 180, 200],
    };

    public static string[] Ids { get; } = [.. Rules.Library.Rulesets.Where(ruleset => ruleset.IsInForce(Rules.Date)).Select(ruleset => ruleset.Id).Distinct().Except(NotYet)];

    public static string RulesFile(string ruleset) => Path.Combine(AppContext.BaseDirectory, "Differential", $"{ruleset}.clp");

    public static Ruleset Find(string id) => Rules.Library.Rulesets.Single(ruleset => ruleset.Id == id && ruleset.IsInForce(Rules.Date));
}

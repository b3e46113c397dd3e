using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Differential;

/// <summary>Which rulesets are derived a second time, and what their random cases need beside their thresholds.</summary>
internal static class CoveredRulesets
{
    /// <summary>Rulesets without a second derivation. The list is to shrink to nothing.</summary>
    public static readonly string[] NotYet =
    [
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
        "night-preparation",
        "occupational-driving",
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
        [("hsat.option-home", "not met")] = "both tests are always laid out, with what speaks for and against each",
        [("hsat.option-laboratory", "not met")] = "as above",
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
        ["supine_time"] = [19, 20, 40, 180, 360],
        ["other_time"] = [19, 20, 40, 180, 360],
    };

    /// <summary>What makes a night a good one.</summary>
    public static readonly Dictionary<string, FactValue> Leaning = new(StringComparer.Ordinal)
    {
        ["covers_usual_sleep"] = new YesNoValue(true),
        ["technically_adequate"] = new YesNoValue(true),
        ["pap_used"] = new YesNoValue(false),
        ["channel_airflow"] = new YesNoValue(true),
        ["usable.airflow"] = new NumberValue(Interval.Exactly(400)),
        ["usable.oximetry"] = new NumberValue(Interval.Exactly(420)),
        ["predominantly_obstructive"] = new YesNoValue(true),
        ["scoring"] = new ChoiceValue("edited"),
        ["raw_data_reviewed"] = new YesNoValue(true),
        ["interpreter_qualified"] = new YesNoValue(true),
        ["channel_position"] = new YesNoValue(true),
    };

    public static string[] Ids { get; } = [.. Rules.Library.Rulesets.Where(ruleset => ruleset.IsInForce(Rules.Date)).Select(ruleset => ruleset.Id).Distinct().Except(NotYet)];

    public static string RulesFile(string ruleset) => Path.Combine(AppContext.BaseDirectory, "Differential", $"{ruleset}.clp");

    public static Ruleset Find(string id) => Rules.Library.Rulesets.Single(ruleset => ruleset.Id == id && ruleset.IsInForce(Rules.Date));
}

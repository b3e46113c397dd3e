using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Differential;

/// <summary>Which rulesets are derived a second time, and what their random cases need beside their thresholds.</summary>
internal static class CoveredRulesets
{
    private const string WholeFile = "a whole file must fit at once; each of its parts is seen both ways";
    private const string ManyDays = "the claim, two devices and a paper must lie a certain number of days apart, which chance does not bring about";

    /// <summary>Rulesets without a second derivation. The list is to shrink to nothing.</summary>
    public static readonly string[] NotYet =
    [
    ];

    /// <summary>Criteria that are left out of a covered ruleset, with the reason.</summary>
    public static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
    };

    /// <summary>Standings that no case can have, or that chance does not bring about, with the reason.</summary>
    public static readonly Dictionary<(string Criterion, string Says), string> NotSeen = new()
    {
        [("jaw.option-dental", "not met")] = "five grounds must all be excluded at once, which chance does not do; the bound tests hold it",
        [("pap.claim-kind", "not met")] = "a kind of claim that is not stated is unknown, not lacking",
        [("pap.file-ready", "met")] = WholeFile,
        [("oral.file-ready", "met")] = WholeFile,
        [("pap.switch.new-evaluation", "met")] = ManyDays,
        [("pap.switch", "met")] = ManyDays,
        [("pap.continued-coverage", "met")] = "a dozen documents and answers must fit at once; each of them is seen both ways",
        [("jaw.episodes", "not met")] = "it says that a description is on file; what is not on file is unknown",
        [("hsat.option-home", "not met")] = "laid out where it applies, with what speaks for and against it",
        [("hsat.option-laboratory", "not met")] = "always laid out, with what speaks for and against it",
        [("driving.option-fast", "not met")] = "laid out where it applies, with what speaks for it",
        [("perioperative.option-screening", "not met")] = "laid out where it applies, with what speaks for and against it",
        [("perioperative.option-delay", "not met")] = "as above",
        [("pregnancy.option-test", "not met")] = "laid out where it applies, with what speaks for it",
        [("hst.interpreter", "not met")] = "without a credential the local policy decides, so it stays open",
        [("implant.coverage", "met")] = "some thirty answers have to fit at once; the bound tests hold it",
        [("pathway.pap", "not met")] = "as above, where it applies",
        [("pathway.pap-start", "not met")] = "as above, where it applies",
        [("appliance.option", "not met")] = "as above, where it applies",
        [("appliance.option-snoring", "not met")] = "as above, where it applies",
        [("position.option", "not met")] = "as above, where it applies",
        [("weight.option", "not met")] = "as above, where it applies",
        [("weight.option-bariatric", "not met")] = "as above, where it applies",
        [("weight.option-drug", "not met")] = "as above, where it applies",
        [("surgery.option-referral", "not met")] = "as above, where it applies",
        [("surgery.option-pressure", "not met")] = "as above, where it applies",
        [("stimulation.option", "not met")] = "as above, where it applies",
        [("laboratory.option-pattern", "not met")] = "as above, where it applies",
        [("hypoventilation.option-gas", "not met")] = "as above, where it applies",
        [("hypoventilation.option-cpap-first", "not met")] = "as above, where it applies",
        [("servo-ventilation.option", "not met")] = "as above, where it applies",
        [("laboratory.option-heart-failure", "not met")] = "as above, where it applies",
        [("rhythm.option-screening", "not met")] = "as above, where it applies",
        [("hypoventilation.measured", "not met")] = "it says that a figure is on file; what is not on file is unknown",
        [("follow-up.option-test", "not met")] = "as above, where it applies",
        [("follow-up.option-pap-test", "not met")] = "as above, where it applies",
        [("follow-up.option-laboratory", "not met")] = "as above, where it applies",
        [("oxygen.figures", "not met")] = "what is not on file may still be found",
        [("oxygen.below-90", "not met")] = "what is not on file may still be found",
        [("oxygen.at-or-below-88", "not met")] = "what is not on file may still be found",
        [("oxygen.odi", "not met")] = "what is not on file may still be found",
        [("report.age", "not met")] = "what is not on file may still be found",
        [("report.risk-answers", "not met")] = "what is not on file may still be found",
        [("report.exclusions-answered", "not met")] = "what is not on file may still be found",
        [("report.driving-asked", "not met")] = "what is not on file may still be found",
        [("report.set-up", "not met")] = "what is not on file may still be found",
        [("report.times", "not met")] = "what is not on file may still be found",
        [("report.index", "not met")] = "what is not on file may still be found",
        [("report.counts", "not met")] = "what is not on file may still be found",
        [("report.position", "not met")] = "what is not on file may still be found",
        [("report.heart-rate", "not met")] = "what is not on file may still be found",
        [("report.snoring", "not met")] = "what is not on file may still be found",
    };

    /// <summary>The kinds of documents and trials that a ruleset asks for; for others, every kind.</summary>
    public static readonly Dictionary<string, string[]> Kinds = new(StringComparer.Ordinal)
    {
        ["example-plan-pap"] = ["clinical evaluation", "sleep test report"],
        ["medicare-home-test"] = ["test order", "clinical evaluation"],
        ["medicare-nerve-stimulation"] = ["PAP", "oral appliance"],
        ["medicare-oral-appliance-documents"] = ["order", "clinical evaluation", "sleep test report", "delivery record", "supplier form", "test order", "credential record", "adherence report", "PAP"],
        ["medicare-pap-documents"] = ["order", "clinical evaluation", "sleep test report", "delivery record", "supplier form", "instruction record", "credential record", "test order", "titration report", "PAP"],
        ["medicare-pap-entering"] = ["clinical evaluation", "sleep test report", "patient statement", "supplier attestation", "PAP"],
        ["medicare-pap-changes"] = ["clinical evaluation", "order", "adherence report", "titration report", "PAP", "oral appliance"],
        ["medicare-pap-supplies"] = ["order", "supply delivery", "refill request", "clinical evaluation", "adherence report", "patient statement"],
        ["pathway-steps"] = ["PAP", "oral appliance"],
        ["pathway-pap"] = ["PAP", "oral appliance", "instruction record", "letter"],
        ["pathway-appliance"] = ["oral appliance", "PAP", "surgery", "clinical evaluation", "order"],
        ["pathway-position-weight"] = ["PAP", "weight loss"],
        ["pathway-surgery"] = ["PAP", "oral appliance"],
        ["follow-up"] = ["PAP", "oral appliance", "positional therapy", "sleep test report", "adherence report", "letter"],
        ["medicare-pap"] = ["clinical evaluation", "test order", "sleep test report", "instruction record", "PAP"],
        ["medicare-pap-continued"] = ["clinical evaluation", "test order", "sleep test report", "titration report", "instruction record", "adherence report", "PAP"],
        ["medicare-oral-appliance"] = ["clinical evaluation", "test order", "sleep test report", "order", "PAP"],
        ["home-test-report"] = ["sleep test report", "test order"],
        ["night-preparation"] = ["test order", "sleep test report"],
        ["safety-cautions"] = ["test order", "sleep test report"],
    };

    /// <summary>Values near limits that are not fixed numbers, such as a multiple of another fact.</summary>
    public static readonly Dictionary<string, decimal[]> Near = new(StringComparer.Ordinal)
    {
        ["height"] = [160, 180, 200],
        ["supine_time"] = [19, 20, 40, 180, 360],
        ["other_time"] = [19, 20, 40, 180, 360],
        ["trial.residual_rate"] = [14.9m, 15, 15.1m, 20],
        ["trial.nights_above_4h"] = [3, 4, 5, 6],
        ["time_below_90"] = [0, 1, 5, 6, 20, 420, 421],
        ["low_saturation_total"] = [0, 1, 4, 5, 6, 20, 420, 421],
        ["low_saturation_longest"] = [0, 1, 4, 5, 6, 20, 421],
        ["earlier_rate"] = [4, 9.9m, 10, 10.1m, 20, 30],
        ["untreated_rate"] = [8, 9.8m, 10, 18, 19.8m, 20, 20.2m, 40],
        ["treated_rate"] = [4, 4.9m, 5, 5.1m, 9, 9.9m, 10, 10.1m, 20],
    };

    /// <summary>What makes a night and a claim good ones.</summary>
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
        ["device_cleared"] = new YesNoValue(true),
        ["test_provider_qualifies"] = new YesNoValue(true),
        ["local_test_policy_met"] = new YesNoValue(true),
        ["supplier_handled_test"] = new YesNoValue(false),
        ["recording_in_fragments"] = new YesNoValue(false),
        ["dentist_handled_test"] = new YesNoValue(false),
        ["appliance_code"] = new ChoiceValue("E0486"),
        ["appliance_custom_advancement"] = new YesNoValue(true),
        ["appliance_fixed_hinge"] = new YesNoValue(true),
        ["appliance_beyond_front_teeth"] = new YesNoValue(true),
        ["appliance_fine_adjustment"] = new YesNoValue(true),
        ["appliance_keeps_setting"] = new YesNoValue(true),
        ["appliance_holds_jaw"] = new YesNoValue(true),
        ["appliance_no_later_visits"] = new YesNoValue(true),
        ["appliance_listed"] = new YesNoValue(true),
        ["appliance_provided_by_dentist"] = new YesNoValue(true),
        ["appliance_billed_by_dentist"] = new YesNoValue(true),
        ["appliance_dentist_enrolled"] = new YesNoValue(true),
        ["night.date"] = new DateValue(Rules.Date.AddDays(-10)),
        ["report_reviewed_on"] = new DateValue(Rules.Date.AddDays(1)),
        ["coverage.stage"] = new ChoiceValue("continued"),
        ["reevaluated_on"] = new DateValue(Rules.Date.AddDays(30)),
        ["coverage.service_date"] = new DateValue(Rules.Date.AddDays(40)),
        ["trial.start"] = new DateValue(Rules.Date.AddDays(-61)),
        ["document.item"] = new ChoiceValue("oral appliance"),
        ["document.in_person"] = new YesNoValue(true),
        ["document.signed"] = new YesNoValue(true),
        ["document.author"] = new ChoiceValue("physician"),
    };

    /// <summary>What a ruleset is mostly about, without which most of it never applies: these values come up instead of any.</summary>
    public static readonly Dictionary<(string Ruleset, string Fact), FactValue[]> Often = new()
    {
        [("medicare-pap-changes", "coverage.stage")] = Words("switched device", "switched device", "switched device", "replacement", "continued", "initial"),
        [("medicare-pap-changes", "device_code")] = Words("E0470", "E0470", "E0601"),
        [("medicare-pap-changes", "coverage.service_date")] = Days(0, 100),
        [("medicare-pap-changes", "trial.device")] = Words("E0601", "E0470"),
        [("medicare-pap-changes", "trial.start")] = Days(-100, -100, -100, -42, -41, -38, -37, -36, -11, -10, -9, -8, -7, 5),
        [("medicare-pap-changes", "trial.outcome")] = Words("not effective", "continued", "not tolerated"),
        [("medicare-pap-changes", "document.date")] = Days(-70, -69, -68, -40, -11, -10, -9, -8, 18, 19, 20, 21, 84, 85),
        [("medicare-pap-changes", "document.item")] = Words("pap"),
        [("medicare-pap-changes", "document.device")] = Words("E0470"),
        [("medicare-pap-changes", "document.data_source")] = Words("download", "display", "hour meter totals"),
        [("medicare-pap-changes", "document.shows_adherence")] = [new YesNoValue(true)],
        [("medicare-pap-changes", "document.records_improvement")] = [new YesNoValue(true)],
        [("medicare-pap-changes", "document.reviews_adherence")] = [new YesNoValue(true)],
        [("medicare-pap-changes", "replaced_device_from")] = Days(-1828, -1827, -1826, -1825, -1824, -100),
        [("medicare-pap-entering", "coverage.stage")] = Words("entering medicare"),
        [("medicare-pap-documents", "coverage.stage")] =
            Words("initial", "continued", "after failed trial", "switched device", "replacement", "entering medicare"),
        [("medicare-pap-documents", "document.item")] = Words("pap"),
        [("medicare-pap-supplies", "document.item")] = Words("pap"),
    };

    private static FactValue[] Words(params string[] words) => [.. words.Select(word => new ChoiceValue(word))];

    private static FactValue[] Days(params int[] days) => [.. days.Select(day => new DateValue(Rules.Date.AddDays(day)))];

    /// <summary>The rulesets in force that are derived a second time.</summary>
    public static string[] Ids { get; } = [.. Rules.Library.Rulesets.Where(ruleset => ruleset.IsInForce(Rules.Date)).Select(ruleset => ruleset.Id).Distinct().Except(NotYet)];

    /// <summary>Where the second derivation of a ruleset is.</summary>
    public static string RulesFile(string ruleset) => Path.Combine(AppContext.BaseDirectory, "Differential", $"{ruleset}.clp");

    /// <summary>The ruleset of that name.</summary>
    public static Ruleset Find(string id) => Rules.Library.Rulesets.Single(ruleset => ruleset.Id == id && ruleset.IsInForce(Rules.Date));
}

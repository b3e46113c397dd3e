using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

/// <summary>What each leaf of a condition says of facts in every state.</summary>
public sealed class LeafTests
{
    [Theory]
    [InlineData("hypertension", "yes", Met)]
    [InlineData("hypertension", "no", NotMet)]
    [InlineData("hypertension", "unknown", Unknown)]
    [InlineData("hypertension", "not applicable", NotMet)] // what does not apply is a no
    [InlineData("hypertension = no", "yes", NotMet)]
    [InlineData("hypertension = no", "no", Met)]
    [InlineData("hypertension = no", "unknown", Unknown)]
    [InlineData("hypertension = no", "not applicable", Met)]
    [InlineData("hypertension = yes", "yes", Met)]
    [InlineData("{ not: hypertension }", "unknown", Unknown)]
    [InlineData("hypertension is recorded", "no", Met)]
    [InlineData("hypertension is recorded", "unknown", Unknown)] // never not met: it may still be found
    [InlineData("hypertension is recorded", "not applicable", Unknown)]
    public void Evaluate_OfAYesNoFact_KeepsItsStatesApart(string when, string written, Truth expected) =>
        Evaluate(when, $"intake: {{ conditions: {{ hypertension: {written} }} }}").ShouldBe(expected);

    [Theory]
    [InlineData("hypertension")]
    [InlineData("hypertension = no")]
    [InlineData("hypertension is recorded")]
    [InlineData("neck >= 43 cm")]
    [InlineData("neck != 43 cm")]
    [InlineData("sex is male")]
    [InlineData("sex is not male")]
    [InlineData("visit_date before 2026-06-01")]
    [InlineData("neck < height")]
    public void Evaluate_OfAFactNobodyMentions_IsUnknown(string when)
    {
        Evaluate(when, "patient: { age: 52 years }").ShouldBe(Unknown);
        Evaluate($"{{ not: {{ all: [{when}] }} }}", "patient: { age: 52 years }").ShouldBe(Unknown);
    }

    [Theory]
    [InlineData("42.9 cm", NotMet)]
    [InlineData("43 cm", Met)]
    [InlineData("43.1 cm", Met)]
    [InlineData("16.92 in", NotMet)] // 42.9768 cm
    [InlineData("16.93 in", Met)] // 43.0022 cm
    [InlineData("unknown", Unknown)]
    [InlineData("not applicable", Unknown)] // a number that does not apply cannot be compared
    public void Evaluate_OfANumberAroundItsBound_IsInclusiveBelow(string neck, Truth expected) =>
        Evaluate("neck >= 43 cm", $"intake: {{ neck: {neck} }}").ShouldBe(expected);

    // UCUM check value: 17 [in_i] = 43.18 cm.
    [Theory]
    [InlineData("neck = 17 in", Met)]
    [InlineData("neck >= 17 in", Met)]
    [InlineData("neck > 17 in", NotMet)]
    [InlineData("neck <= 17 in", Met)]
    [InlineData("neck < 17 in", NotMet)]
    [InlineData("neck != 17 in", NotMet)]
    public void Evaluate_OfTheSameLengthInTwoUnits_IsEqual(string when, Truth expected) => Evaluate(when, "intake: { neck: 43.18 cm }").ShouldBe(expected);

    [Theory]
    [InlineData("sex is male", Met)]
    [InlineData("sex is not male", NotMet)]
    [InlineData("sex is female or male", Met)]
    [InlineData("sex is not female or not stated", Met)]
    [InlineData("sex is not stated", NotMet)] // the word itself, not a negation
    public void Evaluate_OfAChoice_ReadsItsWords(string when, Truth expected) => Evaluate(when, "patient: { sex: male }").ShouldBe(expected);

    [Theory]
    [InlineData("neck < height", Met)]
    [InlineData("neck >= height", NotMet)]
    public void Evaluate_OfTwoFacts_ComparesThem(string when, Truth expected) => Evaluate(when, "intake: { neck: 43 cm, height: 178 cm }").ShouldBe(expected);

    [Theory]
    [InlineData(2, "yes", "yes", "no", Met)]
    [InlineData(2, "yes", "no", "no", NotMet)]
    [InlineData(2, "yes", "unknown", "no", Unknown)]
    [InlineData(2, "unknown", "unknown", "no", Unknown)]
    [InlineData(2, "no", "unknown", "no", NotMet)]
    [InlineData(1, "no", "unknown", "yes", Met)]
    [InlineData(3, "yes", "yes", "yes", Met)]
    public void Evaluate_OfAtLeast_CountsWhatIsAndWhatMayBe(int count, string first, string second, string third, Truth expected) =>
        Evaluate($"{{ at_least: {count}, of: [hypertension, stroke, insomnia] }}", $"intake: {{ conditions: {{ hypertension: {first}, stroke: {second}, insomnia: {third} }} }}")
            .ShouldBe(expected);

    [Theory]
    [InlineData("none", "per_hour: 14.0", Unknown)]
    [InlineData("as printed", "per_hour: 14.0", Met)]
    [InlineData("to whole numbers", "per_hour: 14.0", Met)]
    [InlineData("none", "events: 101, over: 420 min", NotMet)] // 14.43 per hour
    [InlineData("as printed", "per_hour: 14.4, events: 101, over: 420 min", NotMet)]
    [InlineData("to whole numbers", "events: 101, over: 420 min", Met)]
    [InlineData("to whole numbers", "events: 102, over: 420 min", NotMet)] // 14.57 per hour
    public void Evaluate_OfARate_FollowsTheRoundingOfItsRuleset(string rounding, string index, Truth expected)
    {
        var rules = Rules.One("when: rei_4 <= 14 /h", $"rounding: {rounding}");

        var outcome = rules.Evaluate($"nights: [{{ indices: [{{ index: REI, hypopnea: 4 %, {index} }}] }}]");

        outcome.Truth.ShouldBe(expected);
    }

    [Fact]
    public void Evaluate_OfANumberThatWasNotRounded_IgnoresTheRounding()
    {
        var rules = Rules.One("when: neck >= 43 cm", "rounding: to whole numbers");

        rules.Evaluate("intake: { neck: 42.9 cm }").Truth.ShouldBe(NotMet);
    }

    // 45 * 4 = 180, and 25 % of 180 is 45: exact on both sides.
    [Theory]
    [InlineData("height >= 4 times neck", "45 cm", Met)]
    [InlineData("height > 4 times neck", "45 cm", NotMet)]
    [InlineData("height >= 4 times neck", "45.1 cm", NotMet)]
    [InlineData("neck >= 25 % of height", "45 cm", Met)]
    [InlineData("neck > 25 % of height", "45 cm", NotMet)]
    [InlineData("neck > 25 % of height", "45.1 cm", Met)]
    [InlineData("neck < 0.3 times height", "54 cm", NotMet)]
    [InlineData("neck > 25 % of height", "unknown", Unknown)]
    public void Evaluate_OfAMultipleOrShare_IsExact(string when, string neck, Truth expected) =>
        Evaluate(when, $"intake: {{ neck: {neck}, height: 180 cm }}").ShouldBe(expected);

    // 120 events in 6 h 55 min are 17.35 per hour; from 6 h 54.5 min to 6 h 55.5 min, 17.33 to 17.37.
    [Theory]
    [InlineData("per_hour: 17.3, events: 120, over: 6 h 55 min", Met)]
    [InlineData("per_hour: 17.4, events: 120, over: 6 h 55 min", Met)]
    [InlineData("per_hour: 17.2, events: 120, over: 6 h 55 min", NotMet)]
    [InlineData("per_hour: 17, events: 120, over: 6 h 55 min", Met)]
    [InlineData("per_hour: 18, events: 120, over: 6 h 55 min", NotMet)]
    [InlineData("per_hour: 17.3, events: 120", Unknown)]
    [InlineData("events: 120, over: 6 h 55 min", Unknown)]
    public void Evaluate_OfAPrintedAndACountedRate_AllowsForRounding(string index, Truth expected) =>
        Rules.One("when: rei_4.printed agrees with rei_4.counted").Criteria[0].Body
            .Evaluate(new View(Tiny.Night($"indices: [{{ index: REI, hypopnea: 4 %, {index} }}]"), 1)).Truth.ShouldBe(expected);

    // A sum with a part missing can still grow: it settles nothing by overlapping.
    [Theory]
    [InlineData("airflow: 3 h, oximetry: 4 h", "7 h", Met)]
    [InlineData("airflow: 3 h, oximetry: 4 h", "6 h", NotMet)]
    [InlineData("airflow: 3 h", "7 h", Unknown)]
    [InlineData("airflow: 8 h", "7 h", NotMet)]
    public void Evaluate_OfASumAgainstAFigure_WaitsForTheMissingPart(string usable, string recorded, Truth expected) =>
        Evaluate("usable_sum agrees with recording_time", $"nights: [{{ recording_time: {recorded}, usable: {{ {usable} }} }}]").ShouldBe(expected);

    [Theory]
    [InlineData("G47.33", "2025-09-30", Met)]
    [InlineData("G47.30", "2025-09-30", NotMet)] // in the set from the next day on
    [InlineData("G47.30", "2025-10-01", Met)]
    [InlineData("G47.39", "2025-09-30", Met)] // its last day
    [InlineData("G47.39", "2025-10-01", NotMet)]
    [InlineData("R06.83", "2025-10-01", NotMet)]
    [InlineData("unknown", "2025-10-01", Unknown)]
    [InlineData("G47.33", "unknown", Met)] // on whatever day
    [InlineData("G47.30", "unknown", Unknown)]
    [InlineData("R06.83", "unknown", NotMet)]
    public void Evaluate_OfACode_AsksTheSetOnTheDate(string code, string date, Truth expected) =>
        Evaluate("diagnosis_code among sleep-apnea on visit_date", $"intake: {{ diagnosis_code: {code}, visit_date: {date} }}").ShouldBe(expected);

    [Theory]
    [InlineData("", "diagnosis_code, visit_date")]
    [InlineData("diagnosis_code: G47.30", "visit_date")]
    [InlineData("visit_date: 2025-10-01", "diagnosis_code")]
    public void Missing_OfACode_IsWhatIsNotKnown(string intake, string expected)
    {
        var leaf = Rules.One("when: diagnosis_code among sleep-apnea on visit_date").Criteria[0].Body;
        var view = new View(Tiny.Case($"case: T-1\nintake: {{ {intake} }}\n").Facts, 1);
        var missing = new MissingFacts();

        leaf.AddMissing(view, missing);

        string.Join(", ", missing.ToArray().Select(fact => fact.Fact)).ShouldBe(expected);
    }

    private static Truth Evaluate(string when, string section) => Rules.One("when: " + when).Evaluate(section).Truth;
}

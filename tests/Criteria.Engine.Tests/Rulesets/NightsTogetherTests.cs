using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Engine.Findings;
using Criteria.Engine.Output;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>Nights keep their own grades; they are put together only by a rule that a local overlay or the case declares.</summary>
public sealed class NightsTogetherTests
{
    // 60 events in 6 h: 10.0/h; 110 in 5 h: 22.0/h; 104 in 8 h: 13.0/h. Mean 15.0 exactly; 274 in 19 h: 14.42; worst 22.0.
    private static readonly CaseText ThreeNights = Night("10.0", 60, "6 h").Night(Further("2026-06-04", "22.0", 110, "5 h")).Night(Further("2026-06-05", "13.0", 104, "8 h"));

    [Fact]
    public void Nights_WithoutADeclaredRule_KeepTheirGradesAndAreNotCombined()
    {
        var together = Only(ThreeNights);

        together.Rule.ShouldBe(NightRule.Each);
        together.Value.ShouldBeNull();
        together.Grade.ShouldBeEmpty();
        together.Differ.ShouldBeTrue();
        together.Graded.Select(night => $"{night.Night} {night.Value!.Band}").ShouldBe(["2026-06-03 mild", "2026-06-04 moderate", "2026-06-05 mild"]);
    }

    [Theory]
    [InlineData("mean", "15", "moderate")]
    [InlineData("pooled", "14.421053", "mild")]
    [InlineData("worst", "22", "moderate")]
    public void Nights_WithADeclaredRule_AreCombinedByIt(string rule, string value, string grade)
    {
        var together = Only(ThreeNights, rule);

        together.Value!.Value.IsExact.ShouldBeTrue();
        together.Value.Value.Low.ToText(6).ShouldBe(value);
        together.Grade.ShouldBe(grade);
    }

    // Three equal parts of a threshold: the mean lies on it exactly, though no decimal holds the parts.
    [Theory]
    [InlineData(105, "moderate")]
    [InlineData(104, "mild")]
    public void Mean_OfQuotientsThatSumToABoundary_IsDecidedExactly(int events, string grade)
    {
        var nights = Night("15.0", 105, "7 h").Night(Further("2026-06-04", "14.3", 100, "7 h")).Night(Further("2026-06-05", events == 105 ? "15.7" : "15.6", events + 5, "7 h"));

        Only(nights, "mean").Grade.ShouldBe(grade);
    }

    [Fact]
    public void Rule_OfNights_ChangesNoFinding()
    {
        var each = Assess(ThreeNights).Assessment;

        foreach (var rule in (string[])["mean", "pooled", "worst"])
        {
            var other = Assess(ThreeNights, rule).Assessment;

            other.Findings.Select(Said).ShouldBe(each.Findings.Select(Said));
        }
    }

    // A night on PAP is not graded, so it cannot be put together with the others.
    [Fact]
    public void Night_ThatIsNotGraded_IsLeftOutAndNamed()
    {
        var nights = ThreeNights.Night(Further("2026-06-06", "2.0", 12, "6 h").Replace("pap_used: no", "pap_used: yes", StringComparison.Ordinal));

        var together = Only(nights, "worst");

        together.Graded.Count().ShouldBe(3);
        together.LeftOut.Single().Night.ShouldBe("2026-06-06");
        together.LeftOut.Single().Standing.ShouldBe(Standing.NotApplicable);
    }

    [Fact]
    public void Nights_OfWhichOneHasNoCount_CannotBePooled()
    {
        var nights = Night("10.0", 60, "6 h").Night(Further("2026-06-04", "22.0", 110, "5 h").Replace(", events: 110, over: 5 h", "", StringComparison.Ordinal)
            .Replace("monitoring_time: 6 h, ", "", StringComparison.Ordinal));

        Only(nights, "pooled").Value.ShouldBeNull();
        var mean = Only(nights, "mean");
        mean.Value!.Value.IsExact.ShouldBeFalse();
        mean.Value.Value.Low.ToText(3).ShouldBe("15.975");
        mean.Value.Value.High.ToText(3).ShouldBe("16.025");
        mean.Grade.ShouldBe("moderate");
    }

    // 9.95 to below 10.05 and exactly 20: the mean is 14.975 to below 15.025, on both sides.
    [Fact]
    public void Mean_OfAPrintedFigure_MayLieOnBothSidesOfABoundary()
    {
        var printed = Further("2026-06-04", "10.0", 60, "6 h").Replace(", events: 60, over: 6 h", "", StringComparison.Ordinal)
            .Replace("monitoring_time: 6 h, ", "", StringComparison.Ordinal);

        var together = Only(Night("20.0", 120, "6 h").Night(printed), "mean");

        together.Grade.ShouldBeEmpty();
        together.Value!.Value.Low.ToText(3).ShouldBe("14.975");
    }

    [Fact]
    public void OneNight_IsNothingToPutTogether() => Assess(Night("10.0", 60, "6 h"), "mean").Assessment.NightsTogether.ShouldBeEmpty();

    [Theory]
    [InlineData("each", null, "")]
    [InlineData("mean", "15", "moderate")]
    [InlineData("pooled", "14.421053", "mild")]
    [InlineData("worst", "22", "moderate")]
    public void Rule_OfTheCase_CombinesAsTheSameSettingDoesAndChangesNothingElse(string rule, string? value, string grade)
    {
        var shipped = Assess(ThreeNights).Assessment;
        var declared = Assess(Declaring(rule)).Assessment;

        var together = declared.NightsTogether.Single();
        together.Value?.Low.ToText(6).ShouldBe(value);
        together.Grade.ShouldBe(grade);
        together.Value.ShouldBe(Only(ThreeNights, rule).Value);
        together.Nights.Select(Said).ShouldBe(shipped.NightsTogether.Single().Nights.Select(Said));
        declared.Findings.Select(Said).ShouldBe(shipped.Findings.Select(Said));
        declared.Rulesets.Select(ruleset => ruleset.Digest).ShouldBe(shipped.Rulesets.Select(ruleset => ruleset.Digest));
    }

    [Theory]
    [InlineData("mean", "worst", true)]
    [InlineData("each", "worst", true)]
    [InlineData("worst", "worst", false)]
    public void Rule_OfTheCase_StandsBeforeThePolicyAndSaysSo(string declared, string policy, bool differs)
    {
        var together = Only(Declaring(declared), policy);

        together.Rule.ToString().ShouldBe(declared, StringCompareShould.IgnoreCase);
        together.Policy.ShouldBe(NightRule.Worst);
        together.Declared!.By.ShouldBe("R. Reader on 2026-06-18");
        together.DiffersFromPolicy.ShouldBe(differs);
    }

    [Fact]
    public void Rule_OfNoCase_IsThePolicys() => Only(ThreeNights, "worst").Declared.ShouldBeNull();

    [Fact]
    public void Json_OfARuleOfTheCase_NamesWhoDeclaredItAndThePolicy()
    {
        using var stream = new MemoryStream();
        using (var writer = new System.Text.Json.Utf8JsonWriter(stream, AssessmentJson.Options(indented: false)))
        {
            AssessmentJson.Write(writer, Assess(Declaring("mean")).Assessment);
        }

        var json = System.Text.Json.Nodes.JsonNode.Parse(stream.ToArray())!["nights_together"]!.AsArray().Single()!;
        json["rule"]!.GetValue<string>().ShouldBe("mean");
        json["policy_rule"]!.GetValue<string>().ShouldBe("each");
        json["declared_in_case"]!.GetValue<bool>().ShouldBeTrue();
        json["declared_by"]!.GetValue<string>().ShouldBe("R. Reader on 2026-06-18");
    }

    [Fact]
    public void Json_OfSeveralNights_NamesTheRuleAndEachNight()
    {
        using var stream = new MemoryStream();
        using (var writer = new System.Text.Json.Utf8JsonWriter(stream, AssessmentJson.Options(indented: false)))
        {
            AssessmentJson.Write(writer, Assess(ThreeNights, "mean").Assessment);
        }

        var json = System.Text.Json.Nodes.JsonNode.Parse(stream.ToArray())!["nights_together"]!.AsArray().Single()!;
        json["rule"]!.GetValue<string>().ShouldBe("mean");
        json["grades_differ"]!.GetValue<bool>().ShouldBeTrue();
        json["nights"]!.AsArray().Select(night => night!["grade"]!.GetValue<string>()).ShouldBe(["mild", "moderate", "mild"]);
        json["low"]!.GetValue<decimal>().ShouldBe(15);
        json["grade"]!.GetValue<string>().ShouldBe("moderate");
    }

    private static CaseText Declaring(string rule) =>
        ThreeNights.With("nights_together.read_by", rule).With("nights_together.declared_by", "R. Reader on 2026-06-18");

    private static (string, string?, Standing, string?) Said(Finding finding) => (finding.Id, finding.Night, finding.Standing, finding.Value?.Text);

    private static NightsTogether Only(CaseText text, string? rule = null) => Assess(text, rule).Assessment.NightsTogether.Single();

    private static FindingTable Assess(CaseText text, string? rule = null) =>
        Rules.Assess(text, rule is null ? [] : [new Overlay("osa-severity", $"set: {NightsTogether.Setting}, to: {rule}")]);

    private static CaseText Night(string rate, int events, string time) => CaseText.Complete.WithoutIndices().With("nights.monitoring_time", "6 h")
        .Index($"index: REI, hypopnea: 4 %, per_hour: {rate}, events: {events}, over: {time}");

    private static string Further(string date, string rate, int events, string time) =>
        $"date: {date}, recorder: type III, channels: [airflow, nasal_pressure, thoracic_effort, abdominal_effort, oximetry, heart_rate, position, snore], scoring: manual, "
        + "recording_time: 9 h, monitoring_time: 6 h, usable: { airflow: 5 h, oximetry: 5 h }, covers_usual_sleep: yes, recording_in_fragments: no, pap_used: no, "
        + "predominantly_obstructive: yes, technically_adequate: yes, called_inconclusive: no, spo2_lowest: 82 %, spo2_mean: 93 %, "
        + $"indices: [{{ index: REI, hypopnea: 4 %, per_hour: {rate}, events: {events}, over: {time} }}]";
}

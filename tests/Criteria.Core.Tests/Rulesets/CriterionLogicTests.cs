using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>How the parts of a criterion make its standing, and what others may conclude from it.</summary>
public sealed class CriterionLogicTests
{
    [Theory]
    // applies (insomnia), silent (hypertension), condition (stroke)
    [InlineData("yes", "no", "yes", Standing.Met)]
    [InlineData("yes", "no", "no", Standing.NotMet)]
    [InlineData("yes", "no", "unknown", Standing.Undetermined)]
    [InlineData("no", "no", "yes", Standing.NotApplicable)]
    [InlineData("no", "yes", "yes", Standing.NotApplicable)]
    [InlineData("no", "unknown", "unknown", Standing.NotApplicable)]
    [InlineData("unknown", "no", "yes", Standing.Undetermined)]
    [InlineData("yes", "yes", "yes", Standing.Undetermined)] // the source does not say
    [InlineData("yes", "yes", "no", Standing.Undetermined)]
    [InlineData("yes", "unknown", "yes", Standing.Undetermined)]
    public void Conclude_OfEveryPart_IsDecidedOnlyWhenAllAre(string applies, string silent, string condition, Standing expected) =>
        Conclude("applies_when: insomnia\nwhen: stroke\nsilent: [{ id: q, when: hypertension, question: Which? }]", Conditions(applies, silent, condition))
            .Standing.ShouldBe(expected);

    [Theory]
    [InlineData("unknown", "no", "unknown", "insomnia")]
    [InlineData("yes", "no", "unknown", "stroke")]
    [InlineData("yes", "unknown", "unknown", "stroke, hypertension")]
    [InlineData("yes", "yes", "unknown", "")] // no fact can settle what the source leaves open
    [InlineData("no", "unknown", "unknown", "")]
    [InlineData("yes", "no", "yes", "")]
    public void Missing_OfAnOpenFinding_NamesWhatCanStillDecideIt(string applies, string silent, string condition, string expected)
    {
        var conclusion = Conclude(
            "applies_when: insomnia\nwhen: stroke\nsilent: [{ id: q, when: hypertension, question: Which? }]", Conditions(applies, silent, condition));

        string.Join(", ", conclusion.Missing.Select(fact => fact.Fact)).ShouldBe(expected);
    }

    [Theory]
    [InlineData("met", "unknown", "yes", Standing.Met)] // both readings agree
    [InlineData("met", "unknown", "no", Standing.Undetermined)]
    [InlineData("not met", "unknown", "no", Standing.NotMet)]
    [InlineData("not met", "no", "yes", Standing.Met)] // the question does not matter
    [InlineData("not met", "yes", "yes", Standing.NotMet)]
    public void Conclude_WithALocalAnswer_IsThatAnswerWhereTheQuestionMatters(string answer, string silent, string condition, Standing expected)
    {
        var rules = Rules.InForce($$"""
            # file: r.yaml
            criteria:
              - { id: c, title: C, when: stroke, silent: [{ id: q, when: hypertension, question: Which? }], cites: [s-1] }
            # file: local/o.yaml
            overlay: o
            extends: r
            version: 1
            changes:
              - { answer: q, of: c, as: {{answer}}, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }
            """);

        rules.Conclude(Conditions("unknown", silent, condition))[0].Standing.ShouldBe(expected);
    }

    [Theory]
    [InlineData("39.9 cm", "low", Standing.Met)]
    [InlineData("40 cm", "middle", Standing.Met)]
    [InlineData("50 cm", "middle", Standing.Met)]
    [InlineData("50.1 cm", "high", Standing.Met)]
    [InlineData("unknown", "", Standing.Undetermined)]
    [InlineData("not applicable", "", Standing.NotApplicable)]
    public void Grade_AroundItsBounds_TakesTheBandThatIncludesThem(string neck, string value, Standing expected)
    {
        var conclusion = Conclude(
            "grade: { of: neck, bands: [{ grade: low, below: 40 cm }, { grade: middle, from: 40 cm, up_to: 50 cm }, { grade: high, above: 50 cm }] }",
            $"intake: {{ neck: {neck} }}");

        (conclusion.Standing, conclusion.Value).ShouldBe((expected, value));
    }

    [Theory]
    [InlineData("a", "40 cm", "low")]
    [InlineData("b", "40 cm", "high")]
    [InlineData("a", "39.9 cm", "low")]
    [InlineData("a", "40.1 cm", "high")]
    [InlineData("b", "39.9 cm", "low")]
    public void Grade_ExactlyOnABoundary_FollowsItsSetting(string setting, string neck, string expected)
    {
        var rules = Rules.InForce($$"""
            criteria:
              - id: c
                title: C
                grade:
                  of: neck
                  bands: [{ grade: low, below: 40 cm }, { grade: high, from: 40 cm }]
                  boundaries: [{ at: 40 cm, goes_to: exactly_40 }]
                cites: [s-1]
            settings:
              exactly_40: { is: {{(setting == "a" ? "low" : "high")}}, allowed: [low, high], why: W., cites: [s-1] }
            """);

        rules.Conclude($"intake: {{ neck: {neck} }}")[0].Value.ShouldBe(expected);
    }

    [Theory]
    [InlineData("per_hour: 14.9", "mild", Standing.Met)]
    [InlineData("per_hour: 15.0", "mild to moderate", Standing.Undetermined)] // 14.95 up to 15.05
    [InlineData("per_hour: 14.95", "mild", Standing.Met)] // 14.945 up to 14.955
    [InlineData("per_hour: 14.5", "mild", Standing.Met)]
    [InlineData("per_hour: 29.5, events: 177, over: 6 h", "moderate", Standing.Met)] // exactly 29.5
    [InlineData("per_hour: 4.5", "normal", Standing.Met)]
    [InlineData("per_hour: 15.1", "moderate", Standing.Met)]
    [InlineData("events: 104, over: 416 min", "moderate", Standing.Met)] // exactly 15
    [InlineData("per_hour: 14.6, events: 200, over: 6 h", "mild to severe", Standing.Undetermined)] // 33.3 against 14.6
    public void Grade_OfARate_IsDecidedWhenEveryPossibleValueAgrees(string index, string value, Standing expected)
    {
        var rules = Rules.One(
            "grade: { of: rei_4, bands: [{ grade: normal, below: 5 /h }, { grade: mild, from: 5 /h, below: 15 /h }, { grade: moderate, from: 15 /h, below: 30 /h }, { grade: severe, from: 30 /h }] }");
        var night = Tiny.Read($"case: T-1\nnights: [{{ indices: [{{ index: REI, hypopnea: 4 %, {index} }}] }}]\n", vocabulary: rules.Vocabulary).Case!.Nights[0];

        var conclusion = rules.Conclude(night.Facts)[0];

        (conclusion.Standing, conclusion.Value).ShouldBe((expected, value));
    }

    // 14 printed stands for 13.5 up to, not including, 14.5: it does not reach a band that starts at 14.5.
    [Theory]
    [InlineData("14", "mild")]
    [InlineData("14.0", "mild")]
    [InlineData("15", "severe")] // 14.5 itself is possible
    public void Grade_OfAnOpenUpperEndOnABound_DoesNotReachTheNextBand(string printed, string expected)
    {
        var rules = Rules.One("grade: { of: rei_4, bands: [{ grade: mild, below: 14.5 /h }, { grade: severe, from: 14.5 /h }] }");
        var night = Tiny.Case($"case: T-1\nnights: [{{ indices: [{{ index: REI, hypopnea: 4 %, per_hour: {printed} }}] }}]\n", rules.Vocabulary).Nights[0];

        rules.Conclude(night.Facts)[0].Value.ShouldBe(expected);
    }

    [Theory]
    [InlineData("yes", "yes", "yes", "high, 4 of 4 points", Standing.Met)]
    [InlineData("no", "no", "no", "low, 0 of 4 points", Standing.Met)]
    [InlineData("unknown", "no", "no", "low, 0 to 1 of 4 points", Standing.Met)] // both ends in one class
    [InlineData("no", "unknown", "no", "low to high, 0 to 2 of 4 points", Standing.Undetermined)]
    [InlineData("unknown", "yes", "unknown", "high, 2 to 4 of 4 points", Standing.Met)]
    [InlineData("unknown", "unknown", "unknown", "low to high, 0 to 4 of 4 points", Standing.Undetermined)]
    public void Score_WithItemsMissing_IsDecidedWhenBothEndsFallInOneClass(string hypertension, string stroke, string insomnia, string value, Standing expected)
    {
        var conclusion = Conclude(
            """
            score:
              items: [{ points: 1, when: hypertension }, { points: 2, when: stroke }, { points: 1, when: insomnia }]
              classes: [{ class: low, from: 0, to: 1 }, { class: high, from: 2, to: 4 }]
            """,
            Conditions(insomnia, hypertension, stroke));

        (conclusion.Standing, conclusion.Value).ShouldBe((expected, value));
    }

    [Theory]
    [InlineData("yes", "no", "1 of 2 points", Standing.Met)]
    [InlineData("yes", "unknown", "1 to 2 of 2 points", Standing.Undetermined)]
    public void Score_WithoutClasses_IsDecidedWhenBothEndsAgree(string hypertension, string stroke, string value, Standing expected)
    {
        var conclusion = Conclude("score: { items: [{ points: 1, when: hypertension }, { points: 1, when: stroke }] }", Conditions("no", hypertension, stroke));

        (conclusion.Standing, conclusion.Value).ShouldBe((expected, value));
    }

    [Theory]
    // What a criterion says of another: `up` applies when insomnia is yes and is met when stroke is.
    [InlineData("up", "yes", "yes", Standing.Met)]
    [InlineData("up", "yes", "no", Standing.NotMet)]
    [InlineData("up", "yes", "unknown", Standing.Undetermined)]
    [InlineData("up", "no", "yes", Standing.NotMet)] // not applicable counts as not met
    [InlineData("up is not met", "yes", "no", Standing.Met)]
    [InlineData("up is not met", "no", "no", Standing.NotMet)]
    [InlineData("up is not applicable", "no", "unknown", Standing.Met)]
    [InlineData("up is not applicable", "yes", "yes", Standing.NotMet)]
    [InlineData("up is not applicable", "unknown", "yes", Standing.Undetermined)]
    [InlineData("{ not: up }", "yes", "unknown", Standing.Undetermined)]
    public void Conclude_OnAnotherFinding_ReadsItsStanding(string when, string applies, string stroke, Standing expected)
    {
        var rules = Rules.InForce(
            $"criteria:\n  - {{ id: c, title: C, when: {when}, cites: [s-1] }}\n  - {{ id: up, title: Up, applies_when: insomnia, when: stroke, cites: [s-1] }}\n");

        rules.Conclude(Conditions(applies, "no", stroke))[rules.Find("c")!.Index].Standing.ShouldBe(expected);
    }

    [Theory]
    [InlineData("g is low", "yes", "39 cm", Standing.Met)]
    [InlineData("g is low", "yes", "40 cm", Standing.NotMet)]
    [InlineData("g is not low", "yes", "40 cm", Standing.Met)]
    [InlineData("g is low or middle", "yes", "45 cm", Standing.Met)]
    [InlineData("g is at least middle", "yes", "45 cm", Standing.Met)]
    [InlineData("g is at least middle", "yes", "55 cm", Standing.Met)]
    [InlineData("g is at most middle", "yes", "55 cm", Standing.NotMet)]
    [InlineData("g is low", "yes", "unknown", Standing.Undetermined)]
    [InlineData("g is low", "no", "39 cm", Standing.NotMet)] // does not apply: no comparison holds
    [InlineData("g is not low", "no", "39 cm", Standing.NotMet)]
    [InlineData("g is low", "unknown", "39 cm", Standing.Undetermined)] // while it is open whether it applies, only a no is safe
    [InlineData("g is low", "unknown", "45 cm", Standing.NotMet)]
    [InlineData("g is low", "yes", "not applicable", Standing.NotMet)]
    public void Conclude_OnAGrade_ReadsItsBand(string when, string applies, string neck, Standing expected)
    {
        var rules = Rules.InForce($$"""
            criteria:
              - { id: c, title: C, when: {{when}}, cites: [s-1] }
              - id: g
                title: G
                applies_when: insomnia
                grade: { of: neck, bands: [{ grade: low, below: 40 cm }, { grade: middle, from: 40 cm, below: 50 cm }, { grade: high, from: 50 cm }] }
                cites: [s-1]
            """);

        rules.Conclude($"intake: {{ neck: {neck}, conditions: {{ insomnia: {applies} }} }}")[rules.Find("c")!.Index].Standing.ShouldBe(expected);
    }

    [Theory]
    [InlineData("n >= 2 points", "yes", "no", Standing.Met)]
    [InlineData("n >= 2 points", "no", "yes", Standing.NotMet)]
    [InlineData("n >= 2 points", "unknown", "no", Standing.Undetermined)]
    [InlineData("n >= 2", "yes", "unknown", Standing.Met)]
    [InlineData("n < 4", "unknown", "unknown", Standing.Met)] // at most 3 points
    [InlineData("n = 3", "yes", "yes", Standing.Met)]
    public void Conclude_OnAScore_ReadsItsPoints(string when, string stroke, string hypertension, Standing expected)
    {
        var rules = Rules.InForce(
            $"criteria:\n  - {{ id: c, title: C, when: {when}, cites: [s-1] }}\n"
            + "  - { id: n, title: N, score: { items: [{ points: 2, when: stroke }, { points: 1, when: hypertension }] }, cites: [s-1] }\n");

        rules.Conclude(Conditions("no", hypertension, stroke))[rules.Find("c")!.Index].Standing.ShouldBe(expected);
    }

    [Theory]
    [InlineData("39 cm", "45 cm", Standing.Met)]
    [InlineData("45 cm", "46 cm", Standing.NotMet)]
    [InlineData("39 cm", "unknown", Standing.Undetermined)]
    [InlineData("39 cm", "not applicable", Standing.NotMet)]
    public void Conclude_OnTwoGrades_SeesWhetherTheyDiffer(string neck, string height, Standing expected)
    {
        const string Bands = "bands: [{ grade: low, below: 40 cm }, { grade: high, from: 40 cm }]";
        var rules = Rules.InForce(
            "criteria:\n  - { id: c, title: C, when: g differs from h, cites: [s-1] }\n"
            + $"  - {{ id: g, title: G, grade: {{ of: neck, {Bands} }}, cites: [s-1] }}\n  - {{ id: h, title: H, grade: {{ of: height, {Bands} }}, cites: [s-1] }}\n");
        var given = Tiny.Read($"case: T-1\nintake: {{ neck: {neck}, height: {height.Replace("4", "14", StringComparison.Ordinal)} }}\n", vocabulary: rules.Vocabulary);

        rules.Conclude(given.Case!.Facts)[rules.Find("c")!.Index].Standing.ShouldBe(expected);
    }

    [Fact]
    public void ReadFirst_OfACriterion_IsFilledWithValues()
    {
        var rules = Rules.One("when: stroke\nread_first: The neck is {neck}, weight {weight}, this is {c}.");
        var view = rules.Conclude("intake: { neck: 17 in, conditions: { stroke: yes } }");

        rules.Criteria[0].ReadFirst!.Fill(view).ShouldBe("The neck is 43.18 cm (17 in), weight not in the case, this is met.");
    }

    [Fact]
    public void Conclude_OfAnOption_OffersItWithoutDecidingAnything()
    {
        var conclusion = Conclude(
            "option: { offer: A test, for: [{ when: stroke, say: For. }], against: [{ when: insomnia, say: Against. }], strength: strong, certainty: low }",
            Conditions("yes", "no", "unknown"));

        (conclusion.Standing, conclusion.Value).ShouldBe((Standing.Met, "A test"));
    }

    [Fact]
    public void Conclude_OfNull_IsRefused() =>
        Should.Throw<ArgumentNullException>(() => Core.Rulesets.CriterionLogic.Conclude(null!, new View(FactSet.Of(Tiny.Vocabulary, []), 0)));

    private static Conclusion Conclude(string body, string sections) => Rules.One(body).Conclude(sections)[0];

    private static string Conditions(string insomnia, string hypertension, string stroke) =>
        $"intake: {{ conditions: {{ insomnia: {insomnia}, hypertension: {hypertension}, stroke: {stroke} }} }}";
}

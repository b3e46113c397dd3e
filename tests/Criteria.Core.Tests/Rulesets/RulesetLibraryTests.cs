using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

public sealed class RulesetLibraryTests
{
    [Fact]
    public void Load_OfTheShippedRules_HasNoProblem() => RulesetLibrary.Load(ShippedRules.Files()).Problems.ShouldSay();

    [Fact]
    public void Load_OfFilesInAnotherOrder_GivesTheSameRules()
    {
        var (forwards, backwards) = (RulesetLibrary.Load(ShippedRules.Files()).Library!, RulesetLibrary.Load(ShippedRules.Files().Reverse()).Library!);

        backwards.VocabularyDigest.ShouldBe(forwards.VocabularyDigest);
        backwards.Rulesets.Select(ruleset => $"{ruleset.Id} {ruleset.Digest}").ShouldBe(forwards.Rulesets.Select(ruleset => $"{ruleset.Id} {ruleset.Digest}"));
    }

    // All or nothing: one fault anywhere, and no ruleset is used.
    [Theory]
    [InlineData("# file: a.yaml\ncriteria:\n  - { id: a, title: A, when: stroke, cites: [s-1] }\n# file: b.yaml\ncriteria:\n  - { id: b, title: B, when: gout, cites: [s-1] }\nruleset: b\ntitle: B\nheading: B\norder: 2\nfunction: clinical\nversion: 1\nstatus: draft\neffective: { from: 2024-01-01 }\nconventions: { rounding: none }\n")]
    [InlineData("# file: a.yaml\ncriteria: []\n# file: sources.yaml\nsources: [{ id: s-1 }]\n")]
    [InlineData("# file: a.yaml\ncriteria: []\n# file: vocabulary/v.yaml\nfacts: [{ id: a }]\n")]
    [InlineData("# file: a.yaml\ncriteria: []\n# file: b.yaml\noverlay: o\nextends: r\nversion: 1\nchanges: [{}]\n")]
    public void Load_WithOneFault_GivesNoLibrary(string text)
    {
        var loading = Rules.Load(text);

        loading.Library.ShouldBeNull();
        loading.Problems.ShouldNotBeEmpty();
    }

    [Theory]
    [InlineData("2024-12-31", "v1")]
    [InlineData("2025-01-01", "v2")] // `until` is the first day no longer in force
    [InlineData("2025-06-30", "v2")]
    [InlineData("2025-07-01", null)]
    [InlineData("2023-12-31", null)]
    [InlineData("2024-01-01", "v1")]
    public void InForce_OnADay_TakesTheVersionOfThatDay(string day, string? expected)
    {
        var library = Rules.Library(
            Version("a", "v1", "{ from: 2024-01-01, until: 2025-01-01 }", "stroke") + Version("b", "v2", "{ from: 2025-01-01, until: 2025-07-01 }", "hypertension"));

        var rules = library.InForce(Day(day), null, null);

        rules.Rulesets.Select(ruleset => ruleset.Version).ShouldBe(expected is null ? [] : [expected]);
        rules.Criteria.Select(criterion => criterion.Title).ShouldBe(expected is null ? [] : [expected]);
    }

    [Fact]
    public void InForce_OfTwoVersionsWithOneNumber_KeepsThemApart()
    {
        var library = Rules.Library(
            Version("a", "1", "{ from: 2024-01-01, until: 2025-01-01 }", "stroke") + Version("b", "1", "{ from: 2025-01-01 }", "hypertension"));

        Texts(library.InForce(Day("2024-06-01"), null, null)).ShouldBe(["Stroke"]);
        Texts(library.InForce(Day("2025-06-01"), null, null)).ShouldBe(["Hypertension"]);

        static IEnumerable<string> Texts(RulesInForce rules) => rules.Criteria.Select(criterion => ((ConditionBody)criterion.Body).Condition.Text);
    }

    [Theory]
    [InlineData("draft", false)]
    [InlineData("approved", false)]
    [InlineData("active", true)]
    [InlineData("retired", false)]
    public void InForce_OfAStatus_TakesActiveOnesOnly(string status, bool expected)
    {
        var library = Rules.Library(Version("a", "1", "{ from: 2024-01-01 }", "stroke").Replace("status: active", $"status: {status}", StringComparison.Ordinal));

        library.InForce(Day("2026-01-01"), null, null).Rulesets.Any().ShouldBe(expected);
        library.Rulesets.Count().ShouldBe(1);
    }

    [Theory]
    [InlineData("medicare", "pap", true)]
    [InlineData("medicare", "oral appliance", false)]
    [InlineData("other", "pap", false)]
    [InlineData(null, null, false)]
    public void InForce_ForAPayerAndItem_TakesTheirRulesAndEveryClinicalOne(string? payer, string? item, bool expected)
    {
        var library = Rules.Library(Version("a", "1", "{ from: 2024-01-01 }", "stroke") + Coverage("c2 "));

        var rules = library.InForce(Day("2026-01-01"), payer, item);

        rules.Rulesets.Select(ruleset => ruleset.Id).ShouldBe(expected ? ["same", "cov"] : ["same"]);
    }

    [Fact]
    public void InForce_WhenAReferenceIsNotInForce_LeavesOutWhatReadsIt()
    {
        var library = Rules.Library(
            Version("a", "1", "{ from: 2024-01-01, until: 2025-01-01 }", "stroke")
            + Version("b", "1", "{ from: 2024-01-01 }", "v").Replace("id: v,", "id: w,", StringComparison.Ordinal).Replace("ruleset: same", "ruleset: reader", StringComparison.Ordinal));

        library.InForce(Day("2024-06-01"), null, null).Rulesets.Select(ruleset => ruleset.Id).ShouldBe(["reader", "same"]);
        library.InForce(Day("2025-06-01"), null, null).Rulesets.ShouldBeEmpty();
    }

    [Fact]
    public void InForce_WhenAnOverlayReadsWhatIsNotInForce_LeavesOutItsBase()
    {
        var library = Rules.Library(
            Version("a", "1", "{ from: 2024-01-01, until: 2025-01-01 }", "stroke")
            + Version("b", "1", "{ from: 2024-01-01 }", "hypertension").Replace("id: v,", "id: w,", StringComparison.Ordinal).Replace("ruleset: same", "ruleset: base", StringComparison.Ordinal)
            + Overlay("base", "add: { id: x, title: X, when: v, cites: [s-1] }"));

        library.InForce(Day("2024-06-01"), null, null).Criteria.Select(criterion => criterion.Id).ShouldBe(["w", "x", "v"]);
        library.InForce(Day("2025-06-01"), null, null).Rulesets.ShouldBeEmpty();
        library.InForce(Day("2024-06-01"), null, null).LeftOut.ShouldBeEmpty();
        library.InForce(Day("2025-06-01"), null, null).LeftOut.Select(ruleset => ruleset.Id).ShouldBe(["base"]);
    }

    [Fact]
    public void InForce_AskedTwice_IsBoundOnce()
    {
        var library = Rules.Library(Version("a", "1", "{ from: 2024-01-01 }", "stroke"));

        library.InForce(Day("2026-01-01"), null, null).ShouldBeSameAs(library.InForce(Day("2026-02-01"), "other", "pap"));
    }

    [Fact]
    public void EvaluationOrder_OfTheShippedRules_PutsEveryCriterionAfterWhatItReads()
    {
        var rules = Shipped.Library.InForce(Day("2026-07-01"), "medicare", "pap");

        rules.EvaluationOrder.Order().ShouldBe(Enumerable.Range(0, rules.Criteria.Length));
        foreach (var criterion in rules.Criteria)
        {
            var place = rules.EvaluationOrder.IndexOf(criterion.Index);
            criterion.ReadsCriteria.ShouldAllBe(read => rules.EvaluationOrder.IndexOf(read) < place, criterion.Id);
            rules.Strata[criterion.Index].ShouldBe(criterion.ReadsCriteria.IsEmpty ? 0 : criterion.ReadsCriteria.Max(read => rules.Strata[read]) + 1);
        }
    }

    [Fact]
    public void PerNight_OfACriterion_IsInheritedFromWhatItReads()
    {
        var rules = Rules.InForce("""
            criteria:
              - { id: a, title: A, when: stroke, cites: [s-1] }
              - { id: b, title: B, when: spo2_lowest < 80 %, cites: [s-1] }
              - { id: c, title: C, when: { any: [a, b] }, cites: [s-1] }
              - { id: d, title: D, when: hypertension, applies_when: c, cites: [s-1] }
              - { id: e, title: E, when: a, cites: [s-1] }
            """);

        rules.Criteria.Where(criterion => criterion.PerNight).Select(criterion => criterion.Id).ShouldBe(["b", "c", "d"]);
    }

    [Fact]
    public void Overlay_OfEveryChange_IsListedWithReasonAndApprover()
    {
        var ruleset = Rules.Library(Base + Overlay(
            "r", "set: exact, to: b", "answer: q-1, of: c, as: not met", "replace: c, with: { id: c, title: C2, when: hypertension, silent: [{ id: q-1, when: insomnia, question: Which? }], cites: [s-1] }",
            "add: { id: d, title: D, when: c, cites: [s-1] }")).Rulesets.Single();

        ruleset.Version.ShouldBe("1+mine.7");
        ruleset.Differences.Select(difference => difference.What).ShouldBe(
        [
            "setting exact is b, was a",
            "c: the open question q-1 is answered as not met",
            "c is replaced",
            "d is added",
        ]);
        ruleset.Differences.ShouldAllBe(difference => difference.Overlay == "mine" && difference.Reason == "R."
            && difference.ApprovedBy == "A. Person" && difference.ApprovedOn == new DateOnly(2026, 1, 10));
    }

    [Fact]
    public void Overlay_ThatSets_ChangesTheSetting()
    {
        Met(Rules.InForce(Base)).ShouldBe(Standing.Met);
        Met(Rules.InForce(Base + Overlay("r", "set: exact, to: b"))).ShouldBe(Standing.NotMet);

        static Standing Met(RulesInForce rules) => rules.Conclude(FactSet.Of(rules.Vocabulary, []))[rules.Find("s")!.Index].Standing;
    }

    [Theory]
    [InlineData("", Standing.Undetermined)]
    [InlineData("met", Standing.Met)]
    [InlineData("not met", Standing.NotMet)]
    public void Overlay_ThatAnswers_DecidesWhereTheQuestionMatters(string answer, Standing expected)
    {
        var rules = Rules.InForce(Base + (answer.Length == 0 ? "" : Overlay("r", $"answer: q-1, of: c, as: {answer}")));

        var view = rules.Conclude("intake: { conditions: { stroke: no, hypertension: yes } }");

        view[rules.Find("c")!.Index].Standing.ShouldBe(expected);
    }

    [Fact]
    public void Overlay_ThatReplacesByAnother_NamesBoth()
    {
        var ruleset = Rules.Library(Base + Overlay("r", "replace: c, with: { id: d, title: D, when: insomnia, cites: [s-1] }")).Rulesets.Single();

        ruleset.Differences.Single().What.ShouldBe("c is replaced by d");
    }

    [Fact]
    public void ReadFirst_WithAValueThatLooksLikeAPlace_PrintsTheValue()
    {
        var rules = Rules.One("when: stroke\nread_first: Of sex {sex}, remark {note}, see {c}.");
        var view = rules.Conclude("patient: { sex: male, note: '{sex} {c} {none}' }\nintake: { conditions: { stroke: yes } }");

        rules.Criteria[0].ReadFirst!.Fill(view).ShouldBe("Of sex male, remark {sex} {c} {none}, see met.");
    }

    [Fact]
    public void Overlay_ThatReplaces_TakesThePlaceOfTheCriterion()
    {
        var rules = Rules.InForce(Base + Overlay("r", "replace: c, with: { id: c, title: C2, when: insomnia, cites: [s-1] }"));

        rules.Criteria.Select(criterion => criterion.Title).ShouldBe(["C2", "S"]);
    }

    [Fact]
    public void Overlay_OfASetOfVersions_ChangesEachAndDigestsEachWithItsOwnFile()
    {
        var versions = Version("a", "v1", "{ from: 2024-01-01, until: 2025-01-01 }", "stroke") + Version("b", "v2", "{ from: 2025-01-01 }", "hypertension");
        var plain = Rules.Library(versions).Rulesets.Select(ruleset => ruleset.Digest).ToArray();

        var changed = Rules.Library(versions + Overlay("same", "add: { id: d, title: D, when: v, cites: [s-1] }")).Rulesets.ToArray();

        changed.Select(ruleset => ruleset.Version).Order().ShouldBe(["v1+mine.7", "v2+mine.7"]);
        changed.Select(ruleset => ruleset.Digest).Concat(plain).Distinct().Count().ShouldBe(4);

        // A change of the first version's file changes its digest and not that of the second.
        var touched = Rules.Library((versions + Overlay("same", "add: { id: d, title: D, when: v, cites: [s-1] }")).Replace("version: v1", "version: v1 # x", StringComparison.Ordinal)).Rulesets;
        touched.Select(ruleset => ruleset.Digest).Intersect(changed.Select(ruleset => ruleset.Digest)).Count().ShouldBe(1);
    }

    [Fact]
    public void Digest_OfAFile_DoesNotDependOnLineEnds()
    {
        var files = Rules.Files(Base);

        var windows = files.Select(file => file with { Content = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(file.Content.Span).ReplaceLineEndings("\r\n")) });

        RulesetLibrary.Load(windows).Library!.Rulesets.Single().Digest.ShouldBe(RulesetLibrary.Load(files).Library!.Rulesets.Single().Digest);
        RulesetLibrary.Load(windows).Library!.VocabularyDigest.ShouldBe(RulesetLibrary.Load(files).Library!.VocabularyDigest);
    }

    [Fact]
    public void With_AFolder_AddsItToTheShippedOnesUnlessItHasAVocabulary()
    {
        var local = Support.Texts.File("local/o.yaml", "overlay: o\n");
        var own = Support.Texts.File("mine/vocabulary/v.yaml", "facts: []\n");

        ShippedRules.With([local]).ShouldContain(local);
        ShippedRules.With([local]).Length.ShouldBe(ShippedRules.Files().Length + 1);
        ShippedRules.With([own, local]).ShouldBe([own, local]);
    }

    private const string Base = """
        # file: r.yaml
        criteria:
          - { id: c, title: C, when: stroke, silent: [{ id: q-1, when: hypertension, question: Which? }], cites: [s-1] }
          - { id: s, title: S, when: exact is a, cites: [s-1] }
        settings:
          exact: { is: a, allowed: [a, b], why: W., cites: [s-1] }
        ruleset: r
        title: R
        heading: R
        order: 1
        function: clinical
        version: 1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }

        """;

    private static string Version(string file, string version, string effective, string when) => $$"""
        # file: {{file}}.yaml
        criteria:
          - { id: v, title: {{version}}, when: {{when}}, cites: [s-1] }
        ruleset: same
        title: R
        heading: R
        order: 1
        function: clinical
        version: {{version}}
        status: active
        effective: {{effective}}
        conventions: { rounding: none }

        """;

    private static string Coverage(string title) => $$"""
        # file: cov.yaml
        criteria:
          - { id: c2, title: {{title}}, when: v, cites: [s-1] }
        ruleset: cov
        title: C
        heading: C
        order: 2
        function: coverage
        payer: medicare
        item: pap
        version: 1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }

        """;

    private static string Overlay(string extends, params string[] changes) =>
        $"# file: local/o.yaml\noverlay: mine\nextends: {extends}\nversion: 7\nchanges:\n"
        + string.Concat(changes.Select(change => $"  - {{ {change}, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }}\n"));

    private static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}

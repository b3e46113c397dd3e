using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>The days of a window are exactly those on which its criterion is met.</summary>
public sealed class WindowTests
{
    private const string Vocabulary = """
        # file: vocabulary/dates.yaml
        records:
          - { at: therapy, label: Therapy trial, kinds: [PAP, surgery] }
        facts:
          - { id: done_on, at: intake.done_on, label: Done on, kind: date, meaning: Done., owner: clinician, ask: When was it done? }
          - { id: start_on, at: intake.start_on, label: Started on, kind: date, meaning: Start., owner: supplier, ask: When was the start? }
          - { id: other_on, at: intake.other_on, label: Other day, kind: date, meaning: Another day., owner: clinician, ask: Which other day? }
          - { id: trial.start, at: therapy.start, label: Start, kind: date, meaning: Start. }
          - { id: trial.device, at: therapy.device, label: Device, kind: choice, choices: [old, new], meaning: Device. }

        """;

    // Leap days, the days beside them, ends of months and of years: where a count of months or days can slip.
    private static readonly DateOnly[] Anchors =
    [
        .. Enumerable.Range(2024, 9).SelectMany(year => Enumerable.Range(1, 12).SelectMany(month => new[]
        {
            new DateOnly(year, month, 1), new DateOnly(year, month, 28), new DateOnly(year, month, DateTime.DaysInMonth(year, month)),
        })).Distinct(),
    ];

    public static TheoryData<string> Relations =>
    [
        "before start_on", "on or before start_on", "on start_on", "on or after start_on", "after start_on",
        "within 30 days before start_on", "within 2 weeks after start_on", "within 6 months before start_on", "within 6 months after start_on",
        "within 1 years before start_on", "within 1 years after start_on",
        "within day 31 to day 91 after start_on", "within day 0 to day 1 after start_on", "within day 1 to day 1 after start_on", "within day 0 to day 0 after start_on",
    ];

    [Theory]
    [MemberData(nameof(Relations))]
    public void Days_CountedFromADate_AreThoseThatMeetTheCriterion(string relation)
    {
        foreach (var firstDay in new[] { 0, 1 })
        {
            var rules = Rule($"done_on {relation}", "from: start_on", firstDay);
            foreach (var anchor in Anchors)
            {
                ShouldBeExact(rules, "start_on", anchor, "done_on");
            }
        }
    }

    [Theory]
    [InlineData("done_on within 12 months before start_on")]
    [InlineData("done_on within 6 months before start_on")]
    [InlineData("done_on within 1 months after start_on")]
    [InlineData("done_on within 365 days before start_on")]
    [InlineData("done_on within day 31 to day 91 after start_on")]
    [InlineData("done_on after start_on")]
    [InlineData("{ all: [done_on within 5 years before start_on, start_on after 2026-02-28] }")]
    public void Days_OfAPlannedDate_AreThoseForWhichTheCriterionIsMet(string condition)
    {
        var rules = Rule(condition, "planned: start_on");
        foreach (var known in Anchors)
        {
            ShouldBeExact(rules, "done_on", known, "start_on");
        }
    }

    [Theory]
    [InlineData("2024-01-29", "2024-02-29", "2024-04-29")] // over a leap day
    [InlineData("2023-01-29", "2023-03-01", "2023-04-30")] // over the end of an ordinary February
    [InlineData("2031-12-01", "2032-01-01", "2032-03-01")] // over a year's end and a leap day
    public void Days_FromDay31ToDay91_AreCountedByTheCalendar(string start, string first, string last) =>
        Place(Rule("done_on within day 31 to day 91 after start_on", "from: start_on", firstDay: 0), ("start_on", Day(start))).Span.ShouldBe(new DaySpan(Day(first), Day(last)));

    [Fact]
    public void Days_WhereTheFirstDayIsDayOne_ComeADayEarlier()
    {
        var zero = Place(Rule("done_on within day 31 to day 91 after start_on", "from: start_on", firstDay: 0), ("start_on", Day("2026-04-01"))).Span!;

        var one = Place(Rule("done_on within day 31 to day 91 after start_on", "from: start_on", firstDay: 1), ("start_on", Day("2026-04-01"))).Span!;

        one.ShouldBe(new DaySpan(zero.First!.Value.AddDays(-1), zero.Last!.Value.AddDays(-1)));
    }

    [Fact]
    public void Days_OfEitherOfTwoRelationsThatTouch_AreOneWindow() =>
        Place(Rule("{ any: [done_on within 30 days before start_on, done_on after start_on] }", "from: start_on"), ("start_on", Day("2026-03-31"))).Span
            .ShouldBe(new DaySpan(Day("2026-03-01"), null));

    [Fact]
    public void Days_OfEitherOfTwoRelationsThatLieApart_AreTheLaterOnes() =>
        Place(Rule("{ any: [done_on within day 1 to day 5 after start_on, done_on within day 10 to day 20 after start_on] }", "from: start_on", firstDay: 0), ("start_on", Day("2026-03-31"))).Span
            .ShouldBe(new DaySpan(Day("2026-04-10"), Day("2026-04-20")));

    [Fact]
    public void Days_BehindASetting_AreThoseOfTheBranchThatIsSwitchedOn()
    {
        const string Branches = "{ any: [{ all: [pace is slow, done_on within 60 days after start_on] }, { all: [pace is quick, done_on within 10 days after start_on] }] }";
        const string Settings = "settings:\n  pace: { is: PACE, allowed: [slow, quick], why: W., cites: [s-1] }\n";

        DateOnly? Last(string pace) => Place(Rule(Branches, "from: start_on", settings: Settings.Replace("PACE", pace, StringComparison.Ordinal)), ("start_on", Day("2026-01-01"))).Span!.Last;

        Last("slow").ShouldBe(Day("2026-03-02"));
        Last("quick").ShouldBe(Day("2026-01-11"));
    }

    [Fact]
    public void Days_WithoutTheirDate_AreNoneAndTheDateIsNamed()
    {
        var rules = Rule("done_on within 30 days after start_on", "from: start_on");
        var view = View(rules);

        rules.Criteria[0].Windows[0].Place(view).Span.ShouldBeNull();
        rules.Criteria[0].Windows[0].MissingDates(view).ShouldHaveSingleItem().Fact.ShouldBe("start_on");
    }

    [Fact]
    public void Days_OfAPlannedDateThatNothingFits_AreNone()
    {
        var rules = Rule("{ all: [done_on within 30 days before start_on, other_on before done_on] }", "planned: start_on");

        Place(rules, ("done_on", Day("2026-03-01")), ("other_on", Day("2026-03-02"))).Span.ShouldBeNull();
        rules.Criteria[0].Windows[0].MissingDates(View(rules, ("done_on", Day("2026-03-01")))).Select(fact => fact.Fact).ShouldBe(["other_on"]);
    }

    [Theory]
    [InlineData("old", "2026-01-31")]
    [InlineData("new", "2026-06-30")]
    public void Days_CountedFromATrial_AreThoseOfTheTrialThatFits(string device, string last)
    {
        var rules = Rule($"{{ therapy: surgery, started: {{ within 30 days after: {{ therapy: PAP, device: {device} }} }} }}", "from: { therapy: PAP }");
        var facts = Tiny.Case(
            """
            case: T-1
            therapy:
              - { id: a, kind: PAP, start: 2025-12-01, device: old }
              - { id: b, kind: PAP, start: 2026-01-01, device: old }
              - { id: c, kind: PAP, start: 2026-05-31, device: new }
              - { id: d, kind: PAP, start: 2026-08-31 }
            """, rules.Vocabulary).Facts;

        rules.Criteria[0].Windows[0].Place(new View(facts, 1)).Span!.Last.ShouldBe(Day(last));
    }

    [Theory]
    [InlineData("c")]
    [InlineData("d")]
    public void Days_OfACriterionThatAnOverlayReplaces_AreThoseOfTheNewOne(string id)
    {
        var rules = Rule("done_on within 30 days after start_on", "from: start_on", overlay: $$"""

            # file: local/o.yaml
            overlay: mine
            extends: r
            version: 1
            changes:
              - replace: c
                with: { id: {{id}}, title: C, when: done_on within 10 days after start_on, cites: [s-1] }
                reason: R.
                approved_by: A. Person
                approved_on: 2026-01-10
            """);

        Place(rules, ("start_on", Day("2026-01-01"))).Span!.Last.ShouldBe(Day("2026-01-11"));
    }

    private static void ShouldBeExact(RulesInForce rules, string knownFact, DateOnly known, string movedFact)
    {
        var span = Place(rules, (knownFact, known)).Span;
        var beside = new[] { known, span?.First ?? known, span?.Last ?? known }.SelectMany(day => Enumerable.Range(-3, 7).Select(day.AddDays));
        foreach (var day in beside.Concat(Enumerable.Range(-60, 120).Select(step => known.AddDays(step * 17))))
        {
            var met = rules.Criteria[0].Body.Evaluate(View(rules, (knownFact, known), (movedFact, day))).Truth == Truth.Met;
            var inside = span is not null && !(day < span.First) && !(day > span.Last);
            inside.ShouldBe(met, $"{known:yyyy-MM-dd}, {day:yyyy-MM-dd}: {span}");
        }
    }

    private static RulesInForce Rule(string condition, string dates, int? firstDay = 1, string settings = "", string overlay = "") => Rules.InForce(
        $$"""
        {{Vocabulary}}
        # file: r.yaml
        ruleset: r
        title: R
        heading: R
        order: 1
        function: clinical
        version: 1
        status: active
        effective: { from: 2020-01-01 }
        conventions: { rounding: none, day_count: start is day {{firstDay}} }
        {{settings}}criteria:
          - id: c
            title: C
            cites: [s-1]
            when: {{condition}}
        windows:
          - id: w
            of: c
            title: W
            {{dates}}{{overlay}}
        """);

    private static WindowPlace Place(RulesInForce rules, params (string Fact, DateOnly Date)[] known) => rules.Criteria[0].Windows.ShouldHaveSingleItem().Place(View(rules, known));

    private static View View(RulesInForce rules, params (string Fact, DateOnly Date)[] known) => new(
        FactSet.Of(rules.Vocabulary, known.Select(pair => Fact.Known(rules.Vocabulary.Find(pair.Fact)!, new DateValue(pair.Date), Provenance.Entered))), rules.Criteria.Length);

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}

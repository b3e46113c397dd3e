using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

public sealed class DateRelationTests
{
    [Theory]
    [InlineData("before", "2026-06-02", Met)]
    [InlineData("before", "2026-06-03", NotMet)]
    [InlineData("on or before", "2026-06-03", Met)]
    [InlineData("on or before", "2026-06-04", NotMet)]
    [InlineData("on", "2026-06-03", Met)]
    [InlineData("on", "2026-06-02", NotMet)]
    [InlineData("on or after", "2026-06-03", Met)]
    [InlineData("on or after", "2026-06-02", NotMet)]
    [InlineData("after", "2026-06-04", Met)]
    [InlineData("after", "2026-06-03", NotMet)]
    public void Evaluate_OfADateAroundAnother_KnowsBothSides(string order, string visit, Truth expected) =>
        Evaluate($"{order} 2026-06-03", visit).ShouldBe(expected);

    // The anchor is 2026-06-20: as day 0 the 30th day after is 20 July; as day 1 it is 19 July.
    [Theory]
    [InlineData(0, "2026-07-19", NotMet)] // day 29
    [InlineData(0, "2026-07-20", NotMet)] // day 30
    [InlineData(0, "2026-07-21", Met)] // day 31
    [InlineData(0, "2026-09-19", Met)] // day 91
    [InlineData(0, "2026-09-20", NotMet)] // day 92
    [InlineData(1, "2026-07-19", NotMet)] // day 30
    [InlineData(1, "2026-07-20", Met)] // day 31
    [InlineData(1, "2026-09-18", Met)] // day 91
    [InlineData(1, "2026-09-19", NotMet)] // day 92
    [InlineData(1, "2026-06-20", NotMet)] // day 1
    [InlineData(0, "2026-06-01", NotMet)] // before the start
    public void Evaluate_OfNumberedDays_CountsAsTheRulesetDeclares(int startDay, string visit, Truth expected) =>
        Evaluate("within day 31 to day 91 after 2026-06-20", visit, startDay).ShouldBe(expected);

    [Theory]
    [InlineData(1, "2026-06-20", Met)]
    [InlineData(1, "2026-06-21", NotMet)]
    [InlineData(0, "2026-06-20", NotMet)]
    [InlineData(0, "2026-06-21", Met)]
    public void Evaluate_OfTheFirstDay_IsTheDayOfTheStartOrTheDayAfter(int startDay, string visit, Truth expected) =>
        Evaluate("within day 1 to day 1 after 2026-06-20", visit, startDay).ShouldBe(expected);

    // With the start as day 1, day 0 is the day before it: no day after.
    [Theory]
    [InlineData("2026-06-19", NotMet)]
    [InlineData("2026-06-20", Met)]
    public void Evaluate_OfADayBeforeTheStart_IsNeverAfterIt(string visit, Truth expected) =>
        Evaluate("within day 0 to day 7 after 2026-06-20", visit).ShouldBe(expected);

    [Theory]
    // Both ends belong to a window.
    [InlineData("within 7 days before 2026-06-20", "2026-06-13", Met)]
    [InlineData("within 7 days before 2026-06-20", "2026-06-12", NotMet)]
    [InlineData("within 7 days before 2026-06-20", "2026-06-20", Met)]
    [InlineData("within 7 days before 2026-06-20", "2026-06-21", NotMet)]
    [InlineData("within 2 weeks after 2026-06-20", "2026-07-04", Met)]
    [InlineData("within 2 weeks after 2026-06-20", "2026-07-05", NotMet)]
    [InlineData("within 2 weeks after 2026-06-20", "2026-06-19", NotMet)]
    // A leap day lies in the window of years that holds it.
    [InlineData("within 60 days after 2024-01-01", "2024-03-01", Met)] // day 60 with 29 February
    [InlineData("within 60 days after 2025-01-01", "2025-03-02", Met)]
    [InlineData("within 60 days after 2025-01-01", "2025-03-03", NotMet)]
    // Months and years end on the last day there is.
    [InlineData("within 1 months after 2026-01-31", "2026-02-28", Met)]
    [InlineData("within 1 months after 2026-01-31", "2026-03-01", NotMet)]
    [InlineData("within 6 months before 2026-08-31", "2026-02-28", Met)]
    [InlineData("within 6 months before 2026-08-31", "2026-02-27", NotMet)]
    [InlineData("within 1 years before 2024-02-29", "2023-02-28", Met)]
    [InlineData("within 1 years before 2024-02-29", "2023-02-27", NotMet)]
    [InlineData("within 1 years after 2024-02-29", "2025-02-28", Met)]
    [InlineData("within 1 years after 2024-02-29", "2025-03-01", NotMet)]
    // The calendar ends; conditions never throw.
    [InlineData("within 99999 years before 2026-06-20", "0001-01-01", Met)]
    [InlineData("within 99999 weeks after 9999-12-30", "9999-12-31", Met)]
    [InlineData("within 99999 months after 2026-06-20", "2026-06-19", NotMet)]
    public void Evaluate_OfACalendarWindow_IncludesBothEnds(string relation, string visit, Truth expected) => Evaluate(relation, visit).ShouldBe(expected);

    [Theory]
    [InlineData("2026-06-19", "2026-06-20", Met)]
    [InlineData("2026-06-20", "2026-06-20", NotMet)]
    [InlineData("unknown", "2026-06-20", Unknown)]
    [InlineData("2026-06-19", "unknown", Unknown)]
    public void Evaluate_AgainstAnotherFact_NeedsBoth(string visit, string start, Truth expected)
    {
        var rules = Rules.One("when: visit_date before therapy.start");

        var outcome = rules.Evaluate($"intake: {{ visit_date: {visit} }}\ntherapy: [{{ id: a, kind: PAP, start: {start} }}]");

        outcome.Truth.ShouldBe(expected);
    }

    private static Truth Evaluate(string relation, string visit, int startDay = 1) =>
        Rules.One($"when: visit_date {relation}", $"rounding: none, day_count: start is day {startDay}").Evaluate($"intake: {{ visit_date: {visit} }}").Truth;
}

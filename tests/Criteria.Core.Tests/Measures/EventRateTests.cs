using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

public sealed class EventRateTests
{
    [Theory]
    [InlineData("events: 104, over: 416 min", "15.0/h", "104 events in 6 h 56 min")]
    [InlineData("events: 103, over: 416 min", "14.9/h", "103 events in 6 h 56 min")]
    [InlineData("per_hour: 15.0, events: 104, over: 416 min", "15.0/h", "104 events in 6 h 56 min")]
    [InlineData("per_hour: 14.6, events: 101", "14.6/h", "101 events in 6 h 55 min")] // the night's monitoring time
    [InlineData("events: 0, over: 6 h", "0.0/h", "0 events in 6 h")]
    public void Rate_FromCountAndTime_IsExact(string index, string text, string from)
    {
        var rate = Rate(index);

        rate.Number!.Value.IsExact.ShouldBeTrue();
        rate.Text.ShouldBe(text);
        rate.Origin.ShouldBe(new Provenance(OriginKind.Computed, from));
    }

    [Fact]
    public void Rate_FromCountAndTime_IsTheQuotientItself() =>
        (Rate("events: 101, over: 415 min").Number!.Value.Low == Ratio.Of(101 * 60, 415)).ShouldBeTrue();

    [Theory]
    [InlineData("per_hour: 14.6", "14.55", "14.65")]
    [InlineData("per_hour: 15", "14.5", "15.5")]
    [InlineData("per_hour: 14.60", "14.595", "14.605")]
    [InlineData("per_hour: 14.6 /h", "14.55", "14.65")]
    [InlineData("per_hour: 14.6, events: 101, over: 0 min", "14.55", "14.65")] // nothing divides by no time
    public void Rate_AsPrintedOnly_IsEverythingThatRoundsToIt(string index, string low, string high)
    {
        var rate = Rate(index);

        rate.Number.ShouldBe(new Interval(Number(low), Number(high), HighIncluded: false));
        rate.Text.ShouldContain(" as printed, which stands for ");
    }

    [Theory]
    [InlineData(90, "14.55", "15", true)] // 15/h: from the printed figure's lower end to the exact rate
    [InlineData(84, "14", "14.65", false)] // 14/h
    public void Rate_ThatDisagreesWithThePrintedFigure_IsEverythingFromOneToTheOther(int events, string low, string high, bool highIncluded)
    {
        var rate = Tiny.Read($"case: T-1\nnights: [{{ indices: [{{ index: REI, hypopnea: 4 %, per_hour: 14.6, events: {events}, over: 6 h }}] }}]\n")
            .Case!.Nights[0].Facts["rei_4"];

        rate.Number.ShouldBe(new Interval(Number(low), Number(high), highIncluded));
        rate.Origin.Text.ShouldBe($"{events} events in 6 h, which disagrees with the printed 14.6/h");
    }

    // 88 in 6.0 h: 14.666..., which a report prints as 14.7 and never as 14.6.
    [Theory]
    [InlineData("14.7", true)]
    [InlineData("14.67", true)]
    [InlineData("15", true)]
    [InlineData("14.6", false)]
    [InlineData("14.66", false)]
    public void Rate_WithAPrintedFigure_IsExactWhenTheFigureIsItsRounding(string printed, bool exact)
    {
        var facts = Tiny.Night($"indices: [{{ index: REI, hypopnea: 4 %, per_hour: {printed}, events: 88, over: 6.0 h }}]");

        facts["rei_4"].Number!.Value.IsExact.ShouldBe(exact);
    }

    [Theory]
    [InlineData("per_hour: unknown", FactState.Unknown)]
    [InlineData("per_hour: not applicable", FactState.NotApplicable)]
    [InlineData("events: 101", FactState.Absent)]
    [InlineData("over: 6 h", FactState.Absent)]
    [InlineData("events: unknown, over: 6 h", FactState.Absent)]
    public void Rate_WithoutEnough_IsAsUnknownAsWhatIsMissing(string index, FactState expected)
    {
        var facts = Tiny.Night($"indices: [{{ index: REI, hypopnea: 4 %, {index} }}]");

        facts["rei_4"].State.ShouldBe(expected);
    }

    private static Fact Rate(string index) => Tiny.Night($"monitoring_time: 6 h 55 min\nindices: [{{ index: REI, hypopnea: 4 %, {index} }}]")["rei_4"];

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}

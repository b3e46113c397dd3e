using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

/// <summary>The first index supplied, its events and its time: <c>any_rate</c> is the payer RDI, else the REI by the 4 % rule.</summary>
public sealed class SuppliedIndexTests
{
    private const string Rei = "{ index: REI, hypopnea: 4 %, per_hour: 14.6, events: 101, over: 415 min }";
    private const string Rdi = "{ index: payer RDI, hypopnea: 4 %, per_hour: 12.0, events: 90, over: 450 min }";

    [Theory]
    [InlineData(Rei, "14.6/h", "101", "6 h 55 min")]
    [InlineData(Rdi, "12.0/h", "90", "7 h 30 min")]
    [InlineData(Rei + ", " + Rdi, "12.0/h", "90", "7 h 30 min")]
    [InlineData(Rdi + ", " + Rei, "12.0/h", "90", "7 h 30 min")]
    public void Rate_OfSeveral_IsThatOfTheFirstInTheListOfTheVocabulary(string indices, string rate, string events, string time)
    {
        var facts = Tiny.Night($"indices: [{indices}]");

        (facts["any_rate"].Text, facts["any_events"].Text, facts["any_hours"].Text).ShouldBe((rate, events, time));
    }

    [Fact]
    public void Rate_OfNone_IsUnknown()
    {
        var facts = Tiny.Night("indices: [{ index: REI, hypopnea: 3 %, per_hour: 21.3 }]");

        (facts["any_rate"].State, facts["any_events"].State, facts["any_hours"].State).ShouldBe((FactState.Absent, FactState.Absent, FactState.Absent));
    }

    // 14.55 to 14.65 per hour over 415 minutes: 100.6 to 101.3 events, so 101.
    [Theory]
    [InlineData("14.6", "415 min", 101, 101)]
    // 14.5 up to 15.5 over 6 h: 87 up to, not including, 93.
    [InlineData("15", "360 min", 87, 92)]
    [InlineData("0", "360 min", 0, 2)]
    public void Events_NotPrinted_AreTheWholeNumbersThatRateAndTimeAllow(string printed, string time, int low, int high)
    {
        var facts = Tiny.Night($"indices: [{{ index: REI, hypopnea: 4 %, per_hour: {printed}, over: {time} }}]");

        facts["any_events"].Number.ShouldBe(Interval.Between(low, high));
    }

    [Fact]
    public void Events_ThatNoWholeNumberAllows_AreTheNearest()
    {
        // 14.595 up to 14.605 over 1 h: no whole number lies there, and the printed time is rounded too.
        var facts = Tiny.Night("indices: [{ index: REI, hypopnea: 4 %, per_hour: 14.60, over: 1 h }]");

        facts["any_events"].Number.ShouldBe(Interval.Between(14, 15));
    }

    [Fact]
    public void Time_NotPrinted_IsWhatCountAndRateAllow()
    {
        var facts = Tiny.Night("indices: [{ index: REI, hypopnea: 4 %, per_hour: 14.6, events: 101 }]");

        facts["any_hours"].Number.ShouldBe(Interval.Between(Ratio.Of(101 * 60, 14.65m), Ratio.Of(101 * 60, 14.55m)));
    }

    [Fact]
    public void Time_OfTheNight_StandsInForThatOfTheIndex()
    {
        var facts = Tiny.Night("monitoring_time: 400 min\nindices: [{ index: REI, hypopnea: 4 %, per_hour: 15 }]");

        facts["any_hours"].Text.ShouldBe("6 h 40 min");
    }

    [Theory]
    [InlineData("recording_time: 450 min\nindices: [{ index: REI, hypopnea: 4 %, events: 105, over: 6 h }]", "14.0/h")] // 105 in 7.5 h
    [InlineData("recording_time: 0 h\nindices: [{ index: REI, hypopnea: 4 %, events: 105, over: 6 h }]", "not in the case")]
    [InlineData("indices: [{ index: REI, hypopnea: 4 %, events: 105, over: 6 h }]", "not in the case")]
    [InlineData("recording_time: 6 h\nindices: [{ index: REI, hypopnea: 4 %, per_hour: 15, over: 6 h }]", "14.5/h to 15.3/h")] // 87 to 92 in 6 h
    public void RateOver_AnotherTime_DividesTheSameEvents(string night, string expected) =>
        Tiny.Night(night)["any_rate_over_recording"].Text.ShouldBe(expected);
}

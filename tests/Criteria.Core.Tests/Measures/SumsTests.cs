using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

public sealed class SumsTests
{
    [Theory]
    [InlineData("airflow: 200 min, oximetry: 215 min", 415, 415)]
    [InlineData("airflow: 200 min", 200, 2880)] // the other part may be anything that the range allows
    [InlineData("airflow: 200 min, oximetry: not applicable", 200, 200)]
    public void Sum_OfTwo_IsAtLeastWhatIsKnown(string usable, int low, int high) =>
        Tiny.Night($"usable: {{ {usable} }}")["usable_sum"].Number.ShouldBe(Interval.Between(low, high));

    [Theory]
    [InlineData("recording_time: 7 h")]
    [InlineData("usable: { airflow: unknown }")]
    public void Sum_OfNone_IsUnknown(string night) => Tiny.Night(night)["usable_sum"].State.ShouldBe(FactState.Absent);
}

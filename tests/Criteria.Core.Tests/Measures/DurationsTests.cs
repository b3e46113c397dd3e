using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

public sealed class DurationsTests
{
    [Theory]
    [InlineData("airflow: 400 min, oximetry: 415 min", 400, 400)]
    [InlineData("airflow: 415 min, oximetry: 400 min", 400, 400)]
    [InlineData("airflow: 400 min", 0, 400)] // the other may be shorter
    [InlineData("airflow: 400 min, oximetry: unknown", 0, 400)]
    [InlineData("airflow: not applicable, oximetry: 415 min", 415, 415)] // a sensor the recorder does not have
    public void Shortest_OfTwo_IsKnownToBeNoLongerThanTheOneKnown(string usable, int low, int high)
    {
        var facts = Tiny.Night($"usable: {{ {usable} }}");

        facts["adequate_time"].Number.ShouldBe(Interval.Between(low, high));
    }

    [Theory]
    [InlineData("recording_time: 7 h")]
    [InlineData("usable: { airflow: unknown }")]
    [InlineData("usable: { airflow: not applicable, oximetry: not applicable }")]
    public void Shortest_OfNone_IsUnknown(string night) => Tiny.Night(night)["adequate_time"].State.ShouldBe(FactState.Absent);

    [Theory]
    [InlineData("{ id: a, kind: PAP, start: 2026-06-20 }", "2026-06-20")]
    [InlineData("{ id: a, kind: PAP, start: 2026-06-20 }, { id: b, kind: oral appliance, start: 2026-01-01 }", "2026-06-20")]
    [InlineData("{ id: a, kind: PAP, start: 2026-06-20 }, { id: b, kind: PAP, start: 2026-06-20 }", "not in the case")]
    [InlineData("{ id: a, kind: PAP, start: unknown }", "not in the case")]
    [InlineData("{ id: a, kind: PAP }", "not in the case")]
    [InlineData("{ id: a, kind: oral appliance, start: 2026-06-20 }", "not in the case")]
    [InlineData("", "not in the case")]
    public void OnlyStart_OfAKind_IsKnownWithExactlyOneTrial(string trials, string expected) =>
        Tiny.Case($"case: T-1\ntherapy: [{trials}]\n").Facts["therapy.start"].Text.ShouldBe(expected);
}

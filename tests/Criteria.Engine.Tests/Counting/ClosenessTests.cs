using Criteria.Core.Logic;
using Criteria.Engine.Counting;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Counting;

/// <summary>The distance to each boundary, and that it is the smallest that reaches it.</summary>
public sealed class ClosenessTests
{
    // 88 events in 6 h are 14.67/h; the interval is that of R's poisson.test for 88 in 6.
    [Fact]
    public void Closeness_OfFourteenPointSeven_IsTwoEventsOrEightMinutesFromFifteen()
    {
        var closeness = Of(88, 360)!;

        closeness.Above.ShouldBe(new Boundary(15, "moderate", true, 2, 8));
        closeness.Below!.Grade.ShouldBe("below 5");
        closeness.Nearest.ShouldBe(closeness.Above);
        closeness.IsNear.ShouldBeTrue();
        closeness.Straddles.ShouldBeTrue();
        closeness.Low.ShouldBe(11.76, 0.005);
        closeness.High.ShouldBe(18.07, 0.005);
    }

    [Theory]
    [InlineData(0, 360)] // no time makes a rate of nothing
    [InlineData(30, 360)] // exactly 5.0, mild: one event fewer is below
    [InlineData(180, 360)] // exactly 30.0, severe by the setting
    public void Closeness_AtAnEdge_HasAtMostTheBoundariesThatThereAre(int events, int minutes)
    {
        var closeness = Of(events, minutes)!;

        (closeness.Below is null).ShouldBe(events == 0);
        (closeness.Above is null).ShouldBe(events == 180);
        if (events == 0)
        {
            closeness.Above!.Minutes.ShouldBeNull();
        }
        else
        {
            closeness.Below!.Events.ShouldBe(1);
        }
    }

    [Fact]
    public void Closeness_OfAnyNight_NamesTheSmallestChangeThatReachesTheOtherGrade() => Gen.Select(Gen.Int[0, 400], Gen.Int[240, 600]).Sample(
        (events, minutes) =>
        {
            var closeness = Of(events, minutes)!;
            var grade = Grade(events, minutes);
            foreach (var boundary in new[] { closeness.Below, closeness.Above }.OfType<Boundary>())
            {
                var sign = boundary.Above ? 1 : -1;
                if (boundary.Events is { } more)
                {
                    Grade(events + (sign * more), minutes).ShouldBe(boundary.Grade);
                    Grade(events + (sign * (more - 1)), minutes).ShouldBe(grade);
                }

                if (boundary.Minutes is { } time)
                {
                    Grade(events, minutes - (sign * time)).ShouldBe(boundary.Grade);
                    Grade(events, minutes - (sign * (time - 1))).ShouldBe(grade);
                }
            }

            closeness.Shares.Sum(share => share.Share).ShouldBe(1, 1e-9);
            (closeness.Low <= events * 60.0 / minutes && events * 60.0 / minutes <= closeness.High).ShouldBeTrue();
        },
        iter: Samples.Of(300));

    [Fact]
    public void Closeness_OfAPrintedRateOnly_IsNotGiven() => CaseText.Complete.WithoutIndices()
        .Index("index: REI, hypopnea: 4 %, per_hour: 17.3").Assess()["severity.rei-4"].Closeness.ShouldBeNull();

    // It is for words: with it or without it, the grade is the grade of the exact rate.
    [Fact]
    public void Closeness_NearABoundary_LeavesTheGradeAlone() => Grade(88, 360).ShouldBe("mild");

    private static Closeness? Of(int events, int minutes) => Body(events, minutes) is var (grade, view) ? Closeness.Of(grade, grade.Evaluate(view), view.Facts) : null;

    private static string Grade(int events, int minutes) => Body(events, minutes) is var (grade, view) ? grade.Bands[grade.Evaluate(view).LowestBand].Grade : "";

    // Evaluated directly: 300 nights, each with some twenty neighbours, would be slow as whole assessments.
    private static (GradeBody, View) Body(int events, int minutes)
    {
        var vocabulary = Rules.Library.Vocabulary;
        var criterion = Rules.Library.InForce(Rules.Date, "medicare", "pap").Find("severity.rei-4")!;
        var facts = Core.Facts.FactSet.Of(vocabulary, [Number("rei_4.events", events), Number("monitoring_time", minutes)]);
        return ((GradeBody)criterion.Body, new View(facts, 1));
    }

    private static Core.Facts.Fact Number(string id, decimal value) => Core.Facts.Fact.Known(
        Rules.Library.Vocabulary.Find(id)!, new Core.Facts.NumberValue(Core.Facts.Interval.Exactly(value)), Core.Facts.Provenance.Entered);
}

using Criteria.Core.Logic;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

public sealed class TruthTests
{
    public static TheoryData<Truth> All => [Unknown, NotMet, Met];

    public static TheoryData<Truth, Truth> Pairs => new()
    {
        { Met, Met }, { Met, NotMet }, { Met, Unknown },
        { NotMet, Met }, { NotMet, NotMet }, { NotMet, Unknown },
        { Unknown, Met }, { Unknown, NotMet }, { Unknown, Unknown },
    };

    [Theory]
    [InlineData(Met, Met, Met)]
    [InlineData(Met, NotMet, NotMet)]
    [InlineData(Met, Unknown, Unknown)]
    [InlineData(NotMet, Met, NotMet)]
    [InlineData(NotMet, NotMet, NotMet)]
    [InlineData(NotMet, Unknown, NotMet)]
    [InlineData(Unknown, Met, Unknown)]
    [InlineData(Unknown, NotMet, NotMet)]
    [InlineData(Unknown, Unknown, Unknown)]
    public void And_OfEveryPair_IsKleenes(Truth left, Truth right, Truth expected) => Truths.And(left, right).ShouldBe(expected);

    [Theory]
    [InlineData(Met, Met, Met)]
    [InlineData(Met, NotMet, Met)]
    [InlineData(Met, Unknown, Met)]
    [InlineData(NotMet, Met, Met)]
    [InlineData(NotMet, NotMet, NotMet)]
    [InlineData(NotMet, Unknown, Unknown)]
    [InlineData(Unknown, Met, Met)]
    [InlineData(Unknown, NotMet, Unknown)]
    [InlineData(Unknown, Unknown, Unknown)]
    public void Or_OfEveryPair_IsKleenes(Truth left, Truth right, Truth expected) => Truths.Or(left, right).ShouldBe(expected);

    [Theory]
    [InlineData(Met, NotMet)]
    [InlineData(NotMet, Met)]
    [InlineData(Unknown, Unknown)]
    public void Not_OfEveryTruth_KeepsUnknown(Truth truth, Truth expected) => Truths.Not(truth).ShouldBe(expected);

    [Theory]
    [MemberData(nameof(Pairs))]
    public void AndAndOr_OfEveryPair_ObeyDeMorgan(Truth left, Truth right)
    {
        Truths.Not(Truths.And(left, right)).ShouldBe(Truths.Or(Truths.Not(left), Truths.Not(right)));
        Truths.Not(Truths.Or(left, right)).ShouldBe(Truths.And(Truths.Not(left), Truths.Not(right)));
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void AndAndOr_OfEveryPair_Commute(Truth left, Truth right)
    {
        Truths.And(left, right).ShouldBe(Truths.And(right, left));
        Truths.Or(left, right).ShouldBe(Truths.Or(right, left));
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void AndAndOr_OfEveryTriple_Associate(Truth left, Truth right)
    {
        foreach (var third in Enum.GetValues<Truth>())
        {
            Truths.And(Truths.And(left, right), third).ShouldBe(Truths.And(left, Truths.And(right, third)));
            Truths.Or(Truths.Or(left, right), third).ShouldBe(Truths.Or(left, Truths.Or(right, third)));
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void And_WithItself_ChangesNothing(Truth truth) => Truths.And(truth, truth).ShouldBe(truth);

    [Fact]
    public void DefaultTruth_IsUnknown() => default(Truth).ShouldBe(Unknown);

    [Fact]
    public void DefaultStanding_IsUndetermined() => default(Standing).ShouldBe(Standing.Undetermined);

    [Theory]
    [InlineData(true, Met)]
    [InlineData(false, NotMet)]
    public void Of_ATwoValuedAnswer_IsSettled(bool holds, Truth expected) => Truths.Of(holds).ShouldBe(expected);

    [Theory]
    [InlineData(Met, "met")]
    [InlineData(NotMet, "not met")]
    [InlineData(Unknown, "unknown")]
    public void Words_OfEveryTruth_AreThoseOfReports(Truth truth, string expected) => truth.Words().ShouldBe(expected);

    [Theory]
    [InlineData(Standing.Met, "met", "met")]
    [InlineData(Standing.NotMet, "not met", "not-met")]
    [InlineData(Standing.NotApplicable, "not applicable", "not-applicable")]
    [InlineData(Standing.Undetermined, "undetermined", "undetermined")]
    public void Words_OfEveryStanding_AreThoseOfReportsAndJson(Standing standing, string words, string code)
    {
        standing.Words().ShouldBe(words);
        standing.Code().ShouldBe(code);
    }
}

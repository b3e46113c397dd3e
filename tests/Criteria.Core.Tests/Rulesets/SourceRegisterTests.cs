using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

public sealed class SourceRegisterTests
{
    private const string Criterion = "# file: r.yaml\ncriteria:\n  - { id: c, title: C, when: stroke, cites: [s-1] }\n# file: sources.yaml\n";

    [Fact]
    public void ReviewBy_OfTheFile_IsThatOfSourcesThatNameNoDay()
    {
        var sources = Rules.Library(Criterion + """
            review_by: 2027-06-30
            sources:
              - { id: s-1, issuer: A society, title: A guideline, verified: read }
              - { id: s-2, issuer: A payer, title: A policy, verified: read, review_by: 2027-01-31 }
            """).Sources;

        sources.Find("s-1")!.ReviewBy.ShouldBe(new DateOnly(2027, 6, 30));
        sources.Find("s-2")!.ReviewBy.ShouldBe(new DateOnly(2027, 1, 31));
    }

    [Theory]
    [InlineData("2027-01-30", false)]
    [InlineData("2027-01-31", false)]
    [InlineData("2027-02-01", true)]
    public void IsReviewOverdue_AroundTheDay_BeginsTheDayAfter(string on, bool expected)
    {
        var source = Rules.Library(Criterion + "sources: [{ id: s-1, issuer: A, title: B, verified: read, review_by: 2027-01-31 }]").Sources.Find("s-1")!;

        source.IsReviewOverdue(DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture)).ShouldBe(expected);
    }

    [Fact]
    public void IsReviewOverdue_WithoutADay_IsNever() =>
        Rules.Library(Criterion + "sources: [{ id: s-1, issuer: A, title: B, verified: read }]").Sources.Find("s-1")!.IsReviewOverdue(DateOnly.MaxValue).ShouldBeFalse();

    // Nothing that is cited may grow old unseen; what was read says when.
    [Fact]
    public void Sources_ThatShip_SayWhenTheyWereReadAndWhenToLookAgain()
    {
        var sources = Shipped.Library.Sources.Sources;

        sources.Where(source => source.ReviewBy is null).Select(source => source.Id).ShouldBeEmpty();
        sources.Where(source => source.Verified == Verification.Read && source.VerifiedOn is null).Select(source => source.Id).ShouldBeEmpty();
        sources.Where(source => source.VerifiedOn > source.ReviewBy).Select(source => source.Id).ShouldBeEmpty();
    }
}

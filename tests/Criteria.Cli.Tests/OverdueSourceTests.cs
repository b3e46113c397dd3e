using System.Text.RegularExpressions;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>Outputs that print sources say which were to be looked at again before the date they are for.</summary>
public sealed partial class OverdueSourceTests
{
    private const string Said = "It was to be looked at again by 31 January 2027.";

    [Theory]
    [InlineData("2027-01-31", false)]
    [InlineData("2027-02-01", true)]
    public void Report_AroundTheDayOfReview_SaysItAfterIt(string asOf, bool says) =>
        Words("assess", Command.Example("clear-severe"), "--as-of", asOf).Contains(Said, StringComparison.Ordinal).ShouldBe(says);

    [Theory]
    [InlineData("2027-01-31", false)]
    [InlineData("2027-02-01", true)]
    public void Explain_AroundTheDayOfReview_SaysItAfterIt(string asOf, bool says) =>
        Words("explain", Command.Example("clear-severe"), "pap.sleep-test", "--as-of", asOf).Contains(Said, StringComparison.Ordinal).ShouldBe(says);

    [Fact]
    public void Json_OfACitation_NamesTheDay() => AssessedJson.Of(Command.Example("clear-severe"))["findings"]!.AsArray()
        .SelectMany(finding => finding!["cites"]!.AsArray()).Where(cite => cite!["source"]!.GetValue<string>() == "lcd-l33718")
        .Select(cite => cite!["review_by"]!.GetValue<string>()).Distinct().ShouldBe(["2027-01-31"]);

    private static string Words(params string[] args) => Blanks().Replace(Command.Run(args).Out, " ");

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}

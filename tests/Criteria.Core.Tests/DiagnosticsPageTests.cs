using System.Text.RegularExpressions;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests;

/// <summary>The page of messages has a row for every code, and no other.</summary>
public sealed partial class DiagnosticsPageTests
{
    private const string Page = "docs/diagnostics.md";

    [Fact]
    public void Page_OfMessages_HasARowForEveryCodeWithItsWeight()
    {
        var sources = Repository.Files("src", "*Diagnostics.cs").SelectMany(file => Made().Matches(Repository.Text(file)))
            .Select(match => (Code: match.Groups[1].Value, Weight: match.Groups[2].Value.ToLowerInvariant())).Distinct();

        Rows().Select(row => (row.Code, row.Weight)).Order().ShouldBe(sources.Order());
    }

    // A code outside the catalogues would escape the page.
    [Fact]
    public void Codes_InTheSources_StandInCataloguesOnly() => Repository.Files("src", "*.cs")
        .Where(file => !file.EndsWith("Diagnostics.cs", StringComparison.Ordinal) && Quoted().IsMatch(Repository.Text(file)))
        .ShouldBeEmpty();

    [Fact]
    public void Codes_InTheCatalogues_HaveOneWeightEach() => Rows().GroupBy(row => row.Code).Where(group => group.Count() > 1).ShouldBeEmpty();

    [Fact]
    public void Rows_OfThePage_SayWhatItMeansAndWhatToDo()
    {
        foreach (var row in Rows())
        {
            row.Meaning.ShouldEndWith(".", customMessage: row.Code);
            row.Remedy.ShouldEndWith(".", customMessage: row.Code);
        }
    }

    [Fact]
    public void Rows_OfEachTable_AreInOrder()
    {
        foreach (var family in Rows().GroupBy(row => row.Code[..2]))
        {
            family.Select(row => row.Code).ShouldBeInOrder(SortDirection.Ascending, StringComparer.Ordinal);
        }
    }

    private static IEnumerable<(string Code, string Weight, string Meaning, string Remedy)> Rows() => Repository.Text(Page).Split('\n')
        .Select(line => Row().Match(line)).Where(match => match.Success)
        .Select(match => (match.Groups[1].Value, match.Groups[2].Value, match.Groups[3].Value, match.Groups[4].Value));

    [GeneratedRegex(@"""(C[A-Z]\d{4})"",\s*Severity\.(\w+)")]
    private static partial Regex Made();

    [GeneratedRegex(@"""C[A-Z]\d{4}""")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^\| `(C[A-Z]\d{4})` \| (\w+) \| (.+?) \| (.+?) \|$")]
    private static partial Regex Row();
}

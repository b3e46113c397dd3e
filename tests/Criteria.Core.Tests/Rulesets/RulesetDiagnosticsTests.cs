using System.Text.RegularExpressions;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>Every problem of a ruleset, an overlay or the register of sources, set off by an example that has it.</summary>
public sealed partial class RulesetDiagnosticsTests
{
    private const string Page = "tests/Criteria.Core.Tests/Rulesets/RulesetDiagnosticsTests.golden.txt";

    // Set off by a folder without files, which a page of examples cannot show.
    private static readonly string[] OfEmptyFolders = ["CR0180", "CR0181", "CR0182"];

    public static TheoryData<string> Titles => Examples.Titles(Page);

    [Theory]
    [MemberData(nameof(Titles))]
    public void Load_OfTheExample_SaysExactlyThis(string title) => Examples.ShouldHold(Page, title, text =>
    {
        var loading = Rules.Load(text);

        (loading.Library is null).ShouldBe(loading.Problems.Any(problem => problem.Severity == Severity.Error));
        return loading.Problems.Select(problem => problem.ToString()).DefaultIfEmpty("no problem");
    });

    [Fact]
    public void Load_OfNothing_SaysWhatTheFolderNeeds() => RulesetLibrary.Load([]).Problems.ShouldSay(
        "vocabulary:1:1: error CR0180: no vocabulary; the folder needs `vocabulary/*.yaml`",
        "sources.yaml:1:1: error CR0181: no register of sources; the folder needs `sources.yaml`",
        "rulesets:1:1: error CR0182: no rulesets; the folder needs at least one file that starts with `ruleset:`");

    [Fact]
    public void Codes_OfTheCatalogue_HaveAnExampleEach()
    {
        var catalogue = Code().Matches(Repository.Text("src/Criteria.Core/Rulesets/RulesetDiagnostics.cs")).Select(match => match.Value);

        var examples = Examples.Of(Page).SelectMany(example => Code().Matches(example.Said)).Select(match => match.Value);

        examples.Concat(OfEmptyFolders).Distinct().Order().ShouldBe(catalogue.Distinct().Order());
    }

    [GeneratedRegex("CR[0-9]{4}")]
    private static partial Regex Code();
}

using System.Text.RegularExpressions;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Cases;

/// <summary>Every problem of a case file, set off by an example that has it: the whole message with its place.</summary>
public sealed partial class CaseDiagnosticsTests
{
    private const string Page = "tests/Criteria.Core.Tests/Cases/CaseDiagnosticsTests.golden.txt";

    public static TheoryData<string> Titles => Examples.Titles(Page);

    [Theory]
    [MemberData(nameof(Titles))]
    public void Read_OfTheExample_SaysExactlyThis(string title) =>
        Examples.ShouldHold(Page, title, text => Tiny.Read(text).Problems.Select(problem => problem.ToString()).DefaultIfEmpty("no problem"));

    [Theory]
    [MemberData(nameof(Titles))]
    public void Read_OfTheExample_GivesACaseOnlyWithoutAnError(string title)
    {
        var example = Examples.Of(Page).Single(candidate => candidate.Title == title);

        var reading = Tiny.Read(example.Text);

        (reading.Case is null).ShouldBe(reading.Problems.Any(problem => problem.Severity == Core.Reading.Severity.Error));
    }

    [Fact]
    public void Codes_OfTheCatalogue_HaveAnExampleEach()
    {
        var catalogue = Code().Matches(Repository.Text("src/Criteria.Core/Cases/CaseDiagnostics.cs")).Select(match => match.Value);

        var examples = Examples.Of(Page).SelectMany(example => Code().Matches(example.Said)).Select(match => match.Value).Where(code => code.StartsWith("CC", StringComparison.Ordinal)).Distinct();

        examples.Order().ShouldBe(catalogue.Distinct().Order());
    }

    [GeneratedRegex("C[A-Z][0-9]{4}")]
    private static partial Regex Code();
}

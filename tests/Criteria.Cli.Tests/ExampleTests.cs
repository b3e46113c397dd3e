using System.Globalization;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

public sealed class ExampleTests
{
    public static TheoryData<string> Names() => [.. Repository.Examples()];

    [Fact]
    public void Examples_AreAtLeastTen() => Repository.Examples().Count().ShouldBeGreaterThanOrEqualTo(10);

    [Theory]
    [MemberData(nameof(Names))]
    public void Assess_Example_GivesTheApprovedReport(string name)
    {
        var result = Command.Run("assess", Command.Example(name));

        result.Code.ShouldBe(0);
        result.Error.ShouldBeEmpty();
        Repository.ShouldBeApproved(WithoutRoot(result.Out), "examples", name, "report.txt");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Assess_Example_FitsTheWidthOfAnyChartBox(string name)
    {
        var result = Command.Run("assess", Command.Example(name));

        result.Out.Split('\n').Where(line => line.Length > 80 && !line.Contains("https://", StringComparison.Ordinal)).ShouldBeEmpty();
        result.Out.Where(c => c > '~').ShouldBeEmpty();
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Assess_UnderAnyCulture_GivesTheSameBytes(string culture)
    {
        var name = Repository.Examples().First();
        var expected = Command.Run("assess", Command.Example(name), "--format", "json").Out;
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = Decimal(culture);

            var actual = Command.Run("assess", Command.Example(name), "--format", "json").Out;

            actual.ShouldBe(expected);
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Assess_JsonTwin_GivesTheSameFindings()
    {
        var yaml = Command.Run("assess", Command.Example("pat-set"), "--format", "json");
        var json = Command.Run("assess", Repository.Path("examples", "pat-set", "case.json"), "--format", "json");

        json.Out.ShouldBe(yaml.Out);
    }

    [Fact]
    public void Assess_Twice_GivesTheSameBytes()
    {
        var args = new[] { "assess", "--format", "ndjson" }.Concat(Repository.Examples().Select(Command.Example)).ToArray();

        Command.Run(args).Out.ShouldBe(Command.Run(args).Out);
    }

    [Fact]
    public void Assess_FilesInAnotherOrder_GivesTheSameLines()
    {
        var files = Repository.Examples().Select(Command.Example).ToArray();

        var forward = Command.Run(["assess", "--format", "ndjson", .. files]).Out.Split('\n');
        var backward = Command.Run(["assess", "--format", "ndjson", .. files.Reverse()]).Out.Split('\n');

        backward.Order(StringComparer.Ordinal).ShouldBe(forward.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Explain_EveryFinding_GivesItsTraceAndSources()
    {
        foreach (var name in new[] { "clear-severe", "missing-facts", "two-nights" })
        {
            var assessment = AssessedJson.Of(Command.Example(name));
            foreach (var id in assessment["findings"]!.AsArray().Select(finding => finding!["id"]!.GetValue<string>()).Distinct())
            {
                var result = Command.Run("explain", Command.Example(name), id);

                result.Code.ShouldBe(0);
                result.Out.ShouldContain($"[{id}]");
                result.Out.ShouldContain("BECAUSE");
                result.Out.ShouldContain("SOURCES");
            }
        }
    }

    [Fact]
    public void Explain_OneNightOfSeveral_ShowsThatNightOnly()
    {
        var result = Command.Run("explain", Command.Example("two-nights"), "severity.rei-4", "--night", "2026-03-12");

        result.Code.ShouldBe(0);
        result.Out.ShouldContain("17.9/h");

        // The other night is named where the nights stand together, and nowhere in the trace.
        result.Out.Split("OVER THE NIGHTS")[0].ShouldNotContain("10.8/h");
    }

    // The report names files as they were given; approved reports name them from the top of the repository.
    private static string WithoutRoot(string text) => text.Replace(Repository.Root + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    // The test host runs without culture data; what could differ is set by hand.
    private static CultureInfo Decimal(string name)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = name == "ar-SA" ? "~" : "-";
        culture.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
        culture.DateTimeFormat.DateSeparator = ".";
        return culture;
    }
}

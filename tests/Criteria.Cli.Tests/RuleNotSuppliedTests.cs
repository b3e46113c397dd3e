using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>Where a payer reads an index that the file does not have, the coverage part says so, and no other index is put in its place.</summary>
public sealed class RuleNotSuppliedTests
{
    private const string FourPercent = "4 % not supplied.";
    private const string ThreePercent = "3 % not supplied.";

    [Theory]
    [InlineData("oral-appliance-mild", "oral.sleep-test", "hypopnea: 4 %", FourPercent)]
    [InlineData("mild-with-hypertension", "pap.sleep-test", "hypopnea: 4 %", FourPercent)]
    [InlineData("another-payer", "example.sleep-test", "hypopnea: 3 %", ThreePercent)]
    public void CoverageCheck_WithoutTheIndexOfThePayersRule_SaysSoEverywhere(string example, string finding, string left, string words)
    {
        using var folder = new TemporaryFolder();
        var whole = File.ReadAllLines(Command.Example(example));
        var path = folder.Write("case.yaml", string.Join('\n', whole.Where(line => !line.Contains(left, StringComparison.Ordinal))));

        Coverage(Command.Run("assess", path).Out).ShouldContain(words);
        Coverage(Command.Run("assess", Command.Example(example)).Out).ShouldNotContain("not supplied");
        var json = AssessedJson.Of(path).Finding(finding);
        json["standing"]!.GetValue<string>().ShouldBe("undetermined");
        json["cautions"]!.AsArray().ShouldContain(caution => caution!.GetValue<string>().StartsWith(words, StringComparison.Ordinal));
        Command.Run("explain", path, finding).Out.ShouldContain(words);
    }

    // In the second case a boundary is near as well; it comes after.
    [Theory]
    [InlineData("scoring-rules-disagree", "11.2/h")]
    [InlineData("between-14-and-15", "14.6/h")]
    public void Report_WhenTheRulesDisagree_SaysSoInItsFirstLine(string example, string rate) =>
        Command.Run("assess", Command.Example(example)).Out.Split("READ FIRST")[1].Split("  * ")[1]
            .ShouldStartWith($"The scoring rules disagree: mild by the 4 % rule ({rate}), moderate by the");

    private static string Coverage(string report)
    {
        var parts = report.Split("COVERAGE CHECK");
        parts.Length.ShouldBe(2);
        return parts[1].Split("WHOM TO ASK")[0];
    }
}

using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData("--help")]
    [InlineData("assess --help")]
    [InlineData("explain --help")]
    [InlineData("write --help")]
    [InlineData("case --help")]
    [InlineData("case check --help")]
    [InlineData("case new --help")]
    [InlineData("case schema --help")]
    [InlineData("rules --help")]
    [InlineData("rules list --help")]
    [InlineData("rules check --help")]
    [InlineData("rules basis --help")]
    [InlineData("facts --help")]
    public void Help_OfEveryCommand_HasExamplesAndExitCodes(string line)
    {
        var result = Command.Run(line.Split(' '));

        result.Code.ShouldBe(0);
        result.Error.ShouldBeEmpty();
        result.Out.ShouldContain("Examples:\n  criteria ");
        result.Out.ShouldContain("3 rulesets do not load");
    }

    [Fact]
    public void Version_NamesTheProgramAndEveryRuleset()
    {
        var result = Command.Run("--version");

        result.Code.ShouldBe(0);
        result.Out.ShouldStartWith("criteria 0.1.0\n");
        result.Out.ShouldContain("\nosa-severity 2026.1 sha256:");
        result.Out.ShouldContain("\nmedicare-pap 2026.1 sha256:");
    }

    [Theory]
    [InlineData("")]
    [InlineData("asess case.yaml")]
    [InlineData("assess")]
    [InlineData("explain case.yaml")]
    [InlineData("case check --frmat json x")]
    public void Usage_NotUnderstood_EndsWithTwoAndPointsToHelp(string line)
    {
        var result = Command.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        result.Code.ShouldBe(2);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldContain("Try: criteria ");
    }

    [Fact]
    public void Usage_MisspeltOption_NamesTheNearest() =>
        Command.Run("assess", Command.Example("clear-severe"), "--frmat", "json").Error.ShouldStartWith("Unknown option `--frmat`. Did you mean `--format`?\n");

    [Fact]
    public void Explain_UnknownFinding_NamesTheNearestAndTheKnown()
    {
        var result = Command.Run("explain", Command.Example("clear-severe"), "severity.rei4");

        result.Code.ShouldBe(2);
        result.Error.ShouldStartWith("There is no finding `severity.rei4` for this case. Did you mean `severity.rei-4`?\nFindings: scope.adults, ");
    }

    [Fact]
    public void Explain_Json_IsAnArrayOfTheFinding() =>
        Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4", "--format", "json").Out.ShouldStartWith("[\n  {\n    \"id\": \"severity.rei-4\"");

    [Fact]
    public void CaseNew_ForAPayer_CanBeReadAsItStands()
    {
        var template = Command.Run("case", "new", "--for", "medicare,pap");

        template.Code.ShouldBe(0);
        var check = Command.RunWith(template.Out, interactive: false, "case", "check", "-");
        check.Code.ShouldBe(0);
        check.Error.ShouldBeEmpty();
        check.Out.ShouldBe("standard input: CASE-KEY, 1 night, 0 warnings\n");
    }

    [Fact]
    public void CaseNew_WithoutAPayer_LeavesOutWhatOnlyPayersAsk()
    {
        var clinical = Command.Run("case", "new").Out;
        var coverage = Command.Run("case", "new", "--for", "medicare,pap").Out;

        coverage.ShouldContain("test_provider_qualifies: unknown");
        clinical.ShouldNotContain("test_provider_qualifies");
        clinical.ShouldNotContain("payer:");
    }

    [Fact]
    public void CaseNew_Template_LeavesEverythingUndetermined()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("case.yaml", Command.Run("case", "new", "--for", "medicare,pap").Out);

        var standings = AssessedJson.Of(path)["findings"]!.AsArray().Where(finding => finding!["kind"]!.GetValue<string>() != "option")
            .Select(finding => finding!["standing"]!.GetValue<string>()).Distinct();

        standings.ShouldBe(["undetermined"]);
    }

    [Fact]
    public void CaseNew_UnknownPayer_NamesTheKnown()
    {
        var result = Command.Run("case", "new", "--for", "medicare,shoes");

        result.Code.ShouldBe(2);
        result.Error.ShouldContain("there are rules for medicare,pap");
    }

    [Fact]
    public void CaseNew_ExistingFile_IsNotOverwritten()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("case.yaml", "mine");

        var result = Command.Run("case", "new", "--out", path);

        result.Code.ShouldBe(2);
        File.ReadAllText(path).ShouldBe("mine");
    }

    [Fact]
    public void RulesCheck_ShippedFolder_LoadsWithoutAProblem() =>
        Command.Run("rules", "check", Repository.Path("rulesets")).ShouldSatisfyAllConditions(
            result => result.Code.ShouldBe(0),
            result => result.Error.ShouldBeEmpty(),
            result => result.Out.ShouldEndWith("load without a problem\n"));

    [Fact]
    public void Facts_UnknownWord_NamesTheNearest()
    {
        var result = Command.Run("facts", "nekc");

        result.Code.ShouldBe(2);
        result.Error.ShouldBe("There is no fact `nekc`. Did you mean `neck`?\n");
    }

    [Fact]
    public void Facts_Index_ShowsItsType() => Command.Run("facts", "rei_4").Out.ShouldContain("index type: REI, 4 % rule, per hour of monitoring time");
}

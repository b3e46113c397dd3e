using System.Text.Json.Nodes;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

public sealed class AssessCommandTests
{
    private const string Smallest = "case: A-1\nassessed_on: 2026-06-18\n";

    [Fact]
    public void Assess_StandardInput_IsRead()
    {
        var result = Command.RunWith(Smallest, interactive: false, "assess", "-");

        result.Code.ShouldBe(0);
        result.Out.ShouldStartWith("CASE A-1");
    }

    [Fact]
    public void Assess_BadFileAmongGood_DoesNotStopTheOthers()
    {
        using var folder = new TemporaryFolder();
        var bad = folder.Write("bad.yaml", "case: B-1\nintake: { nek: 43 cm }\n");
        var good = folder.Write("good.yaml", Smallest);

        var result = Command.Run("assess", bad, good);

        result.Code.ShouldBe(1);
        result.Error.ShouldBe($"{bad}:2:11: error CC0101: unknown fact `nek` in `intake`; did you mean `neck`?\n");
        result.Out.ShouldStartWith("CASE A-1");
    }

    [Fact]
    public void Assess_BadFileAsNdJson_KeepsItsPlaceInTheLines()
    {
        using var folder = new TemporaryFolder();
        var bad = folder.Write("bad.yaml", "case: B-1\nintake: { nek: 43 cm }\n");
        var good = folder.Write("good.yaml", Smallest);

        var lines = Command.Run("assess", bad, good, "--format", "ndjson").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonNode.Parse(line)!).ToArray();

        lines.Length.ShouldBe(2);
        lines[0]["case"].ShouldBeNull();
        lines[0]["problems"]![0]!["code"]!.GetValue<string>().ShouldBe("CC0101");
        lines[1]["case"]!.GetValue<string>().ShouldBe("A-1");
    }

    [Fact]
    public void Assess_SeveralFilesAsJson_GivesOneArray()
    {
        using var folder = new TemporaryFolder();
        var one = folder.Write("one.yaml", Smallest);

        var array = JsonNode.Parse(Command.Run("assess", one, one, "--format", "json").Out)!.AsArray();

        array.Count.ShouldBe(2);
    }

    [Fact]
    public void Assess_MissingFile_NamesTheNearest()
    {
        using var folder = new TemporaryFolder();
        folder.Write("case.yaml", Smallest);
        var wrong = Path.Combine(folder.Path, "cse.yaml");

        var result = Command.Run("assess", wrong);

        result.Code.ShouldBe(1);
        result.Error.ShouldBe($"{wrong}:1:1: error CF0001: there is no such file; did you mean `case.yaml`?\n");
    }

    [Fact]
    public void Assess_CaseWithoutADate_SaysHowToGiveOne()
    {
        var result = Command.RunWith("case: A-1\n", interactive: false, "assess", "-");

        result.Code.ShouldBe(1);
        result.Error.ShouldContain("error CF0002: the case names no date to assess it for; add `assessed_on: 2026-06-18`");
    }

    [Fact]
    public void Assess_CaseWithoutADateAndAsOf_IsAssessed() =>
        Command.RunWith("case: A-1\n", interactive: false, "assess", "-", "--as-of", "2026-06-18").Code.ShouldBe(0);

    [Theory]
    [InlineData("2026-13-01")]
    [InlineData("18.06.2026")]
    public void Assess_AsOfNotADate_IsAUsageError(string date)
    {
        var result = Command.Run("assess", Command.Example("clear-severe"), "--as-of", date);

        result.Code.ShouldBe(2);
        result.Error.ShouldContain($"--as-of: `{date}` is not a date; write it as 2026-07-01");
    }

    [Fact]
    public void Assess_UnknownFormat_IsAUsageError() => Command.Run("assess", Command.Example("clear-severe"), "--format", "html").Code.ShouldBe(2);

    [Fact]
    public void Assess_ToAFile_WritesItWhole()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "report.txt");

        var result = Command.Run("assess", Command.Example("clear-severe"), "--out", path);

        result.Code.ShouldBe(0);
        result.Out.ShouldBeEmpty();
        File.ReadAllText(path).ShouldBe(Command.Run("assess", Command.Example("clear-severe")).Out);
        Directory.EnumerateFiles(folder.Path).Select(Path.GetFileName).ShouldBe(["report.txt"]);
    }

    [Fact]
    public void Assess_ToAFolder_SaysSoAndWritesNothing()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("assess", Command.Example("clear-severe"), "--out", folder.Path);

        result.Code.ShouldBe(2);
        result.Error.ShouldBe($"{folder.Path}: is a folder; name a file\n");
        Directory.EnumerateFileSystemEntries(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Assess_RulesThatDoNotLoad_EndWithThree()
    {
        using var folder = new TemporaryFolder();
        folder.Write("broken.yaml", "ruleset: broken\n");

        var result = Command.Run("assess", Command.Example("clear-severe"), "--rulesets", folder.Path);

        result.Code.ShouldBe(3);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldContain("broken.yaml:1:1: error CD0022");
        result.Error.ShouldEndWith("The rules do not load, so nothing was done. Loading is all or nothing.\n");
    }

    [Fact]
    public void Assess_LocalOverlay_ChangesTheGradeAndSaysSo()
    {
        using var folder = new TemporaryFolder();
        folder.Write("clinic.yaml", """
            overlay: clinic
            extends: osa-severity
            version: 1
            changes:
              - { set: exactly_30, to: moderate, reason: The clinic follows the earlier texts., approved_by: medical director, approved_on: 2026-01-10 }
            """);

        var result = Command.Run("assess", Command.Example("exactly-thirty"), "--rulesets", folder.Path);

        result.Code.ShouldBe(0);
        result.Out.ShouldContain("Local rule clinic: setting exactly_30 is moderate, was severe.");
        result.Out.ShouldContain("  Moderate      Grade by REI, 4 % rule: 30.0/h");
    }

    [Fact]
    public void Assess_LocalAnswer_DecidesTheOpenQuestion()
    {
        using var folder = new TemporaryFolder();
        folder.Write("clinic.yaml", """
            overlay: clinic
            extends: medicare-pap
            version: 1
            changes:
              - { answer: x-01, of: pap.sleep-test, as: not met, reason: As printed., approved_by: medical director, approved_on: 2026-01-10 }
            """);

        var before = AssessedJson.Of(Command.Example("between-14-and-15")).Standing("pap.sleep-test");
        var after = AssessedJson.Of(Command.Example("between-14-and-15"), "--rulesets", folder.Path).Finding("pap.sleep-test");

        before.ShouldBe("undetermined");
        after["standing"]!.GetValue<string>().ShouldBe("not-met");
        after["decided_locally"]![0]!["decided_by"]!.GetValue<string>().ShouldBe("medical director, 2026-01-10");
    }

    [Fact]
    public void Assess_ManyCasesWatchedByAPerson_ShowsProgressAndTakesItAway()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("case.yaml", Smallest);
        var args = new[] { "assess", "--format", "ndjson" }.Concat(Enumerable.Repeat(file, 30)).ToArray();

        Command.RunWith("", interactive: true, args).Error.ShouldContain("\r20 of 30 cases");
        Command.RunWith("", interactive: false, args).Error.ShouldBeEmpty();
    }

    [Fact]
    public void Assess_BeforeTheRulesWereInForce_UsesNone()
    {
        var assessment = AssessedJson.Of(Command.Example("clear-severe"), "--as-of", "1999-01-01");

        assessment["findings"]!.AsArray().ShouldBeEmpty();
        assessment["problems"]!.AsArray().Select(problem => problem!["code"]!.GetValue<string>()).ShouldContain("CA0001");
    }

    [Fact]
    public void Assess_AfterTheReviewDate_Warns() =>
        AssessedJson.Of(Command.Example("clear-severe"), "--as-of", "2035-01-01")["problems"]!.AsArray()
            .Select(problem => problem!["code"]!.GetValue<string>()).ShouldContain("CA0002");

    [Fact]
    public void Assess_Child_IsRefusedAndNothingElseIsSaid()
    {
        var assessment = AssessedJson.Of(Command.Example("child-refused"));

        assessment["refusal"]!.GetValue<string>().ShouldBe("scope.adults");
        assessment["findings"]!.AsArray().Count.ShouldBe(1);
    }
}

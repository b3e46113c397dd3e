using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>Several nights: different grades are said first; a declared rule adds its result with its method and takes nothing away.</summary>
public sealed class SeveralNightsTests
{
    [Fact]
    public void Report_OfNightsWithDifferentGrades_SaysSoFirst()
    {
        var report = Command.Run("assess", Command.Example("two-nights")).Out;

        var first = report.Split("READ FIRST")[1].Split("  * ")[1];
        first.ShouldStartWith("The nights differ. Grade by REI, 4 % rule: mild (10.8/h), night of 11 March");
        first.ShouldContain("not combined");
        report.ShouldNotContain("  Together  ", Case.Sensitive);
    }

    [Theory]
    [InlineData("mean", "mean of 2 nights, each counting alike: 14.3/h, mild")]
    [InlineData("pooled", "events of 2 nights over all their hours: 14.4/h, mild")]
    [InlineData("worst", "worst of 2 nights: 17.9/h, moderate")]
    public void Report_WithADeclaredRule_AddsItsResultAndItsApproval(string rule, string words)
    {
        using var folder = new TemporaryFolder();
        folder.Write("nights.yaml", $"""
            overlay: clinic-nights
            extends: osa-severity
            version: 1
            changes:
              - {"{"} set: night_rule, to: {rule}, reason: a test, approved_by: nobody, approved_on: 2026-01-10 {"}"}
            """);

        var shipped = Flat(Command.Run("assess", Command.Example("two-nights")).Out);
        var report = Flat(Command.Run("assess", Command.Example("two-nights"), "--rulesets", folder.Path).Out);

        report.ShouldContain($"Together Grade by REI, 4 % rule: {words}");
        report.ShouldContain($"Local rule clinic-nights: setting night_rule is {rule}, was each.");
        Part(report, "CLINICAL DRAFT", "SOURCES").ShouldBe(Part(shipped, "CLINICAL DRAFT", "SOURCES"));
        Flat(Command.Run("explain", Command.Example("two-nights"), "severity.rei-4", "--rulesets", folder.Path).Out)
            .ShouldContain(words, Case.Insensitive);
    }

    [Fact]
    public void Report_OfACaseThatDeclaresAnotherRule_SaysByWhomAndWhatThePolicySets()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Command.Example("two-nights"));
        var path = folder.Write("case.yaml", text.Replace("\nnights:\n", "\nnights_together: { read_by: mean, declared_by: R. Reader on 2026-03-26 }\nnights:\n", StringComparison.Ordinal));

        var shipped = Flat(Command.Run("assess", Command.Example("two-nights")).Out);
        var report = Flat(Command.Run("assess", path).Out);

        report.ShouldContain("Several nights are read by the rule `mean`, as declared for this case by R. Reader on 2026-03-26; the policy's setting is another: each.");
        report.ShouldContain("Together Grade by REI, 4 % rule: mean of 2 nights, each counting alike: 14.3/h, mild Read so, as declared for this case by R. Reader");
        report.ShouldContain("Grade by REI, 4 % rule: 10.8/h, night of 11 March 2026");
        report.ShouldContain("Grade by REI, 4 % rule: 17.9/h, night of 12 March 2026");
        Part(report, "CLINICAL DRAFT", "SOURCES").ShouldBe(Part(shipped, "CLINICAL DRAFT", "SOURCES"));
    }

    [Theory]
    [InlineData("{ read_by: meen, declared_by: R. Reader }", "CC0116: `meen` is not a value of `nights_together.read_by`; did you mean `mean`?")]
    [InlineData("{ read_by: mean }", "CC0124: `nights_together` declares how the nights are read and nobody is named")]
    public void Case_WithADeclarationThatIsNone_IsRefused(string declaration, string problem)
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Command.Example("two-nights"));
        var path = folder.Write("case.yaml", text.Replace("\nnights:\n", $"\nnights_together: {declaration}\nnights:\n", StringComparison.Ordinal));

        var run = Command.Run("assess", path);

        run.Error.ShouldContain(problem);
        run.Code.ShouldBe(1);
    }

    private static string Part(string report, string from, string to) => report[report.IndexOf(from, StringComparison.Ordinal)..report.IndexOf(to, StringComparison.Ordinal)];

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

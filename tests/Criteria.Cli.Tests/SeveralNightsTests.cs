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

    private static string Part(string report, string from, string to) => report[report.IndexOf(from, StringComparison.Ordinal)..report.IndexOf(to, StringComparison.Ordinal)];

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

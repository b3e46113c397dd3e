using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>Nothing of a pasted text enters a case that a person has not taken.</summary>
public sealed class CasePasteTests
{
    private const string Summary = "Pat Example\nREI 4%: 12.1 /h\nLowest SpO2: 81 %\nT90: 12\n";

    [Fact]
    public void Proposal_AsItStands_IsACaseWithoutAValue()
    {
        using var folder = new TemporaryFolder();

        var proposal = Command.RunWith(Summary, interactive: true, "case", "paste", "-");

        proposal.Code.ShouldBe(ExitCode.Done, proposal.Error);
        proposal.Out.ShouldNotContain("Pat");
        proposal.Out.Split('\n').Where(line => line.Contains("12.1", StringComparison.Ordinal) || line.Contains("81 %", StringComparison.Ordinal)).ShouldAllBe(line => line.StartsWith('#'));
        Command.Run("case", "check", folder.Write("p.yaml", proposal.Out)).Code.ShouldBe(ExitCode.Done);
    }

    [Fact]
    public void Proposal_WithASignTakenAway_IsACaseWithThatValue()
    {
        using var folder = new TemporaryFolder();
        var proposal = Command.RunWith(Summary, interactive: false, "case", "paste", "-").Out;

        var file = folder.Write("p.yaml", proposal.Replace("#    spo2_lowest", "     spo2_lowest", StringComparison.Ordinal).Replace("#      {", "       {", StringComparison.Ordinal));

        var result = Command.Run("case", "check", file);
        result.Error.ShouldBeEmpty();
        result.Code.ShouldBe(ExitCode.Done);
    }

    [Fact]
    public void Dialogue_TakesWhatIsAnsweredAndNothingElse()
    {
        using var folder = new TemporaryFolder();
        var text = folder.Write("s.txt", Summary);

        var result = Command.RunWith("y\n\n9\n3\ny\n", interactive: true, "case", "paste", text);

        result.Code.ShouldBe(ExitCode.Done, result.Error);
        result.Error.ShouldContain("12.1 /h taken as REI, 4 % rule, per hour of monitoring time");
        result.Error.ShouldContain("`9` is no answer here.");
        result.Out.ShouldContain("per_hour: { value: 12.1 /h, from: \"pasted text, line 2\" }");
        result.Out.ShouldContain("t90_share: { value: 12 %");
        result.Out.ShouldNotContain("spo2_lowest");
        result.Out.ShouldNotContain("Pat");
    }

    [Theory]
    [InlineData("")]
    [InlineData("y\nq\n")]
    [InlineData("\n\n\n\n")]
    [InlineData("y\ny\n1\n\n")]
    public void Dialogue_ThatStops_WritesNothing(string answers)
    {
        using var folder = new TemporaryFolder();
        var (text, target) = (folder.Write("s.txt", Summary), Path.Combine(folder.Path, "case.yaml"));

        var result = Command.RunWith(answers, interactive: true, "case", "paste", text, "--out", target);

        result.Code.ShouldBe(ExitCode.CaseProblems);
        result.Error.ShouldContain("Nothing was written.");
        File.Exists(target).ShouldBeFalse();
    }

    [Fact]
    public void Dialogue_IntoACase_KeepsWhatItHad()
    {
        using var folder = new TemporaryFolder();
        var (text, into) = (folder.Write("s.txt", Summary), folder.Write("case.yaml", "case: K-1\nnights:\n  - { date: 2026-06-03, spo2_mean: 93 % }\n"));

        Command.RunWith("y\n", interactive: true, "case", "paste", text, "--into", into).Code.ShouldBe(ExitCode.Usage);
        Command.RunWith("\ny\n\ny\n", interactive: true, "case", "paste", text, "--into", into, "--force").Code.ShouldBe(ExitCode.Done);

        File.ReadAllText(into).ShouldBe("case: K-1\nnights:\n  - date: 2026-06-03\n    spo2_lowest: { value: 81 %, from: \"pasted text, line 3\" }\n    spo2_mean: 93 %\n");
    }
}

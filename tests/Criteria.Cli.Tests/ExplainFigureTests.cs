using System.Text;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary><c>explain --figure</c> writes the picture of one grade, whole or not at all, and shows the trace all the same.</summary>
public sealed class ExplainFigureTests
{
    private static readonly byte[] PngSignature = [0x89, (byte)'P', (byte)'N', (byte)'G'];

    [Theory]
    [InlineData("out.svg")]
    [InlineData("out.SVG")]
    public void Figure_NamedSvg_IsSvgBesideTheTrace(string name)
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, name);

        var result = Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4", "--figure", path);

        result.Code.ShouldBe(0, result.Error);
        result.Out.ShouldContain("HOW NEAR, HOW SURE");
        File.ReadAllText(path, Encoding.UTF8).ShouldStartWith("<svg ");
    }

    [Fact]
    public void Figure_NamedPng_IsPng()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "out.png");

        Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4", "--figure", path).Code.ShouldBe(0);

        File.ReadAllBytes(path).Take(4).ShouldBe(PngSignature);
    }

    [Fact]
    public void Figure_OfAFindingThatIsNoGrade_IsRefused()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("explain", Command.Example("clear-severe"), "adequacy.night", "--figure", Path.Combine(folder.Path, "out.svg"));

        result.Code.ShouldBe(ExitCode.Usage);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldBe("--figure: `adequacy.night` has no figure here: it is not the grade of an index, or the index is not known.\n");
        Directory.GetFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Figure_OfSeveralNights_AsksForOne()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "out.svg");

        var result = Command.Run("explain", Command.Example("two-nights"), "severity.rei-4", "--figure", path);

        result.Code.ShouldBe(ExitCode.Usage);
        result.Error.ShouldStartWith("--figure shows one night: add --night with one of ");
        var night = result.Error.Split("one of ")[1].Split(',')[0].TrimEnd('.', '\n');
        Command.Run("explain", Command.Example("two-nights"), "severity.rei-4", "--night", night, "--figure", path).Code.ShouldBe(0);
        File.Exists(path).ShouldBeTrue();
    }

    [Fact]
    public void Figure_WithAnotherEnding_IsRefusedBeforeAnythingIsRead()
    {
        var result = Command.Run("explain", "no-such-case.yaml", "severity.rei-4", "--figure", "out.gif");

        result.Code.ShouldBe(ExitCode.Usage);
        result.Error.ShouldContain("--figure: `out.gif` ends neither in .svg nor in .png");
    }

    [Fact]
    public void Figure_IntoAFolderThatIsNotThere_SaysSoAndShowsNothing()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "no", "out.svg");

        var result = Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4", "--figure", path);

        result.Code.ShouldBe(ExitCode.Usage);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldBe($"{path}: cannot be written\n");
    }
}

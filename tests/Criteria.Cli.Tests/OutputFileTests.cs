using System.Diagnostics;
using Criteria.Cli.Files;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>A file is written whole or not at all, however a run ends.</summary>
public sealed class OutputFileTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public void Write_ThatThrows_LeavesNothingAndTheOldFileAsItWas()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("out.txt", "old");

        Should.Throw<InvalidOperationException>(() => OutputFile.Write(path, NoTerminal(), writer =>
        {
            writer.Write("half");
            throw new InvalidOperationException();
        }));

        Directory.GetFiles(folder.Path).ShouldBe([path]);
        File.ReadAllText(path).ShouldBe("old");
    }

    [Fact]
    public void Write_OntoAFullDisk_SaysSoAndLeavesNothing()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "out.txt");
        using var said = new StringWriter { NewLine = "\n" };

        var code = OutputFile.Write(path, NoTerminal(said), _ => throw new IOException("no space left"));

        code.ShouldBe(ExitCode.Usage);
        said.ToString().ShouldBe($"{path}: cannot be written\n");
        Directory.GetFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Write_BesideAFileWithTheObviousTemporaryName_LeavesItAlone()
    {
        using var folder = new TemporaryFolder();
        var other = folder.Write("out.txt.part", "mine");
        var path = Path.Combine(folder.Path, "out.txt");

        OutputFile.Write(path, NoTerminal(), writer =>
        {
            writer.Write("new");
            return ExitCode.CaseProblems;
        }).ShouldBe(ExitCode.CaseProblems);

        File.ReadAllText(other).ShouldBe("mine");
        File.ReadAllText(path).ShouldBe("new");
        Directory.GetFiles(folder.Path).Length.ShouldBe(2);
    }

    [Fact]
    public void Assess_EndedFromOutside_LeavesNoTemporaryFile()
    {
        if (OperatingSystem.IsWindows())
        {
            // There is no signal to send from here; the handler is the same.
            return;
        }

        using var folder = new TemporaryFolder();
        using var run = Start(Program, "assess", "-", "--out", Path.Combine(folder.Path, "out.txt"));
        SpinWait.SpinUntil(() => Directory.GetFiles(folder.Path).Length == 1, Patience).ShouldBeTrue("the run waits for standard input, its file begun");

        using var kill = Start("kill", "-INT", $"{run.Id}");
        run.WaitForExit(Patience).ShouldBeTrue();

        Directory.GetFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void StandardOutput_ThatIsFull_IsNotTakenForDone()
    {
        if (!File.Exists("/dev/full"))
        {
            // The device that is always full stands on Linux only.
            return;
        }

        using var run = Start("sh", "-c", $"exec '{Program}' facts > /dev/full");
        run.WaitForExit(Patience).ShouldBeTrue();

        run.ExitCode.ShouldBe(ExitCode.Usage);
        run.StandardError.ReadToEnd().ShouldStartWith("standard output: cannot be written");
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "criteria.exe" : "criteria");

    private static Process Start(string program, params string[] arguments) => Process.Start(
        new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardError = true, UseShellExecute = false })!;

    private static Terminal NoTerminal(TextWriter? error = null) => new(Stream.Null, TextWriter.Null, error ?? TextWriter.Null, Interactive: false, TimeProvider.System);
}

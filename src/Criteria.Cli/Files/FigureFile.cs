using System.Text;
using Criteria.Documents.Figures;
using Criteria.Engine.Findings;

namespace Criteria.Cli.Files;

/// <summary>Writes the severity figure of one finding; the end of the file's name says as what.</summary>
internal static class FigureFile
{
    private const string Svg = ".svg";
    private const string Png = ".png";

    /// <summary>What is wrong with the name of a figure's file, or null.</summary>
    public static string? WrongName(string path) =>
        Ending(path) is Svg or Png ? null : $"--figure: `{path}` ends neither in {Svg} nor in {Png}; the end says what is written";

    /// <summary>Writes it, and gives the exit code; when it cannot be, that is said and nothing is left behind.</summary>
    public static int Write(string path, Finding[] findings, Terminal terminal)
    {
        if (findings.Length > 1)
        {
            terminal.Error.WriteLine($"--figure shows one night: add --night with one of {string.Join(", ", findings.Select(finding => finding.Night))}.");
            return ExitCode.Usage;
        }

        if (SeverityFigure.Of(findings[0]) is not { } figure)
        {
            terminal.Error.WriteLine($"--figure: `{findings[0].Id}` has no figure here: it is not the grade of an index, or the index is not known.");
            return ExitCode.Usage;
        }

        var bytes = Ending(path) == Svg ? Encoding.UTF8.GetBytes(figure.ToSvg()) : [.. figure.ToPng()];
        return OutputFile.Write(path, terminal, bytes);
    }

    private static string Ending(string path) => Path.GetExtension(path).ToLowerInvariant();
}

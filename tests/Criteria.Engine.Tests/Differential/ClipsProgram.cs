using System.Diagnostics;

namespace Criteria.Engine.Tests.Differential;

/// <summary>The rule program that the standings are derived with a second time.</summary>
internal static class ClipsProgram
{
    private const string Name = "clips";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Where it is installed, or null.</summary>
    public static string? Path { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(System.IO.Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
        .Select(folder => System.IO.Path.Combine(folder, Name))
        .FirstOrDefault(File.Exists);

    /// <summary>Whether this machine must not do without it.</summary>
    public static bool Required => string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase);

    /// <summary>Runs a batch and gives the lines that it prints.</summary>
    public static string[] Run(string batch)
    {
        var file = System.IO.Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, batch);
            var start = new ProcessStartInfo(Path!) { RedirectStandardOutput = true, RedirectStandardInput = true };
            start.ArgumentList.Add("-f2");
            start.ArgumentList.Add(file);
            using var process = Process.Start(start)!;

            // A batch that breaks off would otherwise wait for somebody to type.
            process.StandardInput.Close();
            var reading = process.StandardOutput.ReadToEndAsync();
            if (!process.WaitForExit(Patience))
            {
                process.Kill();
                throw new TimeoutException($"{Name} did not come to an end");
            }

            return reading.GetAwaiter().GetResult().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        }
        finally
        {
            File.Delete(file);
        }
    }
}

/// <summary>A theory that needs the second rule program: skipped where it is not installed, except where it is required.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ClipsTheoryAttribute : TheoryAttribute
{
    public ClipsTheoryAttribute()
    {
        if (ClipsProgram.Path is null && !ClipsProgram.Required)
        {
            Skip = "the program `clips` is not installed (Debian: apt-get install clips)";
        }
    }
}

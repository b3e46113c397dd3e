using System.Text;

namespace Criteria.Cli.Tests.Support;

/// <summary>What a run of the command line gave.</summary>
internal sealed record CommandResult(int Code, string Out, string Error);

/// <summary>Runs the command line as a user would, from the top of the repository.</summary>
internal static class Command
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 18, 12, 0, 0, TimeSpan.Zero);

    // Reports print the name a file was given by: an absolute one would break their lines where the checkout stands.
    static Command() => Directory.SetCurrentDirectory(Repository.Root);

    public static CommandResult Run(params string[] args) => RunWith("", interactive: false, args);

    public static CommandResult RunWith(string standardInput, bool interactive, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(standardInput));
        var terminal = new Terminal(input, output, error, interactive, new FixedClock());
        var code = CommandLine.Run(args, terminal);
        return new CommandResult(code, output.ToString(), error.ToString());
    }

    /// <summary>The path of an example as its report names it: from the top of the repository.</summary>
    public static string Example(string name) => $"examples/{name}/case.yaml";

    private sealed class FixedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Noon;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}

using System.CommandLine;
using System.CommandLine.Invocation;
using Criteria.Cli.Files;
using Criteria.Engine;

namespace Criteria.Cli;

/// <summary>Prints the version of the program and of every ruleset it carries.</summary>
internal sealed class VersionAction(Terminal terminal) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        terminal.Out.WriteLine($"criteria {ProgramVersion.Text}");
        if (RulesLoader.Load(null, terminal, out var code) is not { } library)
        {
            return code;
        }

        foreach (var ruleset in library.Rulesets)
        {
            terminal.Out.WriteLine($"{ruleset.Id} {ruleset.Version} {ruleset.Digest}");
        }

        terminal.Out.WriteLine($"vocabulary {library.VocabularyDigest}");
        return ExitCode.Done;
    }
}

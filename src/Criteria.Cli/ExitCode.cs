namespace Criteria.Cli;

/// <summary>What the program ends with; <c>docs/command-line.md</c> lists them.</summary>
internal static class ExitCode
{
    /// <summary>Everything was assessed.</summary>
    public const int Done = 0;

    /// <summary>At least one case has an error; the others were assessed.</summary>
    public const int CaseProblems = 1;

    /// <summary>The command was not understood, or a file could not be read or written.</summary>
    public const int Usage = 2;

    /// <summary>The rulesets do not load.</summary>
    public const int RulesetProblems = 3;
}

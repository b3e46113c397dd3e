namespace Criteria.Cli;

/// <summary>All that a command may touch of the outside world.</summary>
/// <param name="In">Standard input.</param>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
/// <param name="Interactive">Whether a person watches standard error.</param>
/// <param name="Clock">The clock; used only to date a new template.</param>
internal sealed record Terminal(Stream In, TextWriter Out, TextWriter Error, bool Interactive, TimeProvider Clock)
{
    /// <summary>Whether a person can answer on standard input.</summary>
    public bool CanAsk { get; init; } = Interactive;
}

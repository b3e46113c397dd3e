using System.Text;
using Criteria.Cli;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8, bufferSize: 1 << 16) { NewLine = "\n" };
using var error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };
var terminal = new Terminal(Console.OpenStandardInput(), output, error, !Console.IsErrorRedirected, TimeProvider.System)
{
    CanAsk = !Console.IsErrorRedirected && !Console.IsInputRedirected,
};
try
{
    return CommandLine.Run(args, terminal);
}
catch (IOException problem)
{
    // A pipe whose reader went away is no error to the platform's streams; a full disk is.
    error.WriteLine($"standard output: cannot be written; {problem.Message}");
    return ExitCode.Usage;
}

using System.Text;
using Criteria.Cli;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8, bufferSize: 1 << 16) { NewLine = "\n" };
using var error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };
var terminal = new Terminal(Console.OpenStandardInput(), output, error, !Console.IsErrorRedirected, TimeProvider.System);
try
{
    return CommandLine.Run(args, terminal);
}
catch (IOException) when (Console.IsOutputRedirected)
{
    // A reader of a pipe who went away raises nothing here; a full disk does, and half a report must not pass for a whole one.
    error.WriteLine("standard output: cannot be written");
    return ExitCode.Usage;
}

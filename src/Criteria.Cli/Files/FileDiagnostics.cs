using Criteria.Core.Reading;

namespace Criteria.Cli.Files;

/// <summary>The messages about files that the command line names.</summary>
internal static class FileDiagnostics
{
    public static Diagnostic Unreadable(string name, string why) => new(
        "CF0001", Severity.Error, why[(name.Length + 2)..], SourceSpan.StartOf(name));

    public static Diagnostic NoDate(string file) => new(
        "CF0002", Severity.Error, "the case names no date to assess it for", SourceSpan.StartOf(file),
        "add `assessed_on: 2026-06-18`, or `service_date` under `coverage`, or give --as-of");
}

using System.Globalization;
using System.Text;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>The messages about pasted texts.</summary>
internal static class PastedDiagnostics
{
    public static Diagnostic TooLarge(int most, string file) => new(
        "CP0001", Severity.Error, $"the text is larger than {most / 1024} KiB", SourceSpan.StartOf(file), "paste the summary of one study, not a whole record");

    public static Diagnostic TooManyLines(int most, string file) => new(
        "CP0002", Severity.Error, $"the text has more than {most} lines", SourceSpan.StartOf(file), "paste the summary of one study, not a whole record");

    public static Diagnostic LineTooLong(int most, SourceSpan span) => new(
        "CP0003", Severity.Error, $"a line of more than {most} characters", span, "paste the summary as it stands on its page, line by line");

    public static Diagnostic HiddenSign(Rune sign, SourceSpan span) => new(
        "CP0004", Severity.Error, $"a sign that nobody sees (U+{sign.Value.ToString("X4", CultureInfo.InvariantCulture)})", span,
        "type that line anew; such a sign can hide figures or turn them round");

    public static Diagnostic NotText(string file) => new(
        "CP0005", Severity.Error, "not a text in UTF-8", SourceSpan.StartOf(file), "paste the summary into a plain text and save it as UTF-8");

    public static Diagnostic Empty(string file) => new(
        "CP0006", Severity.Error, "the text is empty", SourceSpan.StartOf(file));

    public static Diagnostic NothingFound(string file) => new(
        "CP0007", Severity.Warning, "no figure with a name that is known", SourceSpan.StartOf(file), "the words are those of `printed_as` in the vocabulary; `criteria facts` shows them");
}

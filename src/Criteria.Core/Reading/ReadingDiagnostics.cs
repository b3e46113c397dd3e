namespace Criteria.Core.Reading;

/// <summary>The messages about the form of a file, whatever it says.</summary>
internal static class ReadingDiagnostics
{
    public static Diagnostic Syntax(string message, SourceSpan span) => new(
        "CD0001", Severity.Error, $"not readable: {message}", span, "indent with spaces, and quote a text that holds `: ` or ` #`");

    public static Diagnostic JsonSyntax(SourceSpan span) => new(
        "CD0001", Severity.Error, "not readable: broken JSON", span, "quote every key and every text, and put a comma between two entries but none after the last");

    public static Diagnostic TooDeep(int most, SourceSpan span) => new(
        "CD0002", Severity.Error, $"nested more than {most} levels deep", span);

    public static Diagnostic TooLarge(long most, string file) => new(
        "CD0003", Severity.Error, $"the file is larger than {most / 1024} KiB", SourceSpan.StartOf(file));

    public static Diagnostic TextTooLong(int most, SourceSpan span) => new(
        "CD0004", Severity.Error, $"a text of more than {most} characters", span);

    public static Diagnostic Alias(string name, SourceSpan span) => new(
        "CD0005", Severity.Error, $"anchor or alias `{Wording.Quote(name)}`", span, "write the value out; anchors and aliases are not used");

    public static Diagnostic Tag(string tag, SourceSpan span) => new(
        "CD0006", Severity.Error, $"tag `{Wording.Quote(tag)}`", span, "leave the tag out; the vocabulary says what kind a value is");

    public static Diagnostic DuplicateKey(string key, SourceSpan span, int firstLine) => new(
        "CD0007", Severity.Error, $"the key `{key}` stands twice", span, $"the first is on line {firstLine}");

    public static Diagnostic KeyNotText(SourceSpan span) => new(
        "CD0008", Severity.Error, "a key that is not a plain word", span);

    public static Diagnostic Empty(string file) => new(
        "CD0009", Severity.Error, "the file is empty", SourceSpan.StartOf(file));

    public static Diagnostic SeveralDocuments(SourceSpan span) => new(
        "CD0010", Severity.Error, "a second document after `---`", span, "one document a file");

    public static Diagnostic TooManyProblems(string file, int most) => new(
        "CD0011", Severity.Error, $"more than {most} problems; the rest is not listed", SourceSpan.StartOf(file));

    public static Diagnostic NotText(string file) => new(
        "CD0012", Severity.Error, "not a text in UTF-8", SourceSpan.StartOf(file), "save the file as UTF-8 text");

    public static Diagnostic TooManyValues(int most, SourceSpan span) => new(
        "CD0013", Severity.Error, $"more than {most} values", span);

    public static Diagnostic Expected(string what, string found, SourceSpan span) => new(
        "CD0020", Severity.Error, $"found {found}", span, $"expected {what}");

    public static Diagnostic UnknownKey(string key, string where, string? nearest, IEnumerable<string> allowed, SourceSpan span) => new(
        "CD0021", Severity.Error, $"unknown key `{key}` in {where}", span,
        nearest is null ? $"allowed: {Wording.List(allowed)}" : $"did you mean `{nearest}`?");

    public static Diagnostic MissingKey(string key, string where, SourceSpan span) => new(
        "CD0022", Severity.Error, $"{where} has no `{key}`", span);

    public static Diagnostic UnknownWord(string word, string what, string? nearest, IEnumerable<string> allowed, SourceSpan span) => new(
        "CD0023", Severity.Error, $"`{word}` is not {what}", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"allowed: {Wording.List(allowed)}");

    public static Diagnostic BadDate(string text, SourceSpan span) => new(
        "CD0024", Severity.Error, $"`{text}` is not a date", span, "write year, month and day as 2026-06-03");
}

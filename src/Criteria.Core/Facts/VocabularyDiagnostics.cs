using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>The messages about vocabulary files.</summary>
internal static class VocabularyDiagnostics
{
    public static Diagnostic Twice(string what, string name, SourceSpan span) => new(
        "CV0001", Severity.Error, $"the {what} `{name}` is defined twice", span);

    public static Diagnostic BadId(string id, SourceSpan span) => new(
        "CV0002", Severity.Error, $"`{Wording.Quote(id)}` cannot be the name of a fact", span,
        "lower case letters, digits, `_` and `.`, starting with a letter");

    public static Diagnostic BadRange(string text, string why, SourceSpan span) => new(
        "CV0003", Severity.Error, $"`{Wording.Quote(text)}` is not a range: {why}", span, "write `LOW to HIGH` with units of the fact's dimension");

    public static Diagnostic RangeMissing(string id, SourceSpan span) => new(
        "CV0004", Severity.Error, $"`{id}` is a number and has no `range`", span);

    public static Diagnostic ChoicesMissing(string id, SourceSpan span) => new(
        "CV0005", Severity.Error, $"`{id}` is a choice and has no `choices`", span);

    public static Diagnostic UnknownUnit(string unit, string? nearest, SourceSpan span) => new(
        "CV0006", Severity.Error, $"unknown unit `{Wording.Quote(unit)}`", span,
        nearest is null ? $"allowed: {Wording.List(Units.Symbols)}" : $"did you mean `{nearest}`?");

    public static Diagnostic BadComputation(string id, string why, SourceSpan span) => new(
        "CV0007", Severity.Error, $"`{id}` cannot be computed: {why}", span);

    public static Diagnostic NoPlace(string id, SourceSpan span) => new(
        "CV0008", Severity.Error, $"`{id}` has neither `at` nor `computed`", span, "say where it stands in a case file");

    public static Diagnostic PlausibleOutsideRange(string id, SourceSpan span) => new(
        "CV0009", Severity.Error, $"the plausible values of `{id}` lie outside its range", span);

    public static Diagnostic BadPlace(string place, SourceSpan span) => new(
        "CV0010", Severity.Error, $"`{Wording.Quote(place)}` is no place in a case file", span, "keys with dots between them, as in `intake.neck` or `nights.scoring`");

    public static Diagnostic SystemOfCodes(string id, SourceSpan span) => new(
        "CV0011", Severity.Error, $"`{id}` names a coding system and is no code, or is a code and names none", span, "`kind: code` and `system` go together");

    public static Diagnostic NoCodes(string id, SourceSpan span) => new(
        "CV0012", Severity.Error, $"the code set `{Wording.Quote(id)}` has no codes", span);

    public static Diagnostic BadCode(string code, SourceSpan span) => new(
        "CV0013", Severity.Error, $"`{Wording.Quote(code)}` is not a code", span, "capital letters and digits, with dots or hyphens between them");

    public static Diagnostic CodeEndsFirst(string code, SourceSpan span) => new(
        "CV0014", Severity.Error, $"the code `{Wording.Quote(code)}` ends before it starts", span);

    public static Diagnostic NotPrinted(string id, string why, SourceSpan span) => new(
        "CV0015", Severity.Error, $"`{id}` cannot be read out of a text: {why}", span,
        "`printed_as` belongs to a number, a count, a duration or a date that stands in a case file and names nobody");

    public static Diagnostic BadPrintedWords(string words, SourceSpan span) => new(
        "CV0016", Severity.Error, $"`{Wording.Quote(words)}` cannot be found in a text", span, "a word of letters, or several");

    public static Diagnostic BadLimit(string id, string other, string why, SourceSpan span) => new(
        "CV0017", Severity.Error, $"`{id}` cannot be held against `{Wording.Quote(other)}`: {why}", span, "`not_above` names facts of the same kind of unit, of a night or of the case alike");
}

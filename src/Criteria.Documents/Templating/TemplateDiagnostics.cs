using Criteria.Core.Reading;

namespace Criteria.Documents.Templating;

/// <summary>The messages about templates.</summary>
internal static class TemplateDiagnostics
{
    public static Diagnostic Syntax(string message, SourceSpan span) => new("CT0001", Severity.Error, $"the template cannot be read: {message}", span);

    public static Diagnostic UnknownName(string name, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CT0002", Severity.Error, $"unknown name `{name}`", span, Help(nearest, known));

    public static Diagnostic UnknownFinding(string id, string? nearest, SourceSpan span) => new(
        "CT0003", Severity.Error, $"no criterion and no fact is named `{id}`", span, nearest is null ? "`criteria explain` and `criteria facts` list the names" : $"did you mean `{nearest}`?");

    public static Diagnostic Untraced(string name, SourceSpan span) => new(
        "CT0004", Severity.Error, $"`{name}` is printed outside `rests_on`", span,
        "write {% rests_on \"ID\" %} before the sentence and {% endrests_on %} after it, so that the sentence carries its findings");

    public static Diagnostic UntracedText(string text, SourceSpan span) => new(
        "CT0005", Severity.Error, $"`{text}` depends on the case and stands outside `rests_on`", span, "put the sentence into `rests_on`, or into `without` when it says that something is lacking");

    public static Diagnostic NotAList(string name, SourceSpan span) => new("CT0006", Severity.Error, $"`{name}` is not a list", span, "`for` goes through a list");

    public static Diagnostic NotAllowed(string tag, SourceSpan span) => new(
        "CT0007", Severity.Error, $"`{tag}` is not used in these templates", span, "use if, unless, case, for, assign, comment, rests_on and without");

    public static Diagnostic UnknownFilter(string filter, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CT0008", Severity.Error, $"unknown filter `{filter}`", span, Help(nearest, known));

    public static Diagnostic NotDeclared(string name, IEnumerable<string> carries, SourceSpan span) => new(
        "CT0009", Severity.Error, $"the document does not declare that it carries `{name}`", span,
        carries.Any() ? $"it carries {string.Join(", ", carries)}" : "add it to `carries` at the top of the template, if the purpose of the document needs it");

    public static Diagnostic CarriesMore(string name, SourceSpan span) => new(
        "CT0010", Severity.Error, $"a local template may not carry `{name}`", span, "the shipped document of that name does not need it");

    public static Diagnostic NoHead(SourceSpan span) => new(
        "CT0011", Severity.Error, "the template has no head", span, "start with a line `---`, then `title: ...`, `summary: ...`, and a second line `---`");

    public static Diagnostic HeadKey(string key, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CT0012", Severity.Error, $"unknown key `{key}` in the head of the template", span, Help(nearest, known));

    public static Diagnostic HeadValue(string key, string value, SourceSpan span) => new(
        "CT0013", Severity.Error, $"`{key}` cannot be `{value}`", span, key == "part" ? "it is clinical, coverage or both" : "it is yes or no");

    public static Diagnostic HeadIncomplete(SourceSpan span) => new("CT0014", Severity.Error, "the head of the template lacks its title or its summary", span);

    public static Diagnostic NotTraceable(SourceSpan span) => new(
        "CT0015", Severity.Error, "`rests_on` and `without` take names of findings and facts", span, "write them in quotes, or give a finding, a fact or a document");

    public static Diagnostic UnknownDocument(string name, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CT0016", Severity.Error, $"there is no document `{name}`", span, Help(nearest, known));

    private static string Help(string? nearest, IEnumerable<string> known) => nearest is null ? $"known: {string.Join(", ", known)}" : $"did you mean `{nearest}`?";
}

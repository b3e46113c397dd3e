namespace Criteria.Core.Reading;

/// <summary>How much a diagnostic weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Hint,

    /// <summary>Possibly wrong; the file is used.</summary>
    Warning,

    /// <summary>Wrong; the file is not used.</summary>
    Error,
}

/// <summary>What a check says of a file.</summary>
/// <param name="Code">A code that never changes its meaning; <c>docs/diagnostics.md</c> lists them all.</param>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Message">What was found: lower case start, no final stop, user text in backticks, one line.</param>
/// <param name="Span">Where.</param>
/// <param name="Help">A way out: what is allowed, or the nearest known name.</param>
public sealed record Diagnostic(string Code, Severity Severity, string Message, SourceSpan Span, string? Help = null)
{
    /// <summary>The one-line form for people: place, weight, code, message and help.</summary>
    public override string ToString()
    {
        var weight = Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "hint" };
        var help = Help is null ? "" : $"; {Help}";
        return $"{Span}: {weight} {Code}: {Message}{help}";
    }
}

/// <summary>Collects every problem of a reading, so that all are reported at once.</summary>
internal sealed class DiagnosticBag
{
    /// <summary>Most diagnostics that one file may give; a hostile file cannot fill the memory with them.</summary>
    public const int MostPerFile = 200;

    // Room for a quoted text and a dozen names beside it; more is a text that somebody put there to flood the reader.
    private const int LongestText = 400;

    private readonly List<Diagnostic> _items = [];
    private readonly Dictionary<string, int> _perFile = new(StringComparer.Ordinal);

    /// <summary>Whether an error was reported.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>All diagnostics, ordered by file (in order of first report), line and column.</summary>
    public IReadOnlyList<Diagnostic> Ordered()
    {
        var fileOrder = _items.Select(item => item.Span.File).Distinct(StringComparer.Ordinal)
            .Select((file, index) => (file, index)).ToDictionary(pair => pair.file, pair => pair.index, StringComparer.Ordinal);
        return
        [
            .. _items.OrderBy(item => fileOrder[item.Span.File]).ThenBy(item => item.Span.Line)
                .ThenBy(item => item.Span.Column).ThenBy(item => item.Code, StringComparer.Ordinal),
        ];
    }

    /// <summary>Whether a file has more problems than are listed, so that it need not be looked at further. It has an error then.</summary>
    public bool IsFull(string file) => _perFile.GetValueOrDefault(file) > MostPerFile;

    /// <summary>Adds a diagnostic; its texts are kept to one line of bearable length.</summary>
    public void Add(Diagnostic diagnostic)
    {
        ArgumentNullException.ThrowIfNull(diagnostic);
        HasErrors |= diagnostic.Severity == Severity.Error;
        var count = _perFile.GetValueOrDefault(diagnostic.Span.File);
        _perFile[diagnostic.Span.File] = count + 1;
        if (count < MostPerFile)
        {
            _items.Add(diagnostic with
            {
                Message = Wording.Quote(diagnostic.Message, LongestText),
                Help = diagnostic.Help is null ? null : Wording.Quote(diagnostic.Help, LongestText),
            });
        }
        else if (count == MostPerFile)
        {
            HasErrors = true;
            _items.Add(ReadingDiagnostics.TooManyProblems(diagnostic.Span.File, MostPerFile));
        }
    }
}

using System.Globalization;
using System.Text.RegularExpressions;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Documents.Templating;
using Criteria.Documents.Wording;

namespace Criteria.Documents;

/// <summary>
/// The text of a document as its reader knows things: a document of the case by what it is and its date, not by its name in the case file, and
/// every date in one style. Traces name documents by their ids and write ISO dates, as the text report and JSON do.
/// </summary>
internal sealed partial class Prose
{
    private readonly (Regex Told, Regex Paged, Regex Alone, string Name)[] _documents;

    /// <summary>That of a case.</summary>
    public Prose(Case subject)
    {
        var list = subject.Facts.Vocabulary.Record("documents");
        var documents = list is null ? [] : subject.Facts.RecordsOf(list).Items.Select(record => (record.Id, record.Kind, Name: NameOf(record, list))).ToArray();
        _documents = [.. documents.Select(document => Patterns(
            document.Id, document.Kind, documents.Count(other => other.Name == document.Name) > 1 ? $"{document.Name} ({document.Id})" : document.Name))];
    }

    /// <summary>The text with the documents named and the dates written out.</summary>
    public string Of(string markdown)
    {
        foreach (var (told, paged, alone, name) in _documents)
        {
            string Named(Match match) => char.IsUpper(match.Value[0]) ? Words.Capital(name) : name;
            markdown = told.Replace(markdown, match => $"{Named(match)}{(match.Groups["more"] is { Length: > 0 } more ? $" ({more.Value})" : "")}");
            markdown = paged.Replace(markdown, match => $"{Named(match)}, p.");
            markdown = alone.Replace(markdown, match => $" of the {name}");
        }

        return IsoDate().Replace(markdown, match =>
            DateOnly.TryParseExact(match.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? Words.Date(date) : match.Value);
    }

    private static string NameOf(CaseRecord record, RecordDefinition list) =>
        list.Attribute("date") is { } attribute && record[attribute].Value is DateValue { Date: var date } ? $"{record.Kind} of {Words.Date(date)}" : record.Kind;

    private static (Regex Told, Regex Paged, Regex Alone, string Name) Patterns(string id, string kind, string name)
    {
        var written = MarkdownEncoder.Instance.Encode(id);
        var first = Regex.Escape(written[..1]);
        var either = char.IsLetter(written[0]) ? $"[{char.ToUpperInvariant(written[0])}{char.ToLowerInvariant(written[0])}]" : first;
        var start = $@"(?<![\w.-]){either}{Regex.Escape(written[1..])}";
        return (
            Made($@"{start} \({Regex.Escape(kind)}(?: of \d{{4}}-\d\d-\d\d)?(?:, (?<more>[^()]*))?\)"),
            Made($@"{start} p\.(?=\d)"),
            Made($@"(?<=Not known| [a-z)]+) of {Regex.Escape(written)}(?=[,;:]|\.\s| and )"),
            MarkdownEncoder.Instance.Encode(name));
    }

    private static Regex Made(string pattern) => new(pattern, RegexOptions.CultureInvariant);

    // Not within an address.
    [GeneratedRegex(@"(?<![\w/=-])\d{4}-\d{2}-\d{2}(?![\w/-])", RegexOptions.CultureInvariant)]
    private static partial Regex IsoDate();
}

using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Documents.Templating;

namespace Criteria.Documents;

/// <summary>How far one document of a case has come, as the case file says. The program never signs.</summary>
internal sealed class SignOff
{
    private const string SignOffList = "sign_offs";
    private const string AddendumList = "addenda";

    private readonly bool _needsRelease;
    private readonly string _reviewedBy;
    private readonly string _reviewedOn;
    private readonly string _releasedBy;
    private readonly string _releasedOn;
    private readonly ImmutableArray<(string Text, string By, string On)> _addenda;

    private SignOff(bool needsRelease, Func<string, string> read, ImmutableArray<(string Text, string By, string On)> addenda)
    {
        (_reviewedBy, _reviewedOn, _releasedBy, _releasedOn) = (read("reviewed_by"), read("reviewed_on"), read("released_by"), read("released_on"));
        (Digest, _addenda, _needsRelease) = (read("text_digest"), addenda, needsRelease);
    }

    /// <summary>The digest of the text that was reviewed; empty when the case has none.</summary>
    public string Digest { get; }

    /// <summary>Whether a named reviewer and the day are in the case.</summary>
    public bool IsReviewed => _reviewedBy.Length > 0 && _reviewedOn.Length > 0;

    /// <summary>Whether a named clinician released it on a day.</summary>
    public bool IsReleased => _releasedBy.Length > 0 && _releasedOn.Length > 0;

    // A document that is released instead of reviewed: whoever released it has read it, and to the patient it is no draft.
    private bool IsForPatientOnly => _needsRelease && IsReleased && !IsReviewed;

    /// <summary>Whether its text may no longer change.</summary>
    public bool IsFinal => IsReviewed && Digest.Length > 0;

    /// <summary>The state.</summary>
    public DocumentState State => !IsFinal ? DocumentState.Draft : _addenda.IsEmpty ? DocumentState.Final : DocumentState.Addendum;

    /// <summary>The state in words for the header.</summary>
    public string Words => State switch
    {
        DocumentState.Draft when IsForPatientOnly => $"RELEASED by {_releasedBy}",
        DocumentState.Draft => IsReviewed ? $"DRAFT, reviewed by {_reviewedBy}, not final" : "DRAFT, not signed",
        DocumentState.Final => $"FINAL, reviewed by {_reviewedBy}",
        _ => $"FINAL with ADDENDUM, reviewed by {_reviewedBy}",
    };

    /// <summary>That of a document in a case; of several entries, the last by its id.</summary>
    public static SignOff Of(Case subject, string document, bool needsRelease)
    {
        var (record, list) = Records(subject, SignOffList, document).LastOrDefault();
        var addenda = Records(subject, AddendumList, document)
            .Select(pair => (Text(pair.Record, pair.List, "text"), Text(pair.Record, pair.List, "by"), Text(pair.Record, pair.List, "on")))
            .Where(addendum => addendum.Item1.Length > 0 && addendum.Item2.Length > 0 && addendum.Item3.Length > 0);
        return new SignOff(needsRelease, name => record is null ? "" : Text(record, list, name), [.. addenda]);
    }

    /// <summary>SHA-256 of a text, in small hexadecimal digits.</summary>
    public static string DigestOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>What stands below the text: who reviewed and released it, and every addendum. It is no part of the digest.</summary>
    public string Block()
    {
        var text = new StringBuilder("\n## Sign-off\n\n");
        if (!IsForPatientOnly)
        {
            text.Append(IsReviewed
                ? $"Reviewed by {Safe(_reviewedBy)} on {Safe(_reviewedOn)}.{(IsFinal ? "" : " The text is not locked yet.")}\n\n"
                : "Not reviewed. This is a draft until a named reviewer signs it off; the program does not sign.\n\n");
        }

        if (IsReleased)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"Released to the patient by {Safe(_releasedBy)} on {Safe(_releasedOn)}.\n");
        }

        foreach (var (added, by, on) in IsFinal ? _addenda : [])
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\n### Addendum of {Safe(on)}, {Safe(by)}\n\n{Safe(added)}\n");
        }

        return text.ToString();
    }

    private static IEnumerable<(CaseRecord Record, RecordDefinition List)> Records(Case subject, string at, string document) =>
        subject.Facts.Vocabulary.Record(at) is { } list ? subject.Facts.RecordsOf(list).Items.Where(record => record.Kind == document).Select(record => (record, list)) : [];

    private static string Text(CaseRecord record, RecordDefinition list, string name) => record[list.Attribute(name)!] switch
    {
        { Value: DateValue { Date: var date } } => Wording.Words.Date(date),
        { IsKnown: true } fact => Core.Reading.HiddenSigns.Spaced(fact.Text),
        _ => "",
    };

    private static string Safe(string text) => MarkdownEncoder.Instance.Encode(text);
}

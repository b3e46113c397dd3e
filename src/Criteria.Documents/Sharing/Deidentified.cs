using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Documents.Sharing;

/// <summary>The de-identified form of a case: the Safe Harbor classes that a case file can hold are taken out.</summary>
/// <remarks>
/// Names, addresses, numbers of any kind, free text, the names of documents and every note of who wrote or reviewed go; the key is replaced.
/// Dates stay in the case, because rules compare them; documents of it print years only. What remains may still identify somebody who
/// knows the patient.
/// </remarks>
public static class Deidentified
{
    private const string Key = "DE-IDENTIFIED";
    private const string SomeDocument = "a document";
    private const string SomeReviewer = "a reviewer";

    // Lists whose entries are evidence; the others say who the people are.
    private static readonly string[] Kept = ["documents", "therapy"];

    /// <summary>The case without what identifies.</summary>
    public static Case Of(Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var names = Names(subject.Facts);
        Fact[] Shared(FactSet facts, FactScope scope) => [.. facts.Entered.Where(fact => fact.Definition.Scope == scope && Keeps(fact)).Select(fact => Share(fact, names))];

        var records = subject.Facts.Records.Select(list => Kept.Contains(list.Definition.At) ? Share(list, names) : RecordList.Unknown(list.Definition));
        var facts = FactSet.Of(subject.Facts.Vocabulary, Shared(subject.Facts, FactScope.Case), records);
        return new Case(Key, subject.AssessedOn, facts, []).WithNights([.. subject.Nights.Select((night, at) => new Night($"night {(at + 1).ToString(CultureInfo.InvariantCulture)}", facts.With(Shared(night.Facts, FactScope.Night))))]);
    }

    private static bool Keeps(Fact fact) => fact.Definition.Kind != FactKind.Text && !IsIdentity(fact.Definition);

    private static bool IsIdentity(FactDefinition definition) => definition.At?.StartsWith(Model.IdentityTable.Place + ".", StringComparison.Ordinal) == true;

    private static Dictionary<string, string> Names(FactSet facts) => facts.Records.SelectMany(list => list.Items
        .Select((record, at) => (record.Id, Name: string.Create(CultureInfo.InvariantCulture, $"{list.Definition.Label.ToLowerInvariant().Replace(' ', '-')}-{at + 1:00}"))))
        .DistinctBy(pair => pair.Id).ToDictionary(pair => pair.Id, pair => pair.Name, StringComparer.Ordinal);

    private static RecordList Share(RecordList list, Dictionary<string, string> names) => new(
        list.Definition,
        [.. list.Items.Select(record => new CaseRecord(names[record.Id], record.Kind, [.. record.Attributes.Select(fact => Keeps(fact) ? Share(fact, names) : Fact.Absent(fact.Definition))]))],
        list.ClosedBy is null ? null : SomeReviewer);

    private static Fact Share(Fact fact, Dictionary<string, string> names)
    {
        var origin = fact.Origin.Kind switch
        {
            OriginKind.Document => new Provenance(OriginKind.Document, Pointer(fact.Origin.Text, names)),
            OriginKind.ClosedList => new Provenance(OriginKind.ClosedList, SomeReviewer),
            _ => fact.Origin,
        };
        return fact.Definition.SharedAs is { } range && fact.Number is { } number && number.High >= range.Low
            ? fact with { Origin = origin, Value = new NumberValue(range), Written = null }
            : fact with { Origin = origin };
    }

    // `visit-note p.2`: the document under its new name, and the page; any other word may be a name.
    private static string Pointer(string text, Dictionary<string, string> names)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var document = words.Length > 0 && names.TryGetValue(words[0], out var name) ? name : SomeDocument;
        var page = words.Skip(1).FirstOrDefault(word => word.StartsWith("p.", StringComparison.Ordinal) && word.Length > 2 && word.Skip(2).All(char.IsAsciiDigit));
        return page is null ? document : $"{document} {page}";
    }
}

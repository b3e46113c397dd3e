using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Documents.Sharing;

/// <summary>The facts of one case without what identifies.</summary>
internal sealed class SharedFacts
{
    private const string SomeDocument = "a document";
    private const string SomeReviewer = "a reviewer";
    private const int MostDigitsOfAPage = 3;

    private readonly bool _keepsDays;
    private readonly Dictionary<string, string> _names;
    private readonly HashSet<(string? System, string Code)> _codes;

    // By the object: two facts that were taken out are equal, and their years are not.
    private readonly Dictionary<Fact, string> _remarks = new(ReferenceEqualityComparer.Instance);

    public SharedFacts(FactSet facts, bool keepsDays)
    {
        _keepsDays = keepsDays;
        _names = facts.Records.Where(list => list.Definition.Identifies is null).SelectMany(list => list.Items
            .Select((record, at) => (record.Id, Name: string.Create(CultureInfo.InvariantCulture, $"{list.Definition.Label.ToLowerInvariant().Replace(' ', '-')}-{at + 1:00}"))))
            .DistinctBy(pair => pair.Id).ToDictionary(pair => pair.Id, pair => pair.Name, StringComparer.Ordinal);
        _codes = [.. facts.Vocabulary.CodeSets.SelectMany(set => set.Codes.Select(code => ((string?)set.System, code.Code)))];
    }

    /// <summary>What a written file says behind a fact: the year of a day, and that a value is pooled.</summary>
    public string? RemarkOf(Fact fact) => _remarks.GetValueOrDefault(fact);

    /// <summary>The facts of that scope. A text and a day of birth go; what else is taken out is unknown, so that a closed list does not turn it into no.</summary>
    public Fact[] Of(FactSet facts, FactScope scope) =>
        [.. facts.Entered.Where(fact => fact.Definition.Scope == scope && (Signs(fact) || fact.Definition is not ({ Kind: FactKind.Text } or { Identifies: IdentifierClasses.BirthDate }))).Select(Of)];

    // How nights are read together must be signed for; the name goes, that somebody signed stays.
    private static bool Signs(Fact fact) => fact is { State: FactState.Known, Definition.At: NightsDeclaration.ByPlace };

    /// <summary>The list under new names, in the same order; of a list of people, nothing.</summary>
    public RecordList Of(RecordList list) => list.Definition.Identifies is not null
        ? RecordList.Unknown(list.Definition)
        : new RecordList(list.Definition, [.. list.Items.Select(Of)], list.ClosedBy is null ? null : SomeReviewer);

    private CaseRecord Of(CaseRecord record) => new(
        _names[record.Id],
        record.Kind,
        [.. record.Attributes.Select(fact => fact.Definition.Kind == FactKind.Text || fact.State == FactState.Absent ? Fact.Absent(fact.Definition) : Of(fact))]);

    private Fact Of(Fact fact)
    {
        var shared = fact with { Origin = Of(fact.Origin) };
        return fact switch
        {
            { State: not FactState.Known } => shared,
            _ when Signs(fact) => shared with { Value = new TextValue(SomeReviewer), Written = null },
            { Value: DateValue { Date: var date }, Definition.Identifies: IdentifierClasses.Day } => _keepsDays ? shared : YearOf(shared, date),
            { Definition: { Identifies: not null, Kind: not FactKind.Date } } or { Value: DateValue or TextValue } => TakenOut(shared),
            { Value: CodeValue { Code: var code } } when !_codes.Contains((fact.Definition.System, code)) => TakenOut(shared),
            { Definition.SharedAs: { } range, Number: { } number } when number.High >= range.Low => Pooled(shared, range),
            _ => shared,
        };
    }

    private Fact YearOf(Fact fact, DateOnly date)
    {
        var dated = fact.Definition.AlsoYesNo ? fact with { Value = new YesNoValue(true), Written = null } : TakenOut(fact);
        _remarks[dated] = $"in {date.Year.ToString("0000", CultureInfo.InvariantCulture)}";
        return dated;
    }

    private static Fact TakenOut(Fact fact) => fact with { State = FactState.Unknown, Value = null, Written = null, Origin = Provenance.Entered };

    // A file can only write one number; the lowest of the range stands for all.
    private Fact Pooled(Fact fact, Interval range)
    {
        var pooled = fact with { Value = new NumberValue(_keepsDays ? range : Interval.Exactly(range.Low)), Written = null };
        _remarks[pooled] = "or more";
        return pooled;
    }

    private Provenance Of(Provenance origin) => origin.Kind switch
    {
        OriginKind.Document => new Provenance(OriginKind.Document, Pointer(origin.Text)),
        OriginKind.ClosedList => new Provenance(OriginKind.ClosedList, SomeReviewer),
        _ => origin,
    };

    // `visit-note p.2`: the document under its new name, and the page; any other word may be a name, and a long number anything.
    private string Pointer(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var document = words.Length > 0 && _names.TryGetValue(words[0], out var name) ? name : SomeDocument;
        var page = words.Skip(1).FirstOrDefault(word => word.StartsWith("p.", StringComparison.Ordinal) && word.Length > 2 && word.Length <= 2 + MostDigitsOfAPage && word.Skip(2).All(char.IsAsciiDigit));
        return page is null ? document : $"{document} {page}";
    }
}

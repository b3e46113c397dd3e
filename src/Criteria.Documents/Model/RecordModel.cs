using Criteria.Core.Facts;
using Criteria.Documents.Wording;

namespace Criteria.Documents.Model;

/// <summary>One document or therapy trial of the case.</summary>
internal sealed class RecordModel(CaseRecord record, RecordDefinition list, IEnumerable<FindingModel>? met = null) : ITraced
{
    /// <summary>Its name in the case file.</summary>
    public string Id => record.Id;

    /// <summary>What it is: clinical evaluation, order.</summary>
    public string Kind => record.Kind;

    /// <summary>Its date in words; empty when the case has none.</summary>
    public string Date => DateOf("date");

    /// <summary>The start of a trial in words; empty when the case has none.</summary>
    public string Start => DateOf("start");

    /// <summary>The end of a trial in words; empty when the case has none.</summary>
    public string End => DateOf("end");

    /// <summary>Who wrote it.</summary>
    public string Author => Text("author");

    /// <summary>The date of its signature in words, or yes or no; empty when the case does not say.</summary>
    public string Signed => DateOf("signed");

    /// <summary>How many pages it has; empty when the case does not say.</summary>
    public string Pages => Text("pages");

    /// <summary>How a trial ended.</summary>
    public string Outcome => Text("outcome");

    /// <summary>Everything that the case says of it, each with its label.</summary>
    public IReadOnlyList<FactModel> Facts => [.. record.Attributes.Where(fact => fact.IsKnown).Select(fact => new FactModel(fact, null))];

    /// <summary>The criteria of the coverage check that are met and rest on it.</summary>
    public IReadOnlyList<SupportModel> Supports { get; } =
        [.. (met ?? []).Select(finding => new SupportModel(finding, finding.PlacesIn(record.Id))).Where(support => support.IsAny)];

    bool ITraced.Stands => true;

    bool ITraced.IsOpen => false;

    bool ITraced.NamesItself => true;

    string ITraced.Key => $"{list.At}:{record.Id}";

    internal DateOnly? When => (Fact("date")?.Value as DateValue)?.Date;

    internal int Order => list.Kinds.IndexOf(record.Kind);

    private Fact? Fact(string name) => list.Attribute(name) is { } attribute ? record[attribute] : null;

    private string Text(string name) => Fact(name) is { IsKnown: true } fact ? fact.Text : "";

    private string DateOf(string name) => Fact(name)?.Value is DateValue { Date: var date } ? Words.Date(date) : Text(name);
}

/// <summary>Something with a date: a document or a night.</summary>
internal sealed class EventModel(string date, string what, string document, bool isDated) : ITraced
{
    /// <summary>The date in words; for one without, a word that says so.</summary>
    public string Date { get; } = date;

    /// <summary>What happened.</summary>
    public string What { get; } = what;

    /// <summary>The document that shows it; empty for a night.</summary>
    public string Document { get; } = document;

    /// <summary>Whether it has a date.</summary>
    public bool IsDated { get; } = isDated;

    bool ITraced.Stands => true;

    bool ITraced.IsOpen => false;

    bool ITraced.NamesItself => true;

    string ITraced.Key => $"{Date}:{What}:{Document}";
}

/// <summary>Who is written to.</summary>
internal sealed class RecipientModel(CaseRecord record, RecordDefinition list)
{
    /// <summary>Which office: dentist, ordering clinician.</summary>
    [Untraced]
    public string Kind => record.Kind;

    /// <summary>The name.</summary>
    [Untraced]
    public string Name => Text("name");

    /// <summary>The address.</summary>
    [Untraced]
    public string Address => Text("address");

    /// <summary>The telephone number.</summary>
    [Untraced]
    public string Phone => Text("phone");

    /// <summary>The fax number.</summary>
    [Untraced]
    public string Fax => Text("fax");

    internal string Id => record.Id;

    private string Text(string name) => record[list.Attribute(name)!] is { IsKnown: true } fact ? fact.Text : "";
}

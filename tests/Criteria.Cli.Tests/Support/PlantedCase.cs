using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Cli.Tests.Support;

/// <summary>A case in which every place that the vocabulary has holds something that identifies.</summary>
internal sealed class PlantedCase(Vocabulary vocabulary)
{
    /// <summary>Stands in every text, origin, name and reviewer.</summary>
    public const string Plant = "Zzyzx";

    /// <summary>A code of no list, that could be any number of a person.</summary>
    public const string Code = "ZZ9-55-0123";

    /// <summary>The year of birth of somebody above the age that is pooled.</summary>
    public const string BirthYear = "1903";

    private int _count;

    /// <summary>The days that were planted.</summary>
    public List<DateOnly> Days { get; } = [];

    /// <summary>The facts that were planted.</summary>
    public List<FactDefinition> Facts { get; } = [];

    public string Text()
    {
        var records = vocabulary.Records.Select(list => new RecordList(list, [.. list.Kinds.Select(kind => new CaseRecord($"{Plant}-{list.At}-{_count++}", kind, [.. list.Attributes.Select(Of)]))], $"{Plant} closed it")).ToArray();
        var facts = FactSet.Of(vocabulary, vocabulary.Facts.Where(fact => fact is { Scope: FactScope.Case, At: not null }).Select(Of), records);
        var night = facts.With(vocabulary.Facts.Where(fact => fact.Scope == FactScope.Night && (fact.At is not null || vocabulary.Indices.Any(index => fact == index.Printed || fact == index.Events || fact == index.Time))).Select(Of));
        return CaseWriter.Write(new Criteria.Core.Cases.Case($"{Plant}-0412", new DateOnly(2026, 6, 18), facts, [new Night("night 1", night)]));
    }

    private Fact Of(FactDefinition fact)
    {
        Facts.Add(fact);
        _count++;
        var member = vocabulary.Groups.Any(group => fact.At?.StartsWith(group.At + ".", StringComparison.Ordinal) == true) && fact.Kind == FactKind.YesNo && fact.Computed is null;
        return member && _count % 2 == 0
            ? Fact.Known(fact, new YesNoValue(false), new Provenance(OriginKind.ClosedList, $"{Plant} reviewer"))
            : Fact.Known(fact, Value(fact), new Provenance(OriginKind.Document, $"told by {Plant}{_count} p.5550123456"));
    }

    private FactValue Value(FactDefinition fact) => fact.Kind switch
    {
        FactKind.Text => new TextValue($"{Plant} {_count.ToString(CultureInfo.InvariantCulture)} 555-0123"),
        FactKind.Date => new DateValue(Day(fact)),
        FactKind.YesNo => new YesNoValue(true),
        FactKind.Choice => new ChoiceValue(fact.Choices[0]),
        FactKind.Code => new CodeValue(Code),
        FactKind.Durations => new DurationsValue([Ratio.Of(60, 1), null]),
        _ => new NumberValue(Interval.Exactly((fact.SharedAs ?? fact.Range)!.Value.High)),
    };

    private DateOnly Day(FactDefinition fact)
    {
        if (fact.Identifies == IdentifierClasses.BirthDate)
        {
            return new DateOnly(int.Parse(BirthYear, CultureInfo.InvariantCulture), 5, 6);
        }

        // Never the first of January, which stands for a year.
        var day = new DateOnly(2024, 1, 2).AddDays(Days.Count % 300);
        Days.Add(day);
        return day;
    }
}

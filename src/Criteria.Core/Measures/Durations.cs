using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>Measures over times and dates.</summary>
internal static class Durations
{
    /// <summary>The shortest of several times. As soon as one is known, the shortest is known to be no longer.</summary>
    public static Fact Shortest(FactDefinition definition, IReadOnlyList<Fact> times)
    {
        var counted = times.Where(time => time.State != FactState.NotApplicable).ToArray();
        var known = counted.Where(time => time.Number is not null).OrderBy(time => time.Number!.Value.High).ToArray();
        if (known.Length == 0)
        {
            return Fact.Absent(definition);
        }

        var high = known[0].Number!.Value.High;
        var low = known.Length == counted.Length ? known.Min(time => time.Number!.Value.Low) : definition.Range!.Value.Low;
        string From() => string.Join(", ", counted.Select(time => $"{time.Definition.Label.ToLowerInvariant()} {time.Text}"));
        return Measure.Number(definition, Interval.Between(low, high), From);
    }

    /// <summary>A time that is part of another: as it is given, else no longer than the whole. A part said to be longer makes it everything from one to the other.</summary>
    public static Fact PartOf(FactDefinition definition, Fact part, Fact whole)
    {
        string Of(Fact time) => $"{time.Definition.Label.ToLowerInvariant()} {time.Text}";
        return (part.Number, whole.Number) switch
        {
            (null, null) => Fact.Absent(definition),
            (null, { } all) => Measure.Number(definition, Interval.Between(definition.Range!.Value.Low, all.High), () => Of(whole)),
            ({ } given, { } all) when given.Low > all.High => Measure.Number(definition, given.HullWith(all), () => $"{Of(part)}, {Of(whole)}"),
            ({ } given, _) => Measure.Number(definition, given, () => Of(part)),
        };
    }

    /// <summary>The start of the only listed trial of a kind; unknown when several are listed.</summary>
    public static Fact OnlyStart(FactDefinition definition, FactSet facts, string list, string kind)
    {
        var record = facts.Vocabulary.Record(list);
        var start = record?.Attribute("start");
        if (record is null || start is null)
        {
            return Fact.Absent(definition);
        }

        var trials = facts.RecordsOf(record).Items.Where(trial => trial.Kind == kind).ToArray();
        return trials is [var only] && only[start] is { IsKnown: true, Value: DateValue } date
            ? Fact.Known(definition, date.Value!, new Provenance(() => $"{only.Id}, {start.Label.ToLowerInvariant()}"))
            : Fact.Absent(definition);
    }
}

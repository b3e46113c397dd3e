using Criteria.Core.Facts;

namespace Criteria.Core.Measures;

/// <summary>How often a therapy was used, night by night.</summary>
internal static class NightlyUse
{
    /// <summary>
    /// The nights that reach a time of use in the best run of consecutive nights near the start. A night without use counts
    /// in its run; a night that is not known, or not listed, may have gone either way.
    /// </summary>
    /// <param name="definition">The fact.</param>
    /// <param name="written">The figure that a report on use gives, if the case has it.</param>
    /// <param name="facts">The facts, whose only trial of the kind is looked at.</param>
    public static Fact BestRun(FactDefinition definition, Fact? written, FactSet facts)
    {
        var computed = definition.Computed!;
        var (list, kind, attribute) = (computed.From[0], computed.From[1], computed.From[2]);
        if (facts.Vocabulary.Record(list) is not { } record || record.Attribute(attribute) is not { } nightly
            || facts.RecordsOf(record).Items.Where(trial => trial.Kind == kind).ToArray() is not [var only]
            || only[nightly].Value is not DurationsValue { Times: var times })
        {
            return written ?? Fact.Absent(definition);
        }

        var run = computed.Run!;
        var (low, high) = Best(run, night => night < times.Length && times[night] is { } time ? time >= run.AtLeast : null);
        var range = Interval.Between(low, high);
        string From() => $"{only.Id}, {nightly.Label.ToLowerInvariant()}: {only[nightly].Text}";
        return written?.Number is not { } figure ? Measure.Number(definition, range, From)
            : range.Contains(figure.Low) ? Measure.Number(definition, figure, From, written: written.Written)
            : Measure.Number(definition, range.HullWith(figure), () => $"{From()}, which disagrees with the written {written.Text}");
    }

    // Every run of the length within the first nights; what is unknown counts for the high end only.
    private static (int Low, int High) Best(RunOfNights run, Func<int, bool?> reached)
    {
        var (low, high) = (0, 0);
        var (surely, perhaps) = (0, 0);
        for (var night = 0; night < run.Within; night++)
        {
            Count(night, 1);
            if (night >= run.Length)
            {
                Count(night - run.Length, -1);
            }

            if (night >= run.Length - 1)
            {
                (low, high) = (Math.Max(low, surely), Math.Max(high, surely + perhaps));
            }
        }

        return (low, high);

        void Count(int night, int by)
        {
            surely += reached(night) == true ? by : 0;
            perhaps += reached(night) is null ? by : 0;
        }
    }
}

using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>Looks at all values together: the same fact twice, figures above what they cannot exceed, nights that are not told apart.</summary>
internal static class Contradictions
{
    public static PastedText Mark(PastedText text)
    {
        var values = WithNights(text.Values, text.Nights, out var nights).ToList();
        var marked = new List<PastedValue>();
        foreach (var value in values)
        {
            var same = values.Where(other => other != value && other.Night == value.Night && SameFacts(other, value)).ToArray();

            // Said twice alike is said once.
            if (marked.Any(other => same.Contains(Bare(other, values)) && SameReadings(other, value)))
            {
                continue;
            }

            var other = same.FirstOrDefault(other => !SameReadings(other, value));
            ImmutableArray<string> doubts = [.. value.Doubts, .. other is null ? [] : new[] { Doubts.Other(other.Readings[0].Value, other.Place.Line) }, .. Above(value, values)];
            marked.Add(value with { Doubts = [.. doubts.Distinct()] });
        }

        return text with { Values = [.. marked], Nights = nights };
    }

    private static PastedValue Bare(PastedValue marked, List<PastedValue> values) => values.First(value => value.Place == marked.Place && value.Readings == marked.Readings);

    private static bool SameFacts(PastedValue one, PastedValue other) => one.Readings.Any(left => other.Readings.Any(right => left.Fact.Definition == right.Fact.Definition));

    private static bool SameReadings(PastedValue one, PastedValue other) =>
        one.Readings.Select(reading => (reading.Fact.Definition, reading.Fact.Value)).SequenceEqual(other.Readings.Select(reading => (reading.Fact.Definition, reading.Fact.Value)));

    private static IEnumerable<string> Above(PastedValue value, List<PastedValue> values) =>
        from other in values
        where other.Night == value.Night && value.Readings.Length == 1 && other.Readings.Length == 1
        from mine in value.Readings
        from limit in other.Readings
        let isAbove = mine.Fact.Definition.NotAbove.Contains(limit.Fact.Definition.Id) && mine.Fact.Number is { } number && limit.Fact.Number is { } bound && number.Low > bound.High
        let isBelow = limit.Fact.Definition.NotAbove.Contains(mine.Fact.Definition.Id) && mine.Fact.Number is { } most && limit.Fact.Number is { } above && above.Low > most.High
        where isAbove || isBelow
        select isAbove ? Doubts.Above(limit.Meaning, limit.Value, other.Place.Line) : Doubts.Below(limit.Meaning, limit.Value, other.Place.Line);

    // Without numbers, the date of the night at the head of each part tells nights apart.
    private static IEnumerable<PastedValue> WithNights(ImmutableArray<PastedValue> values, ImmutableArray<string> named, out ImmutableArray<string> nights)
    {
        nights = named;
        if (named.Length > 0)
        {
            return values.Select(value => value.Night is null && named.Length > 1 && IsOfNight(value) ? value with { Doubts = [.. value.Doubts, Doubts.WhichNight] } : value);
        }

        var dates = values.Where(IsDate).Select(value => value.Readings[0].Fact.Text).Distinct().ToImmutableArray();
        if (dates.Length < 2)
        {
            return values;
        }

        nights = dates;
        string? night = null;
        var parted = new List<PastedValue>();
        var isHead = IsDate(values.First(IsOfNight));
        foreach (var value in values)
        {
            night = IsDate(value) ? value.Readings[0].Fact.Text : night;
            parted.Add(!IsOfNight(value) ? value : isHead ? value with { Night = night } : value with { Doubts = [.. value.Doubts, Doubts.WhichNight] });
        }

        return parted;
    }

    private static bool IsOfNight(PastedValue value) => value.Readings[0].Fact.Definition.Scope == FactScope.Night;

    // The first date of the vocabulary's nights is the one by which they are known.
    private static bool IsDate(PastedValue value) => value.Readings is [{ Fact.Definition: { Kind: FactKind.Date, At: $"{Vocabulary.NightPlace}.date" } }];
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>A fact that a person has taken.</summary>
/// <param name="Night">The night of the text, or null.</param>
/// <param name="Fact">The fact.</param>
public sealed record ConfirmedFact(string? Night, Fact Fact);

/// <summary>Puts facts that a person has confirmed into a case.</summary>
public static class PastedCase
{
    /// <summary>The key of a case that has none yet.</summary>
    public const string NewKey = "CASE-KEY";

    /// <summary>The case with the facts; a fact that it had is replaced.</summary>
    /// <param name="vocabulary">The vocabulary.</param>
    /// <param name="into">The case, or null for a new one.</param>
    /// <param name="facts">What was confirmed.</param>
    /// <remarks>A night of the text is the night of the case with the same date; the only night of both; else a new one.</remarks>
    public static Case With(Vocabulary vocabulary, Case? into, IEnumerable<ConfirmedFact> facts)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(facts);
        var all = facts.ToArray();
        var subject = into ?? new Case(NewKey, null, FactSet.Of(vocabulary, []), []);
        var ofCase = all.Where(one => one.Fact.Definition.Scope == FactScope.Case).Select(one => one.Fact).ToArray();
        var caseFacts = subject.Facts.With(ofCase);
        var nights = subject.Nights.Select(night => night with { Facts = night.Facts.With(ofCase) }).ToList();
        var ofNights = all.Where(one => one.Fact.Definition.Scope == FactScope.Night).GroupBy(one => one.Night).ToArray();
        foreach (var night in ofNights)
        {
            var own = night.Select(one => one.Fact).ToArray();
            var place = PlaceOf(DateOf(own), nights, ofNights.Length == 1);
            if (place >= 0)
            {
                nights[place] = nights[place] with { Facts = nights[place].Facts.With(own) };
            }
            else
            {
                nights.Add(new Night("", caseFacts.With(own)));
            }
        }

        var ordered = nights.OrderBy(night => DateOf(night.Facts.Entered) ?? DateOnly.MaxValue).ToImmutableArray();
        return (subject with { Facts = caseFacts, Nights = [] }).WithNights(ordered);
    }

    private static int PlaceOf(DateOnly? date, List<Night> nights, bool isOnly)
    {
        var same = date is null ? -1 : nights.FindIndex(night => DateOf(night.Facts.Entered) == date);
        var onlyNight = isOnly && nights.Count == 1 && (date is null || DateOf(nights[0].Facts.Entered) is null);
        return same >= 0 ? same : onlyNight ? 0 : -1;
    }

    private static DateOnly? DateOf(IEnumerable<Fact> facts) =>
        (facts.FirstOrDefault(fact => fact.Definition.At == $"{Vocabulary.NightPlace}.date")?.Value as DateValue)?.Date;
}

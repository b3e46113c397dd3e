using Criteria.Engine.Changes;
using Humanizer;

namespace Criteria.Documents.Wording;

/// <summary>What would change a finding, and what an answer would settle, in words.</summary>
public static class ChangeText
{
    /// <summary>What a list of changes must not be taken for.</summary>
    public const string Caution = "One change at a time, the rest as it is. A change counts only where it is true: this is no advice to make it so.";

    /// <summary>What a list of pairs must not be taken for, and what it leaves out.</summary>
    public const string CautionOfPairs =
        "Neither of the two does it alone. Two parts of one figure, and two dates that are set against each other, are not paired.";

    private const int ValuesShown = 4;

    /// <summary>The changes that turn a finding, by what they turn it to; of each at most so many, the smallest first.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="criterion">The finding.</param>
    /// <param name="night">Its night.</param>
    /// <param name="most">How many changes of each kind are wanted.</param>
    /// <param name="names">How a night is named where a change is of one night and the finding is not; null where there is but one.</param>
    public static IEnumerable<(string To, IReadOnlyList<string> Changes, int More)> Of(Outlook outlook, string criterion, string? night, int most, Func<string, string>? names = null)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        foreach (var outcome in outlook.Of(criterion, night).GroupBy(pair => pair.Turn.AfterWords))
        {
            // Several words of one fact that do the same are one change.
            var changes = outcome.Select(pair => pair.Change).GroupBy(change => (change.Fact, change.Night, change.Step.Length > 0 ? change.To : "")).ToArray();
            yield return (outcome.Key, [.. changes.Take(most).Select(group => Words([.. group], night, names))], Math.Max(0, changes.Length - most));
        }
    }

    /// <summary>Two changes at a time that turn a finding, by what they turn it to, the smallest first.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="night">The finding's night.</param>
    /// <param name="most">How many of each kind are wanted.</param>
    public static IEnumerable<(string To, IReadOnlyList<string> Changes, int More)> Of(IEnumerable<ChangePair> pairs, string? night, int most)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        foreach (var outcome in pairs.GroupBy(pair => pair.Turn.AfterWords))
        {
            var changes = outcome.GroupBy(pair => (pair.First.Fact, Stepped(pair.First), pair.Second.Fact, Stepped(pair.Second))).SelectMany(Alike).ToArray();
            yield return (outcome.Key, [.. changes.Take(most).Select(pair => $"{Words(pair.First, night, null)}, and {Words(pair.Second, night, null)}")], Math.Max(0, changes.Length - most));
        }
    }

    private static string Stepped(Change change) => change.Step.Length > 0 ? change.To : "";

    // Words of two facts that do the same in every combination are one pair.
    private static IEnumerable<(Change[] First, Change[] Second)> Alike(IEnumerable<ChangePair> pairs)
    {
        var all = pairs.ToArray();
        var first = all.Select(pair => pair.First).DistinctBy(change => change.To).ToArray();
        var second = all.Select(pair => pair.Second).DistinctBy(change => change.To).ToArray();
        return all.Length == first.Length * second.Length ? [(first, second)]
            : all.GroupBy(pair => pair.First.To).Select(group => (new[] { group.First().First }, group.Select(pair => pair.Second).ToArray()));
    }

    private static string Words(Change[] same, string? night, Func<string, string>? names)
    {
        var first = same[0];
        var values = same.Length <= ValuesShown
            ? same.Select(change => change.To).Humanize(value => value, "or")
            : $"{string.Join(", ", same.Take(ValuesShown).Select(change => change.To))} or {same.Length - ValuesShown} others";
        var step = first.Step.Length > 0 ? $" ({first.Step})" : "";
        var place = first.Night is { } own && own != night && names is not null ? $"{first.Place}, {names(own)}" : first.Place;
        return $"{place}: {values} instead of {first.From}{step}{(first.IsFixed ? ", which nobody can change" : "")}";
    }
}

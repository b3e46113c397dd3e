using System.Collections.Immutable;

namespace Criteria.Engine.Changes;

/// <summary>Which answers lead where, in words: <c>not met up to 26; met from 29</c>.</summary>
internal static class AnswerWords
{
    /// <summary>One phrase for each outcome.</summary>
    /// <param name="values">The values.</param>
    /// <param name="outcomes">What each leads to; null where it settles nothing.</param>
    /// <param name="inOrder">Whether the values are in an order, the lowest first.</param>
    public static ImmutableArray<string> Of(IReadOnlyList<string> values, IReadOnlyList<string?> outcomes, bool inOrder)
    {
        if (!inOrder)
        {
            return [.. values.Zip(outcomes).Where(pair => pair.Second is not null).GroupBy(pair => pair.Second)
                .Select(group => $"{group.Key} if {Either([.. group.Select(pair => pair.First)])}")];
        }

        var words = ImmutableArray.CreateBuilder<string>();
        for (var first = 0; first < values.Count;)
        {
            var last = first;
            while (last + 1 < values.Count && outcomes[last + 1] == outcomes[first])
            {
                last++;
            }

            if (outcomes[first] is { } outcome)
            {
                words.Add($"{outcome} {Run(values, first, last)}");
            }

            first = last + 1;
        }

        return words.ToImmutable();
    }

    private static string Run(IReadOnlyList<string> values, int first, int last) =>
        first == 0 ? $"up to {values[last]}"
        : last == values.Count - 1 ? $"from {values[first]}"
        : first == last ? $"at {values[first]}"
        : $"from {values[first]} to {values[last]}";

    private static string Either(string[] values) =>
        values.Length == 1 ? values[0] : $"{string.Join(", ", values[..^1])} or {values[^1]}";
}

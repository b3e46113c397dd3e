namespace Criteria.Core.Reading;

/// <summary>Finds the known name that a misspelt one most likely means.</summary>
public static class NearestName
{
    private const int LongestCompared = 64;

    /// <summary>The nearest of <paramref name="known"/>, or null when none is near.</summary>
    /// <remarks>Near: at most a third of the letters changed, added, left out or swapped with a neighbour. Ties go to the first in order.</remarks>
    public static string? Of(string name, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(known);
        if (name.Length is 0 or > LongestCompared)
        {
            return null;
        }

        string? best = null;
        var bestDistance = Math.Max(1, name.Length / 3) + 1;
        foreach (var candidate in known.Order(StringComparer.Ordinal))
        {
            if (Math.Abs(candidate.Length - name.Length) >= bestDistance)
            {
                continue;
            }

            var distance = Distance(Fold(name), Fold(candidate));
            if (distance < bestDistance)
            {
                (best, bestDistance) = (candidate, distance);
            }
        }

        return best;
    }

    private static string Fold(string name) => name.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');

    // Optimal string alignment: Levenshtein with neighbouring swaps.
    private static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            rows[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
                }
            }
        }

        return rows[a.Length, b.Length];
    }
}

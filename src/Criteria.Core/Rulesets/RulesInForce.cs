using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Rulesets;

/// <summary>The rulesets that count on a date, bound and ordered.</summary>
public sealed class RulesInForce
{
    internal RulesInForce(
        Vocabulary vocabulary, ImmutableArray<Ruleset> rulesets, ImmutableArray<Ruleset> leftOut,
        ImmutableArray<Criterion> criteria, ImmutableArray<int> evaluationOrder, ImmutableArray<int> strata) =>
        (Vocabulary, Rulesets, LeftOut, Criteria, EvaluationOrder, Strata) = (vocabulary, rulesets, leftOut, criteria, evaluationOrder, strata);

    /// <summary>The vocabulary.</summary>
    public Vocabulary Vocabulary { get; }

    /// <summary>The rulesets, in report order.</summary>
    public ImmutableArray<Ruleset> Rulesets { get; }

    /// <summary>The rulesets in force that are left out, because they refer to rules that are not in force.</summary>
    public ImmutableArray<Ruleset> LeftOut { get; }

    /// <summary>The criteria, in report order; a criterion's index is its place here.</summary>
    public ImmutableArray<Criterion> Criteria { get; }

    /// <summary>The indices of the criteria in an order in which each comes after what it reads.</summary>
    public ImmutableArray<int> EvaluationOrder { get; }

    /// <summary>For each criterion the stratum: 0 reads facts only, each other is one above the highest it reads.</summary>
    public ImmutableArray<int> Strata { get; }

    /// <summary>The digest of this set of rules; see <see cref="DigestOf"/>.</summary>
    public string Digest(string vocabularyDigest) => DigestOf(vocabularyDigest, Rulesets);

    /// <summary>One digest of a set of rules: over its vocabulary and each of its rulesets with its local changes, in whatever order.</summary>
    /// <param name="vocabularyDigest">That of the vocabulary.</param>
    /// <param name="rulesets">The rulesets.</param>
    public static string DigestOf(string vocabularyDigest, IEnumerable<Ruleset> rulesets)
    {
        ArgumentNullException.ThrowIfNull(rulesets);
        return Digests.OfLines([$"vocabulary {vocabularyDigest}", .. rulesets.Select(ruleset => $"{ruleset.Id} {ruleset.Version} {ruleset.Digest}")]);
    }

    /// <summary>The criterion of that id, or null.</summary>
    public Criterion? Find(string id) => Criteria.FirstOrDefault(criterion => criterion.Id == id);
}

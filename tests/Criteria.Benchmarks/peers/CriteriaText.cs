using System.Globalization;
using System.Text;
using Criteria.Core.Reading;

namespace Criteria.Benchmarks.Peers;

/// <summary>The workload as a ruleset of ours.</summary>
internal static class CriteriaText
{
    /// <summary>The vocabulary, the sources and the ruleset.</summary>
    public static SourceFile[] Files() => MadeUpRules.With(Text());

    /// <summary>The id of a criterion.</summary>
    public static string Id(int criterion) => string.Create(CultureInfo.InvariantCulture, $"made-up.c{criterion}");

    private static string Text()
    {
        var text = new StringBuilder(MadeUpRules.Header);
        for (var i = 0; i < Workload.Criteria.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"""
                  - id: {Id(i)}
                    title: Made-up criterion {i}
                    when: {Of(Workload.Criteria[i])}
                    cites: [bbp-osa "criteria"]

                """);
        }

        return text.ToString();
    }

    private static string Of(Condition condition) => condition switch
    {
        Condition.Number number => string.Create(CultureInfo.InvariantCulture, $"{number.Fact} {number.Sign} {number.Bound} {number.Unit}").TrimEnd(),
        Condition.Yes yes => yes.Fact,
        Condition.Word word => $"{word.Fact} is {string.Join(" or ", word.Words)}",
        Condition.Met met => $"{Id(met.Criterion)} is met",
        Condition.Not not => $"{{ not: {Of(not.Part)} }}",
        Condition.Some some when some.Need == some.Parts.Length => $"{{ all: [{Parts(some)}] }}",
        Condition.Some { Need: 1 } some => $"{{ any: [{Parts(some)}] }}",
        Condition.Some some => string.Create(CultureInfo.InvariantCulture, $"{{ at_least: {some.Need}, of: [{Parts(some)}] }}"),
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private static string Parts(Condition.Some some) => string.Join(", ", some.Parts.Select(Of));
}

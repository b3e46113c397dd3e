using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Humanizer;

namespace Criteria.Documents.PolicyBook;

/// <summary>What the tests that stand beside the rules gave, counted for criteria and rulesets.</summary>
internal sealed class BookTests
{
    private readonly Dictionary<string, int> _compared;
    private readonly Dictionary<string, int> _wrong;

    public BookTests(BookOrder order)
    {
        var expectations = order.Tests.SelectMany(test => test.Expectations).GroupBy(expectation => expectation.Criterion, StringComparer.Ordinal);
        _compared = expectations.ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
        _wrong = order.Run.Failures.GroupBy(failure => failure.Expectation.Criterion, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
    }

    /// <summary>12 outcomes compared, all as expected.</summary>
    public string Of(params IReadOnlyCollection<Criterion> criteria)
    {
        var (compared, wrong) = (Compared(criteria), Wrong(criteria));
        return compared == 0 ? "none" : $"{"outcome".ToQuantity(compared)} compared, {(wrong == 0 ? "all as expected" : $"{wrong} not as expected")}";
    }

    /// <summary>How many outcomes were compared.</summary>
    public int Compared(IEnumerable<Criterion> criteria) => criteria.Sum(criterion => _compared.GetValueOrDefault(criterion.Id));

    /// <summary>How many of them are not as expected.</summary>
    public int Wrong(IEnumerable<Criterion> criteria) => criteria.Sum(criterion => _wrong.GetValueOrDefault(criterion.Id));

    /// <summary>Those that are not as expected, one line each.</summary>
    public static IEnumerable<string> Failures(BookOrder order) => order.Run.Failures
        .Where(failure => order.Rules.Find(failure.Expectation.Criterion) is not null).Select(failure => Words.Sentence(failure.ToString()));
}

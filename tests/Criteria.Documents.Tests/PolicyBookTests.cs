using System.Text;
using Criteria.Core.Rulesets;
using Criteria.Documents.PolicyBook;
using Criteria.Documents.Renderers;
using Criteria.Engine.BoundTests;

namespace Criteria.Documents.Tests;

/// <summary>The policy book of the shipped rules.</summary>
public sealed class PolicyBookTests
{
    private static readonly DateOnly Date = new(2026, 7, 1);
    private static readonly RulesetLibrary Library = ShippedRules.Loading.Library!;

    [Fact]
    public void Book_OfTheShippedRules_HasEveryCriterionAndItsSourcesAndNoOther()
    {
        var rules = Library.InForce(Date, "medicare", "pap");

        var book = Text(rules);

        foreach (var criterion in rules.Criteria)
        {
            book.ShouldContain($"\\[{criterion.Id}\\]".Replace("_", "\\_", StringComparison.Ordinal), Shouldly.Case.Sensitive, criterion.Id);
        }

        book.ShouldNotContain("### Coverage, criteria A to D and the appliance");
        rules.Criteria.SelectMany(criterion => criterion.Cites).Select(citation => citation.Section).Where(section => section.Length > 0).ShouldAllBe(section => book.Contains(Escaped(section)));
    }

    [Fact]
    public void Book_OfEveryPayer_HoldsWhatTheBookOfOneHolds()
    {
        Library.InForce(Date).Criteria.Select(criterion => criterion.Id)
            .Except(Library.InForce(Date, "medicare", "pap").Criteria.Select(criterion => criterion.Id)).ShouldNotBeEmpty();
        Library.InForce(Date, "medicare", "pap").Criteria.Select(criterion => criterion.Id).Except(Library.InForce(Date).Criteria.Select(criterion => criterion.Id)).ShouldBeEmpty();
    }

    [Fact]
    public void Digest_OfAnotherSelection_IsAnother()
    {
        var digests = new[] { Library.InForce(Date, "medicare", "pap"), Library.InForce(Date, "medicare", "oral appliance"), Library.InForce(Date, null, null), Library.InForce(Date) }
            .Select(rules => rules.Digest(Library.VocabularyDigest)).ToArray();

        digests.Distinct().Count().ShouldBe(digests.Length);
    }

    [Fact]
    public void Book_WrittenTwice_IsTheSame() => Text(Library.InForce(Date, null, null)).ShouldBe(Text(Library.InForce(Date, null, null)));

    private static string Escaped(string text) => Documents.Templating.MarkdownEncoder.Instance.Encode(text);

    private static string Text(RulesInForce rules) => Encoding.UTF8.GetString(
        DocumentFormats.Render(PolicyBookWriter.Write(new BookOrder(Library, rules, "in force", Date, [], BoundTestRun.Of(Library, []))), "markdown").Span);
}

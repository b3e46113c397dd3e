using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>An index is read only where its very type is declared: every pair of types of the shipped vocabulary.</summary>
public sealed class TypedIndexTests
{
    private static readonly FactDefinition[] IndexFacts = [.. Shipped.Vocabulary.Facts.Where(fact => fact.Index is not null)];

    private static readonly IndexType[] Types = [.. IndexFacts.Select(fact => fact.Index!).Distinct()];

    public static TheoryData<string> Used => [.. IndexFacts.Select(fact => fact.Id)];

    [Theory]
    [MemberData(nameof(Used))]
    public void Load_OfEveryDeclaredType_TakesTheEqualOneOnly(string used)
    {
        var fact = Shipped.Vocabulary.Find(used)!;
        foreach (var declared in Types)
        {
            var loading = Load($"{{ index: {declared.Index}, rule: {declared.Rule}, per: {declared.Per} }}", used);

            if (declared == fact.Index)
            {
                loading.Problems.ShouldSay();
            }
            else
            {
                loading.Library.ShouldBeNull();
                loading.Problems.ShouldSay(
                    $"r.yaml:5:11: error CR0111: `{used}` is another index than the criterion declares: {fact.Index}; declared: {declared}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Used))]
    public void Load_WithoutADeclaration_IsRefused(string used)
    {
        var type = Shipped.Vocabulary.Find(used)!.Index!;

        var loading = Load(null, used);

        loading.Problems.ShouldSay(
            $"r.yaml:4:11: error CR0110: `{used}` is an index and the criterion declares none; "
            + $"add `index: {{ index: {type.Index}, rule: {type.Rule}, per: {type.Per} }}`");
    }

    [Fact]
    public void Types_OfTheShippedVocabulary_AreEightIndicesAndWhatIsMadeOfThem()
    {
        Shipped.Vocabulary.Indices.Length.ShouldBe(8);
        Types.Length.ShouldBe(15);
    }

    private static LibraryLoading Load(string? index, string used)
    {
        var text = "criteria:\n  - id: c\n    title: C\n" + (index is null ? "" : $"    index: {index}\n") + $"    when: {used} >= 15 /h\n    cites: [s-1]\n";
        return RulesetLibrary.Load(
        [
            .. Rules.Files(text).Where(file => !file.Name.StartsWith("vocabulary/", StringComparison.Ordinal)),
            .. ShippedRules.Files().Where(file => file.Name.Contains("vocabulary/", StringComparison.Ordinal)),
        ]);
    }
}

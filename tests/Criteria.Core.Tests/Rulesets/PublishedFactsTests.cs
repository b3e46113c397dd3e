using Criteria.Core.Measures;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>Every published fact has a criterion, another use or a reason, and no output claims more of it than was seen.</summary>
public sealed class PublishedFactsTests
{
    // Rows that nothing rests on yet. The list only shrinks: a row that is taken up is taken out here.
    private static readonly string[] StillOpen =
    [
    ];

    // Criteria that cite a text from memory although no row of theirs is from memory: the row is that of a sister policy
    // which was read, or the reading is our own.
    private static readonly Dictionary<string, string> CitedWithMoreCaution = new(StringComparer.Ordinal)
    {
        ["severity.negative"] = "what the guideline means by negative was not seen; the row is our reading of it",
        ["oral.sleep-test"] = "the definitions of the appliance policy itself were not seen",
        ["oral.two-hours"] = "the definitions of the appliance policy itself were not seen",
        ["oral.device-cleared"] = "what the appliance policy itself says of sleep tests was not seen",
        ["oral.local-test-policy"] = "what the appliance policy itself says of sleep tests was not seen",
        ["oral.test-provider"] = "what the appliance policy itself says of sleep tests was not seen",
        ["oral.test-report"] = "what the appliance policy itself says of sleep tests was not seen",
    };

    private static readonly CoveredFact[] Rows = [.. FactCoverage.Of(Shipped.Library)];

    [Fact]
    public void Rows_WithoutCriterionUseOrReason_AreThoseStillOpen() =>
        Rows.Where(row => row.Usage == FactUsage.Open).Select(row => row.Fact.Id).Order(StringComparer.Ordinal).ShouldBe(StillOpen.Order(StringComparer.Ordinal));

    [Fact]
    public void Rows_SetAsideWithAReason_HaveNoCriterion() =>
        Rows.Where(row => row.Fact.NotACriterion is not null && !row.Criteria.IsEmpty).Select(row => row.Fact.Id).ShouldBeEmpty();

    // A chain of rows that point to each other would say nothing in the end.
    [Fact]
    public void Rows_ThatCarryOthers_AreNotCarriedThemselves() =>
        Rows.SelectMany(row => row.Fact.CarriedBy).Where(carrier => !Shipped.Library.PublishedFacts!.Find(carrier)!.CarriedBy.IsEmpty).ShouldBeEmpty();

    [Fact]
    public void Rows_UsedOtherwise_NameWhatIsThere()
    {
        var vocabulary = Shipped.Vocabulary;
        var names = vocabulary.Facts.Concat(vocabulary.Records.SelectMany(record => record.Attributes)).Select(fact => fact.Id)
            .Concat(vocabulary.CodeSets.Select(set => set.Id)).ToHashSet(StringComparer.Ordinal);
        var known = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal)
        {
            ["vocabulary"] = names,
            ["measure"] = [.. MeasureNames.All],
            ["setting"] = [.. Shipped.Library.Rulesets.SelectMany(ruleset => ruleset.Settings).Select(setting => setting.Name)],
            ["caution"] = [.. Shipped.Library.All.Criteria.Select(criterion => criterion.Id)],
            ["program"] = ProgramParts(),
            ["report"] = ProgramParts(),
        };

        foreach (var (fact, use) in Rows.SelectMany(row => row.Fact.UsedBy.Select(use => (row.Fact.Id, use))))
        {
            use.Names.Except(known[use.What]).ShouldBeEmpty(fact);
        }
    }

    // What a criterion takes from memory, every output of it has to say.
    [Fact]
    public void Criteria_RestingOnARowFromMemory_CiteFromMemory() => Shipped.Library.All.Criteria
        .Where(criterion => RestsOn(criterion).Any(fact => fact.Verified == FactBasis.Memory) && !CitesFromMemory(criterion))
        .Select(criterion => criterion.Id).ShouldBeEmpty();

    [Fact]
    public void Criteria_CitingFromMemory_RestOnARowFromMemory() => Shipped.Library.All.Criteria
        .Where(criterion => CitesFromMemory(criterion) && !RestsOn(criterion).Any(fact => fact.Verified == FactBasis.Memory || fact.InPart == FactBasis.Memory))
        .Select(criterion => criterion.Id).Order(StringComparer.Ordinal).ShouldBe(CitedWithMoreCaution.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Rows_SayInAFewWordsWhatTheyAre()
    {
        foreach (var fact in Rows.Select(row => row.Fact))
        {
            fact.Says.Length.ShouldBeInRange(2, 110, fact.Id);
            fact.Says.ShouldNotEndWith(".", customMessage: fact.Id);
            fact.NotACriterion?.ShouldNotContain("being written", customMessage: fact.Id);
        }
    }

    private static HashSet<string> ProgramParts() => [.. Repository.Files("src", "*.cs").Select(file => Path.GetFileNameWithoutExtension(file))];

    private static IEnumerable<PublishedFact> RestsOn(Criterion criterion) => criterion.RestsOn.Select(row => Shipped.Library.PublishedFacts!.Find(row)!);

    private static bool CitesFromMemory(Criterion criterion) => criterion.Cites.Any(citation => citation.Verified == Verification.Memory);
}

using System.Text.RegularExpressions;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Facts;

/// <summary>Every problem of a vocabulary, set off by an example that has it.</summary>
public sealed partial class VocabularyDiagnosticsTests
{
    private const string Page = "tests/Criteria.Core.Tests/Facts/VocabularyDiagnosticsTests.golden.txt";

    public static TheoryData<string> Titles => Examples.Titles(Page);

    [Theory]
    [MemberData(nameof(Titles))]
    public void Read_OfTheExample_SaysExactlyThis(string title) => Examples.ShouldHold(Page, title, text =>
    {
        var (vocabulary, problems) = Read(Texts.File("v.yaml", text));

        (vocabulary is null).ShouldBe(problems.Any(problem => problem.Severity == Severity.Error));
        return problems.Select(problem => problem.ToString()).DefaultIfEmpty("no problem");
    });

    [Fact]
    public void Codes_OfTheCatalogue_HaveAnExampleEach()
    {
        var catalogue = Code().Matches(Repository.Text("src/Criteria.Core/Facts/VocabularyDiagnostics.cs")).Select(match => match.Value);

        var examples = Examples.Of(Page).SelectMany(example => Code().Matches(example.Said)).Select(match => match.Value);

        examples.Distinct().Order().ShouldBe(catalogue.Distinct().Order());
    }

    [Fact]
    public void Read_OfSeveralFiles_IsTheSameInAnyOrder()
    {
        var files = ShippedRules.Files().Where(file => file.Name.Contains("vocabulary/", StringComparison.Ordinal)).ToArray();

        var (forwards, backwards) = (Read(files).Vocabulary!, Read([.. files.Reverse()]).Vocabulary!);

        backwards.Facts.Select(fact => fact.Id).ShouldBe(forwards.Facts.Select(fact => fact.Id));
        forwards.Facts.Select(fact => fact.Slot).ShouldBe(Enumerable.Range(0, forwards.Facts.Length));
    }

    [Fact]
    public void Read_OfComputedFacts_PutsThemAfterWhatTheyAreComputedFrom()
    {
        foreach (var vocabulary in new[] { Tiny.Vocabulary, Shipped.Vocabulary })
        {
            foreach (var fact in vocabulary.Facts.Where(fact => fact.Computed is not null))
            {
                fact.Computed!.From.Select(vocabulary.Find).OfType<FactDefinition>().ShouldAllBe(input => input.Slot < fact.Slot, fact.Id);
            }
        }
    }

    [Fact]
    public void Read_OfTheShippedVocabulary_SaysForEveryFactWhomToAskAndWhat()
    {
        foreach (var fact in Shipped.Vocabulary.Facts)
        {
            fact.Label.ShouldNotBeEmpty(fact.Id);
            fact.Meaning.ShouldNotBeEmpty(fact.Id);
            fact.Owner.ShouldNotBeEmpty(fact.Id);
            fact.Ask.ShouldNotBeEmpty(fact.Id);
        }
    }

    [Theory]
    [InlineData("kind: text", IdentifierClasses.FreeText)]
    [InlineData("kind: text, identifies: name", "name")]
    [InlineData("kind: date", IdentifierClasses.Day)]
    [InlineData("kind: date, identifies: birth date", IdentifierClasses.BirthDate)]
    [InlineData("kind: choice, choices: [a, b]", null)]
    [InlineData("kind: choice, choices: [a, b], identifies: place", "place")]
    public void Identifies_WithoutADeclaration_FollowsTheKind(string keys, string? expected) =>
        Read(Texts.File("v.yaml", $"facts:\n  - {{ id: a, at: intake.a, label: A, {keys}, meaning: M., owner: clinician, ask: A? }}\n")).Vocabulary!.Find("a")!.Identifies.ShouldBe(expected);

    [Fact]
    public void Find_AndAt_AreTheSameFactByNameAndByPlace()
    {
        foreach (var fact in Shipped.Vocabulary.Facts)
        {
            Shipped.Vocabulary.Find(fact.Id).ShouldBeSameAs(fact);
            if (fact.At is { } place)
            {
                Shipped.Vocabulary.At(place).ShouldBeSameAs(fact);
            }
        }

        Shipped.Vocabulary.Find("no such fact").ShouldBeNull();
        Shipped.Vocabulary.At("intake").ShouldBeNull();
    }

    private static (Vocabulary? Vocabulary, IReadOnlyList<Diagnostic> Problems) Read(params SourceFile[] files)
    {
        var bag = new DiagnosticBag();
        return (Vocabulary.Read(files, bag), bag.Ordered());
    }

    [GeneratedRegex("CV[0-9]{4}")]
    private static partial Regex Code();
}

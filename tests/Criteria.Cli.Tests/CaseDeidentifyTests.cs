using System.Text;
using System.Text.RegularExpressions;
using Criteria.Cli.Tests.Support;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Tests;

/// <summary>An identifier stands in every place of the vocabulary that can hold one; none comes out.</summary>
public sealed partial class CaseDeidentifyTests
{
    private static readonly Vocabulary Vocabulary = ShippedRules.Loading.Library!.Vocabulary;

    [Fact]
    public void Plants_StandInEveryTextDateAndCodeOfTheVocabulary()
    {
        var planted = new PlantedCase(Vocabulary);

        var text = planted.Text();

        var all = Vocabulary.Facts.Concat(Vocabulary.Records.SelectMany(list => list.Attributes)).Where(fact => fact.At is not null).ToArray();
        all.Except(planted.Facts).ShouldBeEmpty();
        planted.Days.ShouldAllBe(day => text.Contains(day.ToIso(), StringComparison.Ordinal));
        text.ShouldContain(PlantedCase.BirthYear);
        text.ShouldContain(PlantedCase.Code);
        Regex.Count(text, PlantedCase.Plant).ShouldBeGreaterThan(all.Length / 2);
    }

    [Theory]
    [InlineData("deidentify")]
    [InlineData("new")]
    public void File_ThatIsThere_IsOverwrittenByForceOnly(string command)
    {
        using var folder = new TemporaryFolder();
        var old = folder.Write("shared.yaml", "mine");
        string[] line = command == "new" ? ["case", "new", "--out", old] : ["case", "deidentify", Command.Example("oral-appliance-mild"), "--out", old];

        var refused = Command.Run(line);

        refused.Code.ShouldBe(ExitCode.Usage);
        refused.Error.ShouldBe($"{old}: is there already; --force overwrites it\n");
        File.ReadAllText(old).ShouldBe("mine");
        Command.Run([.. line, "--force"]).Code.ShouldBe(ExitCode.Done);
        File.ReadAllText(old).ShouldContain("\ncase: ");
    }

    [Fact]
    public void File_OfTheCaseItself_IsNotOverwrittenEvenByForce()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Command.Example("oral-appliance-mild"));
        var own = folder.Write("case.yaml", text);

        var refused = Command.Run("case", "deidentify", own, "--out", own, "--force");

        refused.Code.ShouldBe(ExitCode.Usage);
        refused.Error.ShouldBe($"{own}: is the case itself, and the de-identified case would overwrite it\n");
        File.ReadAllText(own).ShouldBe(text);
    }

    [Theory]
    [InlineData("yaml")]
    [InlineData("json")]
    public void File_FullOfIdentifiers_ComesOutWithoutThem(string form)
    {
        var text = new PlantedCase(Vocabulary).Text();

        var result = Command.RunWith(form == "json" ? YamlAsJson.Of(text) : text, interactive: false, "case", "deidentify", "-");

        result.Code.ShouldBe(ExitCode.Done, result.Error);
        result.Out.ShouldNotContain(PlantedCase.Plant);
        result.Out.ShouldNotContain(PlantedCase.Code);
        result.Out.ShouldNotContain(PlantedCase.BirthYear);
        result.Out.ShouldNotContain("555");
        result.Out.ShouldNotContain("120 years");
        result.Out.ShouldContain("age: { value: 90 years, from: a document }   # or more");
        Day().Matches(result.Out).Select(match => match.Value).Distinct().ShouldBe(["2024-01-01"]);
    }

    [Theory]
    [MemberData(nameof(ExampleTests.Names), MemberType = typeof(ExampleTests))]
    public void File_OfAnExample_CanBeCheckedAndAssessed(string example)
    {
        using var folder = new TemporaryFolder();
        var shared = Path.Combine(folder.Path, "shared.yaml");

        Command.Run("case", "deidentify", Command.Example(example), "--key", "study-x", "--out", shared).Code.ShouldBe(ExitCode.Done);

        Command.Run("case", "check", shared).Code.ShouldBe(ExitCode.Done);
        Command.Run("assess", shared).Out.ShouldStartWith("CASE study-x ");
        Day().Count(File.ReadAllText(shared)).ShouldBe(1);
    }

    // Taking out can only open a finding: what turned round would rest on a gap.
    [Theory]
    [MemberData(nameof(ExampleTests.Names), MemberType = typeof(ExampleTests))]
    public void Findings_ThatDiffer_AreNamedAndAreOpenNow(string example)
    {
        using var folder = new TemporaryFolder();
        var shared = Path.Combine(folder.Path, "shared.yaml");

        var lines = Command.Run("case", "deidentify", Command.Example(example), "--out", shared).Error.Split('\n').Where(line => line.StartsWith("  ", StringComparison.Ordinal)).ToArray();

        lines.ShouldAllBe(line => line.Contains("; now undetermined  [", StringComparison.Ordinal));
        lines.Select(line => line[(line.LastIndexOf('[') + 1)..^1]).ShouldBe(Standings(Command.Example(example)).Zip(Standings(shared)).Where(pair => pair.First != pair.Second).Select(pair => pair.First.Id));
    }

    private static (string Id, string Standing, string? Value)[] Standings(string file) =>
    [
        .. AssessedJson.Of(file)["findings"]!.AsArray().Select(finding => ((string)finding!["id"]!, (string)finding["standing"]!, finding["value"]?.ToJsonString())),
    ];

    [Theory]
    [InlineData("HT-0416")]
    [InlineData("ht0416")]
    [InlineData("x-0416")]
    [InlineData("new-HT-0416-b")]
    [InlineData("Pat Example")]
    [InlineData("")]
    public void Key_ThatHoldsTheOldOneOrASpace_IsRefused(string key)
    {
        var result = Command.Run("case", "deidentify", Command.Example("oral-appliance-mild"), "--key", key);

        result.Code.ShouldBe(ExitCode.Usage);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldStartWith("--key: ");
    }

    [Fact]
    public void File_ThatIsThere_IsNotOverwritten()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "shared.yaml");
        File.WriteAllText(path, "mine");

        Command.Run("case", "deidentify", Command.Example("oral-appliance-mild"), "--out", path).Code.ShouldBe(ExitCode.Usage);

        File.ReadAllText(path).ShouldBe("mine");
    }

    [Fact]
    public void Fact_OfAnOwnVocabulary_IsTakenOutUnlessItIdentifiesNobody()
    {
        using var folder = new TemporaryFolder();
        foreach (var file in ShippedRules.Files())
        {
            folder.Write(file.Name["rulesets/".Length..], Encoding.UTF8.GetString(file.Content.Span));
        }

        folder.Write("vocabulary/own.yaml", """
            facts:
              - { id: own.words, at: own.words, label: Words, kind: text, meaning: Own words., owner: clinician, ask: Which words? }
              - { id: own.town, at: own.town, label: Town, kind: choice, choices: [smalltown, bigtown], identifies: place, meaning: The town., owner: clinician, ask: Which town? }
              - { id: own.day, at: own.day, label: Day, kind: date, meaning: The day., owner: clinician, ask: Which day? }
              - { id: own.mood, at: own.mood, label: Mood, kind: choice, choices: [good, bad], meaning: The mood., owner: clinician, ask: Which mood? }
            """);
        const string text = "case: K-1\nassessed_on: 2026-06-18\nown: { words: said by Pat, town: smalltown, day: 2026-03-04, mood: bad }\n";

        var result = Command.RunWith(text, interactive: false, "case", "deidentify", "-", "--rulesets", folder.Path);

        result.Code.ShouldBe(ExitCode.Done, result.Error);
        result.Out.ShouldEndWith("own:\n  town: unknown\n  day: unknown   # in 2026\n  mood: bad\n");
    }

    [GeneratedRegex(@"\b\d{4}-\d{2}-\d{2}\b")]
    private static partial Regex Day();
}

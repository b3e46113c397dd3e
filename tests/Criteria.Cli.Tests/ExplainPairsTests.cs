using System.Text.Json.Nodes;
using Criteria.Cli.Tests.Support;
using Json.Schema;

namespace Criteria.Cli.Tests;

/// <summary><c>explain --pairs</c> names two changes that turn a finding together, in text and for other programs.</summary>
public sealed class ExplainPairsTests
{
    private const string Heading = "WHAT TWO CHANGES TOGETHER WOULD CHANGE";

    [Fact]
    public void Pairs_OfAFindingWithOne_AreSaidInWords()
    {
        var text = Command.Run("explain", Command.Example("mild-with-hypertension"), "osa.icsd-3-tr", "--pairs").Out;

        text.ShouldContain(Heading);
        text.ShouldContain("  Not met\n    * Habitual loud snoring: no instead of yes, and Fatigue: no instead of yes.\n");
    }

    [Fact]
    public void Pairs_OfAFindingWithoutOne_AreSaidToBeNone() =>
        Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4", "--pairs").Out.ShouldContain("  There are none.\n");

    [Fact]
    public void Pairs_NotAskedFor_AreNotLookedFor()
    {
        Command.Run("explain", Command.Example("mild-with-hypertension"), "osa.icsd-3-tr").Out.ShouldNotContain(Heading);
        Command.Run("explain", Command.Example("mild-with-hypertension"), "osa.icsd-3-tr", "--format", "json").Out.ShouldNotContain("would_change_together");
    }

    [Fact]
    public void Pairs_OfAScoreThatAgeDecides_NameWhatNobodyCanChangeLast()
    {
        var text = Command.Run("explain", Command.Example("pap-continued"), "goal", "--pairs").Out.ReplaceLineEndings(" ");

        text.IndexOf("Weight: 79.2 kg instead of 82.1 kg", StringComparison.Ordinal).ShouldBeInRange(0, text.IndexOf("which nobody can", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("mild-with-hypertension", "osa.icsd-3-tr")]
    [InlineData("pap-continued", "goal")]
    [InlineData("clear-severe", "severity.rei-4")]
    public void Pairs_AsJson_FitTheSchemaOfAFinding(string example, string finding)
    {
        var schema = JsonNode.Parse(File.ReadAllText(Repository.Path("docs", "schemas", "assessment.schema.json")))!.AsObject();
        var explained = new JsonObject { ["$ref"] = "#/$defs/finding", ["$defs"] = schema["$defs"]!.DeepClone() };
        var found = JsonNode.Parse(Command.Run("explain", Command.Example(example), finding, "--pairs", "--format", "json").Out)!.AsArray().ShouldHaveSingleItem()!;

        found["would_change_together"].ShouldNotBeNull();
        JsonSchema.FromText(explained.ToJsonString()).Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(found)).IsValid.ShouldBeTrue(found.ToJsonString());
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Criteria.Cli.Tests.Support;
using Json.Schema;

namespace Criteria.Cli.Tests;

public sealed class SchemaTests
{
    public static TheoryData<string> Examples() => [.. Repository.Examples()];

    public static TheoryData<string> Rulesets() =>
        [.. Directory.EnumerateFiles(Repository.Path("rulesets"), "*.yaml", SearchOption.AllDirectories)
            .Where(file => !file.Contains("vocabulary", StringComparison.Ordinal) && !file.EndsWith("sources.yaml", StringComparison.Ordinal)
                && !file.EndsWith("published-facts.yaml", StringComparison.Ordinal)
                && !file.EndsWith(".tests.yaml", StringComparison.Ordinal) && !file.Contains("cases", StringComparison.Ordinal))
            .Select(file => Path.GetRelativePath(Repository.Root, file)).Order(StringComparer.Ordinal)];

    [Fact]
    public void CaseSchema_CheckedIn_IsWhatTheVocabularyGives() =>
        Repository.ShouldBeApproved(Command.Run("case", "schema").Out, "docs", "schemas", "case.schema.json");

    [Theory]
    [MemberData(nameof(Examples))]
    public void CaseSchema_Example_Fits(string name) => ShouldFit("case", YamlAsJson.Read(Command.Example(name)));

    [Theory]
    [InlineData("patient: { age: 52 years, sexe: male }")]
    [InlineData("patient: { sex: other }")]
    [InlineData("intake: { neck: 43 }")]
    [InlineData("nights: [{ indices: [{ hypopnea: 4 % }] }]")]
    [InlineData("documents: [{ kind: clinical evaluation }]")]
    public void CaseSchema_WrongCase_DoesNotFit(string line)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("case.yaml", $"case: A-1\n{line}\n");

        Schema("case").Evaluate(Element(YamlAsJson.Read(path))).IsValid.ShouldBeFalse();
    }

    [Theory]
    [MemberData(nameof(Rulesets))]
    public void RulesetSchema_ShippedRuleset_Fits(string file) => ShouldFit("ruleset", YamlAsJson.Read(Repository.Path(file)));

    [Fact]
    public void RulesetSchema_CriterionWithoutCitation_DoesNotFit()
    {
        var ruleset = YamlAsJson.Read(Repository.Path("rulesets", "clinical", "scope.yaml"))!;
        ruleset["criteria"]![0]!.AsObject().Remove("cites");

        Schema("ruleset").Evaluate(Element(ruleset)).IsValid.ShouldBeFalse();
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void AssessmentSchema_Example_Fits(string name) => ShouldFit("assessment", AssessedJson.Of(Command.Example(name)));

    [Fact]
    public void AssessmentSchema_UnreadableCase_Fits() => ShouldFit("assessment", AssessedJson.Of("no-such-file.yaml"));

    private static void ShouldFit(string schema, JsonNode? node)
    {
        var result = Schema(schema).Evaluate(Element(node), new EvaluationOptions { OutputFormat = OutputFormat.List });

        result.IsValid.ShouldBeTrue(string.Join('\n', (result.Details ?? []).Where(detail => detail.Errors is { Count: > 0 })
            .Select(detail => $"{detail.InstanceLocation}: {string.Join(", ", detail.Errors!.Values)}")));
    }

    private static JsonElement Element(JsonNode? node) => JsonSerializer.SerializeToElement(node);

    private static JsonSchema Schema(string name) => JsonSchema.FromText(File.ReadAllText(Repository.Path("docs", "schemas", $"{name}.schema.json")));
}

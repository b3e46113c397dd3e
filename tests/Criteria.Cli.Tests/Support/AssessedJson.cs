using System.Text.Json.Nodes;

namespace Criteria.Cli.Tests.Support;

/// <summary>Assessments as JSON.</summary>
internal static class AssessedJson
{
    public static JsonObject Of(params string[] args) => JsonNode.Parse(Command.Run(["assess", .. args, "--format", "json"]).Out)!.AsObject();

    public static JsonObject Finding(this JsonObject assessment, string id) =>
        assessment["findings"]!.AsArray().Select(finding => finding!.AsObject()).First(finding => finding["id"]!.GetValue<string>() == id);

    public static string Standing(this JsonObject assessment, string id) => assessment.Finding(id)["standing"]!.GetValue<string>();
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>Text of a case that tries to be more than text: reports and JSON hold it on its line, as text.</summary>
public sealed class InjectionTests
{
    public static TheoryData<string> Corpus =>
    [
        "<script>alert(1)</script>", "\",\"standing\":\"met", "\\u0022}", "=cmd|' /C calc'!A0", "+1", "-1", "@SUM(1)", "a\nb", "a\r\n{\"case\":1}", "\u001B[31mred", "a\u0000b",
        "\u202Etxt.exe\u202C", "a\u200Bb", "a\u2028b\u2029c", "a\u0085b", "\uFEFFa", "a\U000E0041b", "{0} %s ${x} {{x}}", "'; DROP TABLE x; --", new('W', 3000),
    ];

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Ndjson_OfSuchACase_IsOneLineOfValidJson(string text)
    {
        var result = Command.RunWith(CaseWith(text), interactive: false, "assess", "-", "--format", "ndjson");

        result.Code.ShouldBe(ExitCode.Done, result.Error);
        result.Out.Count(letter => letter == '\n').ShouldBe(1);
        result.Out.TrimEnd('\n').ShouldAllBe(letter => !Hidden(letter));
        var assessment = JsonNode.Parse(result.Out)!;
        Texts(assessment).SelectMany(one => one).ShouldAllBe(letter => !Hidden(letter));
        Standings(assessment).ShouldBe(Standings(JsonNode.Parse(Command.RunWith(CaseWith("plain"), interactive: false, "assess", "-", "--format", "ndjson").Out)!));
    }

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Report_OfSuchACase_HasNoHiddenSign(string text)
    {
        foreach (var result in new[] { Command.RunWith(CaseWith(text), interactive: false, "assess", "-"), Command.RunWith(CaseWith(text), interactive: false, "explain", "-", "severity.rei-4") })
        {
            result.Code.ShouldBe(ExitCode.Done, result.Error);
            (result.Out + result.Error).ShouldAllBe(letter => letter == '\n' || !Hidden(letter));
        }
    }

    // Wherever a text may stand that a report shows: key, origin, reviewer, name of a document, an identity.
    private static string CaseWith(string text)
    {
        var subject = YamlAsJson.Read(Repository.Path("examples", "clear-severe", "case.yaml"))!.AsObject();
        subject["case"] = text;
        subject["intake"]!["neck"] = new JsonObject { ["value"] = "43 cm", ["from"] = text };
        subject["intake"]!["weight"] = new JsonObject { ["value"] = "104 kg", ["from"] = text };
        subject["identity"] = new JsonObject { ["patient_name"] = text };
        var documents = subject["documents"]!.AsArray();
        documents.Add(new JsonObject { ["id"] = $"x {text}", ["kind"] = "order", ["date"] = "2026-06-01" });
        documents.Where(entry => entry!["others"] is not null).ToList().ForEach(entry => entry!["reviewed_by"] = text);
        return subject.ToJsonString();
    }

    private static bool Hidden(char letter) => char.IsControl(letter) || char.GetUnicodeCategory(letter)
        is System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.LineSeparator or System.Globalization.UnicodeCategory.ParagraphSeparator;

    private static IEnumerable<string> Texts(JsonNode? node) => node switch
    {
        JsonObject map => map.SelectMany(pair => Texts(pair.Value)),
        JsonArray list => list.SelectMany(Texts),
        JsonValue value when value.GetValueKind() == JsonValueKind.String => [value.GetValue<string>()],
        _ => [],
    };

    private static string[] Standings(JsonNode assessment) => [.. assessment["findings"]!.AsArray().Select(finding => $"{finding!["id"]} {finding["standing"]}")];
}

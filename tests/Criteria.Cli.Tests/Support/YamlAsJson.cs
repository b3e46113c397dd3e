using System.Globalization;
using System.Text.Json.Nodes;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Criteria.Cli.Tests.Support;

/// <summary>YAML files as JSON values, as an editor's schema check sees them.</summary>
internal static class YamlAsJson
{
    public static JsonNode? Read(string path)
    {
        using var reader = new StreamReader(path);
        return Read(reader);
    }

    /// <summary>The same text as JSON.</summary>
    public static string Of(string yaml)
    {
        using var reader = new StringReader(yaml);
        return Read(reader)!.ToJsonString();
    }

    private static JsonNode? Read(TextReader reader)
    {
        var stream = new YamlStream();
        stream.Load(reader);
        return Convert(stream.Documents[0].RootNode);
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Convert(pair.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Convert)]),
        YamlScalarNode { Style: ScalarStyle.Plain } plain => Plain(plain.Value!),
        YamlScalarNode text => JsonValue.Create(text.Value),
        _ => null,
    };

    private static JsonNode? Plain(string text) => text switch
    {
        "true" => JsonValue.Create(true),
        "false" => JsonValue.Create(false),
        _ when decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        _ => JsonValue.Create(text),
    };
}

using System.Text.Json.Nodes;
using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>The JSON Schema (draft 2020-12) of case files in the words of a vocabulary, for editors that complete and check.</summary>
/// <remarks>It checks names and forms. What needs reading, such as units, ranges and dates, is checked by <see cref="CaseReader"/>.</remarks>
public static class CaseSchema
{
    private const string YesNoDefinition = "yes_no";
    private const string DateDefinition = "date";
    private const string DatePattern = "^\\d{4}-\\d{2}-\\d{2}$";

    /// <summary>The schema.</summary>
    public static JsonObject Of(Vocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        var properties = new JsonObject
        {
            ["case"] = Described(new JsonObject { ["type"] = new JsonArray("string", "integer") }, "A case key that names nobody."),
            ["assessed_on"] = Described(new JsonObject { ["type"] = "string", ["pattern"] = DatePattern }, "The date the assessment is made for."),
        };
        AddSections(properties, vocabulary, "", [.. vocabulary.Facts.Where(fact => fact is { At: not null, Scope: FactScope.Case })]);
        properties[Vocabulary.NightPlace] = Nights(vocabulary);
        foreach (var record in vocabulary.Records)
        {
            properties[record.At] = Records(record);
        }

        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "A case for Criteria",
            ["type"] = "object",
            ["required"] = new JsonArray("case"),
            ["additionalProperties"] = false,
            ["properties"] = properties,
            ["$defs"] = new JsonObject { [YesNoDefinition] = WithOrigin(YesNo()), [DateDefinition] = WithOrigin(Date()) },
        };
    }

    private static JsonObject Nights(Vocabulary vocabulary)
    {
        var properties = new JsonObject();
        AddSections(properties, vocabulary, Vocabulary.NightPlace, [.. vocabulary.Facts.Where(fact => fact is { At: not null, Scope: FactScope.Night })]);
        properties[IndexReader.Key] = Indices(vocabulary);
        return new JsonObject { ["type"] = "array", ["items"] = Closed(properties) };
    }

    private static JsonObject Indices(Vocabulary vocabulary)
    {
        var first = vocabulary.Indices.FirstOrDefault();
        var properties = new JsonObject
        {
            ["index"] = new JsonObject { ["enum"] = Words(vocabulary.Indices.Select(index => index.Type.Index).Distinct(StringComparer.Ordinal)) },
            ["hypopnea"] = Described(new JsonObject { ["type"] = "string" }, "The hypopnea rule; required for every index but the ODI."),
            ["desaturation"] = Described(new JsonObject { ["type"] = "string" }, "The desaturation of an ODI."),
        };
        if (first is not null)
        {
            properties["per_hour"] = Value(first.Printed, bareNumber: true);
            properties["events"] = Value(first.Events);
            properties["over"] = Value(first.Time);
        }

        var item = Closed(properties);
        item["required"] = new JsonArray("index");
        return new JsonObject { ["type"] = "array", ["items"] = item };
    }

    private static JsonObject Records(RecordDefinition record)
    {
        var properties = new JsonObject
        {
            ["id"] = Described(new JsonObject { ["type"] = new JsonArray("string", "integer") }, "A short name of your choice."),
            ["kind"] = new JsonObject { ["enum"] = Words(record.Kinds) },
        };
        foreach (var attribute in record.Attributes)
        {
            properties[attribute.At![(record.At.Length + 1)..]] = Value(attribute);
        }

        var item = Closed(properties);
        item["required"] = new JsonArray("id", "kind");
        return new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["anyOf"] = new JsonArray(item, Closing()) } };
    }

    private static JsonObject Closing()
    {
        var closing = Closed(ClosingProperties());
        closing["required"] = new JsonArray("others", "reviewed_by");
        return closing;
    }

    private static JsonObject ClosingProperties() => new()
    {
        ["others"] = Described(new JsonObject { ["enum"] = new JsonArray("no", false) }, "Closes the list: everything left out is a no."),
        ["reviewed_by"] = Described(new JsonObject { ["type"] = "string" }, "Who went through the list, and when."),
    };

    private static void AddSections(JsonObject properties, Vocabulary vocabulary, string place, FactDefinition[] facts)
    {
        var start = place.Length == 0 ? 0 : place.Length + 1;
        foreach (var group in facts.GroupBy(fact => fact.At![start..].Split('.')[0]))
        {
            var inner = place.Length == 0 ? group.Key : $"{place}.{group.Key}";
            if (group.First().At == inner)
            {
                properties[group.Key] = Value(group.First());
                continue;
            }

            properties[group.Key] = Section(vocabulary, inner, [.. group]);
        }
    }

    private static JsonObject Section(Vocabulary vocabulary, string place, FactDefinition[] facts)
    {
        var properties = new JsonObject();
        AddSections(properties, vocabulary, place, facts);
        if (vocabulary.Groups.FirstOrDefault(group => group.At == place) is not { } closable)
        {
            return Closed(properties);
        }

        foreach (var (key, value) in ClosingProperties().ToArray())
        {
            properties[key] = value?.DeepClone();
        }

        if (!closable.ListIsComplete)
        {
            return Closed(properties);
        }

        var words = facts.Select(fact => fact.At![(place.Length + 1)..]);
        var list = new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["enum"] = Words(words) } };
        return new JsonObject { ["anyOf"] = new JsonArray(Closed(properties), list) };
    }

    private static JsonObject Closed(JsonObject properties) => new()
    {
        ["type"] = "object",
        ["additionalProperties"] = false,
        ["properties"] = properties,
    };

    private static JsonObject Value(FactDefinition fact, bool bareNumber = false)
    {
        var definition = fact switch
        {
            { AlsoYesNo: true } => null,
            { Kind: FactKind.YesNo } => YesNoDefinition,
            { Kind: FactKind.Date } => DateDefinition,
            _ => null,
        };
        var schema = definition is not null ? new JsonObject { ["$ref"] = $"#/$defs/{definition}" }
            : fact.AlsoYesNo ? WithOrigin(Form(fact, bareNumber), YesNo())
            : WithOrigin(Form(fact, bareNumber));
        return Described(schema, $"{fact.Label}. {fact.Meaning}");
    }

    // A value may stand alone, or in a map with where it came from.
    private static JsonObject WithOrigin(params JsonObject[] forms)
    {
        var states = new JsonObject { ["enum"] = new JsonArray(ValueReader.UnknownWord, ValueReader.NotApplicableWord) };
        JsonArray alone = [states, .. forms];
        var withOrigin = Closed(new JsonObject
        {
            ["value"] = new JsonObject { ["anyOf"] = alone.DeepClone() },
            ["from"] = new JsonObject { ["type"] = "string" },
        });
        withOrigin["required"] = new JsonArray("value");
        alone.Add(withOrigin);
        return new JsonObject { ["anyOf"] = alone };
    }

    private static JsonObject Form(FactDefinition fact, bool bareNumber) => fact.Kind switch
    {
        FactKind.YesNo => YesNo(),
        FactKind.Choice => new JsonObject { ["enum"] = Words(fact.Choices) },
        FactKind.Date => Date(),
        FactKind.Count => new JsonObject { ["type"] = new JsonArray("integer", "string"), ["minimum"] = 0, ["pattern"] = "^\\d+$" },
        FactKind.Number or FactKind.Duration when bareNumber || fact.Unit.Dimension == Dimension.None =>
            new JsonObject { ["type"] = new JsonArray("number", "string"), ["minimum"] = 0, ["pattern"] = "^\\d" },
        FactKind.Number or FactKind.Duration => new JsonObject { ["type"] = "string", ["pattern"] = "^\\d" },
        FactKind.Code => new JsonObject { ["type"] = "string", ["pattern"] = "^[A-Z0-9][A-Z0-9.-]*$" },
        FactKind.Durations => new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } },
        _ => new JsonObject { ["type"] = new JsonArray("string", "number") },
    };

    private static JsonObject Date() => new() { ["type"] = "string", ["pattern"] = DatePattern };

    private static JsonObject YesNo() => new() { ["enum"] = new JsonArray("yes", "no", true, false) };

    private static JsonArray Words(IEnumerable<string> words) => [.. words.Select(word => JsonValue.Create(word))];

    private static JsonObject Described(JsonObject schema, string description)
    {
        schema["description"] = description;
        return schema;
    }
}

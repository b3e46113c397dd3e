using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Criteria.Benchmarks.Peers;

/// <summary>The workload for the peers that read JSON, and the cases for them.</summary>
internal static class JsonTexts
{
    /// <summary>The cases: an object for each, null for what is unknown.</summary>
    public static string Cases(MadeUpCase[] cases) => JsonSerializer.Serialize(cases.Select(subject => subject.Facts));

    /// <summary>RulesEngine: one workflow of lambda expressions over a typed object. A finding is put in as its own expression.</summary>
    public static string RulesEngine(bool complete)
    {
        Expressions? expressions = null;
        expressions = new Expressions(" && ", " || ", Leaf, (need, parts) => string.Create(CultureInfo.InvariantCulture, $"(({string.Join(" + ", parts.Select(part => $"({part} ? 1 : 0)"))}) >= {need})"));
        var rules = Named(complete).Select(rule => new JsonObject
        {
            ["RuleName"] = rule.Name,
            ["RuleExpressionType"] = "LambdaExpression",
            ["Expression"] = expressions.Of(rule.Condition),
        });
        return new JsonArray(new JsonObject { ["WorkflowName"] = "workload", ["Rules"] = new JsonArray([.. rules]) }).ToJsonString();

        string Leaf(TwoValued leaf) => leaf switch
        {
            TwoValued.Number number => OrUnknown(number.Fact, number.OrUnknown, $"x.{number.Fact} {number.Sign} {Expressions.Text(number.Bound)}"),
            TwoValued.Answer answer => OrUnknown(answer.Fact, answer.OrUnknown, $"x.{answer.Fact} == {(answer.Yes ? "true" : "false")}"),
            TwoValued.Word { Negated: false } word => OrUnknown(word.Fact, word.OrUnknown, string.Join(" || ", word.Words.Select(each => $"x.{word.Fact} == \"{each}\""))),
            TwoValued.Word word => OrUnknown(word.Fact, word.OrUnknown, string.Join(" && ", word.Words.Select(each => $"x.{word.Fact} != \"{each}\""))),
            TwoValued.Finding finding => (finding.Negated ? "!" : "") + "(" + expressions!.Of(TwoValued.Of(Workload.Criteria[finding.Criterion], complete ? Way.Complete : finding.Possible ? Way.Possible : Way.Certain)) + ")",
            _ => throw new ArgumentOutOfRangeException(nameof(leaf)),
        };

        string OrUnknown(string fact, bool orUnknown, string test) =>
            complete ? $"({test})" : orUnknown ? $"(x.{fact} == null || ({test}))" : $"(x.{fact} != null && ({test}))";
    }

    /// <summary>zen-engine: one expression node; a finding is read from the results above it.</summary>
    public static string Zen(bool complete)
    {
        var expressions = new Expressions(" and ", " or ", Leaf, (need, parts) => string.Create(CultureInfo.InvariantCulture, $"(count([{string.Join(", ", parts)}], # == true) >= {need})"));
        var list = Named(complete).Select(rule => new JsonObject { ["id"] = rule.Name, ["key"] = rule.Name, ["value"] = expressions.Of(rule.Condition) });
        return new JsonObject
        {
            ["nodes"] = new JsonArray(
                new JsonObject { ["id"] = "in", ["name"] = "in", ["type"] = "inputNode" },
                new JsonObject { ["id"] = "rules", ["name"] = "rules", ["type"] = "expressionNode", ["content"] = new JsonObject { ["expressions"] = new JsonArray([.. list]) } },
                new JsonObject { ["id"] = "out", ["name"] = "out", ["type"] = "outputNode" }),
            ["edges"] = new JsonArray(
                new JsonObject { ["id"] = "a", ["sourceId"] = "in", ["targetId"] = "rules", ["type"] = "edge" },
                new JsonObject { ["id"] = "b", ["sourceId"] = "rules", ["targetId"] = "out", ["type"] = "edge" }),
        }.ToJsonString();

        string Leaf(TwoValued leaf) => leaf switch
        {
            TwoValued.Number number => OrUnknown(number.Fact, number.OrUnknown, $"{number.Fact} {number.Sign} {Expressions.Text(number.Bound)}"),
            TwoValued.Answer answer => OrUnknown(answer.Fact, answer.OrUnknown, $"{answer.Fact} == {(answer.Yes ? "true" : "false")}"),
            TwoValued.Word word => OrUnknown(word.Fact, word.OrUnknown, $"{word.Fact} {(word.Negated ? "not in" : "in")} [{string.Join(", ", word.Words.Select(each => $"\"{each}\""))}]"),
            TwoValued.Finding finding => $"{(finding.Negated ? "not " : "")}$.{Name(finding.Criterion, finding.Possible)}",
            _ => throw new ArgumentOutOfRangeException(nameof(leaf)),
        };

        string OrUnknown(string fact, bool orUnknown, string test) =>
            complete ? $"({test})" : orUnknown ? $"({fact} == null or {test})" : $"({fact} != null and {test})";
    }

    /// <summary>json-rules-engine: a rule for each, in the order of the criteria; what it comes to is a fact for those after it.</summary>
    public static string JsonRules(bool complete)
    {
        return new JsonObject(Named(complete).Select(rule => KeyValuePair.Create(rule.Name, (JsonNode?)Top(rule.Condition)))).ToJsonString();

        // What stands alone must be a group in that language.
        static JsonObject Top(TwoValued condition) => Of(condition) is var node && (node.ContainsKey("all") || node.ContainsKey("any")) ? node : new JsonObject { ["all"] = new JsonArray(node) };

        static JsonObject Of(TwoValued condition) => condition switch
        {
            TwoValued.Some some => Count(some.Need, some.Parts),
            TwoValued.Number number => OrUnknown(number.Fact, number.OrUnknown, Test(number.Fact, number.Sign switch { ">=" => "greaterThanInclusive", ">" => "greaterThan", "<=" => "lessThanInclusive", _ => "lessThan" }, number.Bound)),
            TwoValued.Answer answer => OrUnknown(answer.Fact, answer.OrUnknown, Test(answer.Fact, "equal", answer.Yes)),
            TwoValued.Word { Negated: false } word => OrUnknown(word.Fact, word.OrUnknown, Test(word.Fact, "in", new JsonArray([.. word.Words.Select(each => JsonValue.Create(each))]))),
            TwoValued.Word word => Test(word.Fact, "notIn", new JsonArray([.. word.Words.Select(each => JsonValue.Create(each)), .. word.OrUnknown ? [] : (JsonValue?[])[null]])),
            TwoValued.Finding finding => Test(Name(finding.Criterion, finding.Possible), "equal", !finding.Negated),
            _ => throw new ArgumentOutOfRangeException(nameof(condition)),
        };

        // It cannot count: either the first part and one less of the others, or as many of the others.
        static JsonObject Count(int need, TwoValued[] parts) =>
            need == parts.Length ? new JsonObject { ["all"] = new JsonArray([.. parts.Select(Of)]) }
            : need == 1 ? new JsonObject { ["any"] = new JsonArray([.. parts.Select(Of)]) }
            : new JsonObject { ["any"] = new JsonArray(new JsonObject { ["all"] = new JsonArray(Of(parts[0]), Count(need - 1, parts[1..])) }, Count(need, parts[1..])) };

        // Comparisons with null fail by themselves.
        static JsonObject OrUnknown(string fact, bool orUnknown, JsonObject test) =>
            orUnknown ? new JsonObject { ["any"] = new JsonArray(Test(fact, "equal", null), test) } : test;

        static JsonObject Test(string fact, string op, JsonNode? value) => new() { ["fact"] = fact, ["operator"] = op, ["value"] = value };
    }

    private static IEnumerable<(string Name, TwoValued Condition)> Named(bool complete)
    {
        for (var i = 0; i < Workload.Criteria.Length; i++)
        {
            yield return (Name(i, possible: false), TwoValued.Of(Workload.Criteria[i], complete ? Way.Complete : Way.Certain));
            if (!complete)
            {
                yield return (Name(i, possible: true), TwoValued.Of(Workload.Criteria[i], Way.Possible));
            }
        }
    }

    private static string Name(int criterion, bool possible) => string.Create(CultureInfo.InvariantCulture, $"{(possible ? 'p' : 'c')}{criterion}");
}

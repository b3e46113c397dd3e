using System.Collections.Immutable;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>What other criteria may say of one: known before any condition is bound.</summary>
internal sealed record Shape(CriterionReference Reference, Ruleset Ruleset, string Kind, ImmutableArray<string> Bands, MapNode Node, SourceSpan Span);

/// <summary>Finds the outlines of all criteria, and reports names that stand twice.</summary>
internal static class ShapeReader
{
    private static readonly string[] Kinds = ["grade", "score", "option", "when"];

    public static Dictionary<string, Shape> Read(IEnumerable<RulesetFile> files, DiagnosticBag bag)
    {
        var shapes = new Dictionary<string, Shape>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            foreach (var node in file.Criteria)
            {
                if (node["id"] is not ScalarNode { Text.Length: > 0 } id)
                {
                    bag.Add(ReadingDiagnostics.MissingKey("id", "a criterion", node.Span with { EndLine = node.Span.Line, EndColumn = node.Span.Column }));
                    continue;
                }

                Names.Check(id, bag);
                var title = (node["title"] as ScalarNode)?.Text ?? id.Text;
                var kind = Kinds.FirstOrDefault(key => node[key] is not null) ?? "when";
                var shape = new Shape(new CriterionReference(shapes.Count, id.Text, title), file.Ruleset, kind, BandNames(node, kind), node, id.Span);
                if (!shapes.TryAdd(id.Text, shape))
                {
                    bag.Add(RulesetDiagnostics.Twice("criterion", id.Text, id.Span));
                }
            }
        }

        return shapes;
    }

    private static ImmutableArray<string> BandNames(MapNode node, string kind) => kind switch
    {
        "grade" => Words((node["grade"] as MapNode)?["bands"], "grade"),
        "score" => Words((node["score"] as MapNode)?["classes"], "class"),
        _ => [],
    };

    private static ImmutableArray<string> Words(Node? list, string key) =>
        [.. ((list as ListNode)?.Items ?? []).OfType<MapNode>().Select(item => (item[key] as ScalarNode)?.Text).OfType<string>()];
}

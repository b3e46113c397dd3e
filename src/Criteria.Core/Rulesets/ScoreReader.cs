using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads a score and checks that its classes cover every total once.</summary>
internal sealed class ScoreReader(BindingContext context, ConditionReader conditions)
{
    private const int MostPoints = 1000;

    public ScoreBody? Read(Node node)
    {
        if (Fields.Of(node, "a score", context.Bag) is not { } fields)
        {
            return null;
        }

        var itemNodes = fields.List("items");
        var classNodes = fields.List("classes");
        fields.Done();
        var items = itemNodes.Select(Item).OfType<ScoreItem>().ToImmutableArray();
        var classes = classNodes.Select(Class).OfType<ScoreClass>().ToImmutableArray();
        if (itemNodes.Count == 0)
        {
            context.Bag.Add(RulesetDiagnostics.EmptyGroup("items", node.Span));
        }

        if (items.Length != itemNodes.Count || classes.Length != classNodes.Count || items.IsEmpty)
        {
            return null;
        }

        Check(items, classes, node.Span);
        return new ScoreBody(items, classes);
    }

    private ScoreItem? Item(Node node)
    {
        if (Fields.Of(node, "an item", context.Bag) is not { } fields)
        {
            return null;
        }

        var points = Points(fields, "points");
        var when = fields.RequiredNode("when") is { } condition ? conditions.Read(condition) : null;
        var label = fields.Text("label");
        fields.Done();
        return points is null || when is null ? null : new ScoreItem(points.Value, when, label ?? when.Text);
    }

    private ScoreClass? Class(Node node)
    {
        if (Fields.Of(node, "a class", context.Bag) is not { } fields)
        {
            return null;
        }

        var name = fields.RequiredText("class");
        var from = Points(fields, "from");
        var to = Points(fields, "to");
        fields.Done();
        return from is null || to is null ? null : new ScoreClass(name, from.Value, to.Value);
    }

    private int? Points(Fields fields, string key)
    {
        if (fields.RequiredScalar(key) is not { } node)
        {
            return null;
        }

        if (int.TryParse(node.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var points) && points <= MostPoints)
        {
            return points;
        }

        context.Bag.Add(RulesetDiagnostics.BadPoints(node.Text, node.Span));
        return null;
    }

    private void Check(ImmutableArray<ScoreItem> items, ImmutableArray<ScoreClass> classes, SourceSpan span)
    {
        if (classes.IsEmpty)
        {
            return;
        }

        foreach (var twice in classes.GroupBy(one => one.Name, StringComparer.Ordinal).Where(group => group.Count() > 1))
        {
            context.Bag.Add(RulesetDiagnostics.Twice("class", twice.Key, span));
        }

        var most = items.Sum(item => item.Points);
        var expected = 0;
        foreach (var one in classes)
        {
            if (one.From != expected || one.To < one.From)
            {
                context.Bag.Add(RulesetDiagnostics.Classes($"do not follow on at `{one.Name}`", span));
                return;
            }

            expected = one.To + 1;
        }

        if (classes[^1].To != most)
        {
            context.Bag.Add(RulesetDiagnostics.Classes($"end at {classes[^1].To} and the highest total is {most}", span));
        }
    }
}

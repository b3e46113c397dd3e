using Criteria.Core.Logic;

namespace Criteria.Engine.Findings;

/// <summary>Finds in a trace the few steps that decide, so that a report can say why in one line.</summary>
public static class Reasons
{
    /// <summary>The steps that made the trace what it is: those that failed, those that held, or those that are open.</summary>
    public static IReadOnlyList<TraceNode> Decisive(TraceNode node)
    {
        ArgumentNullException.ThrowIfNull(node);
        var found = new List<TraceNode>();
        Add(node, found);
        return [.. found.DistinctBy(step => (step.Text, step.Value))];
    }

    private static void Add(TraceNode node, List<TraceNode> found)
    {
        switch (node.Kind)
        {
            case "criterion":
                AddCriterion(node, found);
                break;
            case "applies-when" or "silent" when !node.Parts.IsEmpty:
                Add(node.Parts[0], found);
                break;
            case "not":
                Add(node.Parts[0], found);
                break;
            case "any" when node.Truth == Truth.Met:
                Add(node.Parts.First(part => part.Truth == Truth.Met), found);
                break;
            case "all" or "any" or "at-least":
                AddAll(node.Parts.Where(part => part.Truth == node.Truth), found);
                break;
            default:
                found.Add(node);
                break;
        }
    }

    private static void AddAll(IEnumerable<TraceNode> parts, List<TraceNode> found)
    {
        foreach (var part in parts)
        {
            Add(part, found);
        }
    }

    private static void AddCriterion(TraceNode node, List<TraceNode> found)
    {
        var applies = node.Parts.FirstOrDefault(part => part.Kind == "applies-when");
        var body = node.Parts.First(part => part.Kind is not ("applies-when" or "silent"));
        if (applies is { Truth: Truth.NotMet })
        {
            Add(applies, found);
            return;
        }

        if (node.Truth != Truth.Unknown)
        {
            Add(node.Parts.FirstOrDefault(part => part is { Kind: "whatever", Truth: Truth.Met }) ?? body, found);
            return;
        }

        if (applies is { Truth: Truth.Unknown })
        {
            Add(applies, found);
        }

        var open = node.Parts.Where(part => part.Kind == "silent" && part.Truth != Truth.NotMet && part.Value is null).ToArray();
        if (open.FirstOrDefault(part => part.Truth == Truth.Met) is { } question)
        {
            found.Add(question with { Parts = [] });
        }
        else if (body.Truth == Truth.Unknown)
        {
            Add(body, found);
        }
        else
        {
            AddAll(open, found);
        }
    }
}

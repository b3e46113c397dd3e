using System.Collections.Immutable;

namespace Criteria.Core.Logic;

/// <summary>One step of a trace: a condition, what it came to, and the values it was read from.</summary>
/// <param name="Kind"><c>all</c>, <c>any</c>, <c>not</c>, <c>at-least</c>, <c>fact</c>, <c>finding</c>, <c>documents</c>, <c>document</c>, <c>setting</c>, <c>band</c>, <c>score</c>,
/// <c>item</c>; around them <c>criterion</c>, <c>applies-when</c>, <c>silent</c> and, in what remains, <c>decision</c>.</param>
/// <param name="Text">The condition in words.</param>
/// <param name="Truth">What it came to.</param>
/// <param name="Value">The value found, at a leaf.</param>
/// <param name="From">Where the value came from.</param>
/// <param name="Parts">The parts of a tree.</param>
public sealed record TraceNode(
    string Kind, string Text, Truth Truth, string? Value, string? From, ImmutableArray<TraceNode> Parts)
{
    /// <summary>A leaf.</summary>
    public static TraceNode Leaf(string kind, string text, Truth truth, string? value, string? from) =>
        new(kind, text, truth, value, string.IsNullOrEmpty(from) ? null : from, []);
}

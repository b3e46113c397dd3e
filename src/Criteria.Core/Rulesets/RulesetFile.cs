using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>A ruleset file with its header read and its criteria still as nodes; overlays change it before criteria are bound.</summary>
internal sealed class RulesetFile
{
    public required Ruleset Ruleset { get; set; }

    public required SourceSpan Span { get; init; }

    public required List<MapNode> Criteria { get; init; }

    /// <summary>The windows, as nodes.</summary>
    public IReadOnlyList<Node> Windows { get; init; } = [];

    /// <summary>The grades that figures on nights name.</summary>
    public ImmutableArray<ScalarNode> NightGrades { get; init; } = [];

    /// <summary>The grades that plain words name.</summary>
    public ImmutableArray<ScalarNode> PlainGrades { get; init; } = [];

    public Dictionary<(string Criterion, string Question), LocalAnswer> Answers { get; } = [];

    /// <summary>The names of criteria that took the place of others, so that windows follow.</summary>
    public Dictionary<string, string> ReplacedBy { get; } = new(StringComparer.Ordinal);

    /// <summary>The settings and criteria that an overlay changed already.</summary>
    public HashSet<(string What, string Name)> Changed { get; } = [];

    /// <summary>The id of a criterion node, for messages and look-ups.</summary>
    public static string IdOf(MapNode criterion) => (criterion["id"] as ScalarNode)?.Text ?? "";
}

using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;

namespace Criteria.Documents.PolicyBook;

/// <summary>The condition of a criterion in the words of a trace, of which nothing is known yet: each line with how deep it stands.</summary>
internal sealed class ConditionWords(RulesInForce rules)
{
    // Nothing is recorded, so each step of a trace is there and none has come to anything.
    private readonly View _nothing = new(FactSet.Of(rules.Vocabulary, []), rules.Criteria.Length);

    /// <summary>When the criterion applies; empty when it always does.</summary>
    public IEnumerable<(int Depth, string Text)> Applies(Criterion criterion) =>
        criterion.AppliesWhen.Explain(_nothing) is var node && node is { Truth: Truth.Met, Parts.IsEmpty: true } ? [] : Lines(node, 0);

    /// <summary>What it asks.</summary>
    public IEnumerable<(int Depth, string Text)> Body(Criterion criterion) => criterion.Body switch
    {
        OptionBody option => Option(option),
        GradeBody grade => grade.Bands.Select(band => (0, $"{Words.Capital(band.Grade)}: {band.Text}")).Prepend((0, $"The bands of {grade.Of.Label}:")),
        ScoreBody score => Lines(score.Explain(_nothing), 0).Concat(score.Classes.Select(band => (0, $"Class {band.Name}: {band.From} to {band.To} points"))),
        var body => Lines(body.Explain(_nothing), 0),
    };

    private IEnumerable<(int Depth, string Text)> Option(OptionBody option)
    {
        if (option.When.Explain(_nothing) is var when && when is not { Truth: Truth.Met, Parts.IsEmpty: true })
        {
            foreach (var line in Lines(when, 0))
            {
                yield return line;
            }
        }

        foreach (var (lead, points) in new[] { ("For", option.For), ("Against", option.Against) })
        {
            foreach (var point in points)
            {
                yield return (0, $"{lead}: {point.Say}");
                foreach (var line in Lines(point.Condition.Explain(_nothing), 1))
                {
                    yield return line;
                }
            }
        }
    }

    private static IEnumerable<(int Depth, string Text)> Lines(TraceNode node, int depth)
    {
        yield return (depth, Line(node));

        // What a document would be compared with stands in its own line already.
        foreach (var line in node.Kind is "documents" ? [] : node.Parts.SelectMany(part => Lines(part, depth + 1)))
        {
            yield return line;
        }
    }

    private static string Line(TraceNode node) => node.Kind switch
    {
        "all" => Group(node, "All of these"),
        "any" => Group(node, "Any of these"),
        "at-least" => Group(node, node.Text.Split(':')[0]),
        "not" => Group(node, "Not so, that"),
        "finding" => $"{node.Text} [{node.From}]",
        _ => Words.Capital(node.Text),
    };

    private static string Group(TraceNode node, string standard) =>
        node.Text.Contains(" and ", StringComparison.Ordinal) || node.Text.Contains(" or ", StringComparison.Ordinal) || node.Text.StartsWith("not (", StringComparison.Ordinal) || node.Text.Length == 0
            ? standard : $"{node.Text} ({standard.ToLowerInvariant()})";
}

using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>Writes the nested sections of a case or a night.</summary>
internal sealed class SectionWriter(Vocabulary vocabulary, CaseLines lines)
{
    /// <summary>Writes facts below a place.</summary>
    /// <param name="facts">The facts, each of which stands below it.</param>
    /// <param name="place">The place; empty at the top.</param>
    /// <param name="depth">How many steps in its keys stand.</param>
    public void Write(IReadOnlyList<Fact> facts, string place, int depth)
    {
        foreach (var part in facts.GroupBy(fact => KeyOf(fact, place), StringComparer.Ordinal))
        {
            var inner = place.Length == 0 ? part.Key : $"{place}.{part.Key}";
            if (part.First() is { } only && only.Definition.At == inner)
            {
                lines.Add(depth, part.Key, only);
            }
            else
            {
                Section([.. part], part.Key, inner, depth);
            }
        }
    }

    private void Section(Fact[] facts, string key, string place, int depth)
    {
        var group = vocabulary.Groups.FirstOrDefault(candidate => candidate.At == place);
        var closed = group is null ? null : facts.FirstOrDefault(fact => fact.Origin.Kind == OriginKind.ClosedList);
        var spelled = closed is null ? facts : [.. facts.Where(fact => fact.Origin.Kind != OriginKind.ClosedList)];
        if (group is { ListIsComplete: true } && closed is not null && spelled.All(IsListed))
        {
            lines.Add(depth, $"{key}: [{string.Join(", ", spelled.Select(fact => KeyOf(fact, place)))}]");
            return;
        }

        lines.Add(depth, $"{key}:");
        Write(spelled, place, depth + 1);
        if (closed is not null)
        {
            lines.Add(depth + 1, "others: no");
            lines.Add(depth + 1, $"reviewed_by: {Scalars.Text(closed.Origin.Text)}");
        }
    }

    private static bool IsListed(Fact fact) => fact is { Value: YesNoValue { Yes: true }, Origin.Kind: OriginKind.Entered };

    private static string KeyOf(Fact fact, string place) => fact.Definition.At![(place.Length == 0 ? 0 : place.Length + 1)..].Split('.')[0];
}

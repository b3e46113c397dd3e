using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>What a finding rests on and somebody may change.</summary>
internal static class Parts
{
    /// <summary>The known facts of the case, and of one night where the finding is of a night, in the order of the vocabulary; documents last.</summary>
    public static List<Part> Of(Dependents dependents, Trial trial, Case subject, HashSet<int> path, int? night)
    {
        var candidates = new Candidates(dependents);
        var rules = dependents.Plan.Rules;
        var read = path.SelectMany(index => rules.Criteria[index].ReadsFacts).ToHashSet();
        var parts = new List<Part>();
        foreach (var fact in rules.Vocabulary.Facts.Where(OutlookBuilder.CanBeWritten).Where(fact => IsOn(dependents.Of(fact), path)))
        {
            var place = fact.Scope == FactScope.Case ? null : night;
            var facts = trial.Facts(place);
            if ((fact.Scope == FactScope.Case || night is not null) && facts[fact].IsKnown && !Companions.IsDecidedByItsParts(fact, facts))
            {
                var companions = Companions.Of(fact, facts);
                parts.Add(new Part
                {
                    Present = facts[fact],
                    Place = fact.Label,
                    Id = fact.Id,
                    Night = place is { } index && !subject.Nights.IsEmpty ? subject.Nights[index].Label : null,
                    Moves = [fact, .. rules.Vocabulary.ComputedFrom(fact).Where(computed => read.Contains(computed.Slot))],
                    Steps = [.. candidates.Of(fact, facts, companions).Select(candidate => new Step(candidate, Edit.Of(dependents, candidate.Fact, companions, place)))],
                });
            }
        }

        foreach (var list in subject.Facts.Records.Where(list => IsOn(dependents.Of(list.Definition), path)))
        {
            foreach (var item in list.Items)
            {
                foreach (var attribute in item.Attributes.Where(attribute => attribute.IsKnown))
                {
                    parts.Add(new Part
                    {
                        Present = attribute,
                        Place = $"{item.Id}: {attribute.Definition.Label}",
                        Id = $"{item.Id}: {attribute.Definition.Id}",
                        Moves = [.. rules.Vocabulary.ComputedFrom(list.Definition).Where(computed => read.Contains(computed.Slot))],
                        Steps = [.. candidates.OfAttribute(attribute, trial.Facts(0)).Select(candidate => new Step(candidate, Edit.Of(dependents, list.Definition, item.Id, candidate.Fact)))],
                    });
                }
            }
        }

        return parts;
    }

    private static bool IsOn(IReadOnlyList<Dependent> dependents, HashSet<int> path) => dependents.Any(dependent => dependent.Reads && path.Contains(dependent.Criterion.Index));
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Engine.Changes;

/// <summary>One other value of a part, ready to be tried.</summary>
/// <param name="Candidate">The value.</param>
/// <param name="Edit">The change of the case.</param>
internal sealed record Step(Candidate Candidate, Edit Edit)
{
    /// <summary>Whether another is on the same side and no further from the present value; of words each is its own side.</summary>
    public bool IsNoNearerThan(Step other) => Candidate.Order == 0 ? ReferenceEquals(this, other)
        : Math.Sign(Candidate.Order) == Math.Sign(other.Candidate.Order) && Math.Abs(Candidate.Order) >= Math.Abs(other.Candidate.Order);
}

/// <summary>One known fact, or attribute of a document or trial, that a finding rests on, with the values worth trying.</summary>
internal sealed class Part
{
    /// <summary>What is changed.</summary>
    public required Fact Present { get; init; }

    /// <summary>Its name for a reader.</summary>
    public required string Place { get; init; }

    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The night that it is of, or null.</summary>
    public string? Night { get; init; }

    /// <summary>The facts of the case or night that it moves and that the finding rests on.</summary>
    public required ImmutableHashSet<FactDefinition> Moves { get; init; }

    /// <summary>The values.</summary>
    public required List<Step> Steps { get; init; }

    /// <summary>The criteria on a path that it can move.</summary>
    public IReadOnlyList<Dependent> PathOn(HashSet<int> path) => Steps.Count == 0 ? [] : [.. Steps[0].Edit.Dependents.Where(dependent => path.Contains(dependent.Criterion.Index))];

    /// <summary>One of its values as a change.</summary>
    public Change Change(Step step) => new(
        Place, Id, Night, Present.Definition.Rounded ? Present.Written ?? Present.Text : Present.Text, step.Candidate.Text, step.Candidate.Step, step.Candidate.Size,
        Present.Definition.IsFixed, []);

    /// <summary>Whether both enter one figure, one comparison or one relation of dates, so that where the one turns depends on the other.</summary>
    public bool Meets(Part other, Dependents dependents) => Moves.Overlaps(other.Moves)
        || dependents.FactBounds.Any(bound => (Moves.Contains(bound.Fact) && other.Moves.Contains(bound.Other)) || (Moves.Contains(bound.Other) && other.Moves.Contains(bound.Fact)))
        || dependents.Dates.Any(bound => IsSetAgainst(bound, other) || other.IsSetAgainst(bound, this));

    private bool IsSetAgainst(DateBound bound, Part other) => (Present.Definition == bound.Date || Moves.Contains(bound.Date))
        && ((bound.Anchor is { } anchor && other.Moves.Contains(anchor)) || (bound.AnchorAttribute is { } attribute && other.Present.Definition == attribute));
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Changes;

/// <summary>Finds the pairs of changes that turn one finding though neither does so alone.</summary>
/// <remarks>
/// Exact for two facts that turn the finding each on its own conditions. Two that meet in one figure (events and minutes, height and weight), in one
/// comparison or in one relation of dates are not paired: there every step of the one has its own step of the other, and the changes of one fact tell what is needed.
/// </remarks>
internal sealed class PairBuilder
{
    private readonly Dependents _dependents;
    private readonly Trial _trial;
    private readonly Case _case;
    private readonly Criterion _finding;
    private readonly int _night;
    private readonly HashSet<int> _path;
    private readonly Verdict _before;
    private readonly List<ChangePair> _pairs = [];

    private PairBuilder(RulesInForce rules, Case subject, Criterion finding, int night)
    {
        _dependents = Dependents.Of(rules);
        _trial = new Trial(rules, _dependents, subject);
        (_case, _finding, _night) = (subject, finding, night);
        _path = _dependents.PathOf(finding);
        _before = _trial.Before(finding, night);
    }

    /// <summary>The pairs for one finding, the smallest first.</summary>
    public static ImmutableArray<ChangePair> Build(RulesInForce rules, Case subject, Finding finding, CancellationToken stop)
    {
        if (finding.Criterion.Impossible || finding.Standing == Standing.Undetermined)
        {
            return [];
        }

        var night = finding.Night is { } label ? subject.Nights.Select(each => each.Label).ToList().IndexOf(label) : 0;
        return new PairBuilder(rules, subject, finding.Criterion, Math.Max(0, night)).Build(stop);
    }

    private ImmutableArray<ChangePair> Build(CancellationToken stop)
    {
        var parts = Parts.Of(_dependents, _trial, _case, _path, _finding.PerNight ? _night : null);
        foreach (var part in parts)
        {
            var path = part.PathOn(_path);
            part.Steps.RemoveAll(step => Move.Turns(_before, Weigh(path, step.Edit)) && Move.ArePossible(_trial.Try(step.Edit)));
        }

        for (var i = 0; i < parts.Count; i++)
        {
            for (var j = i + 1; j < parts.Count; j++)
            {
                stop.ThrowIfCancellationRequested();
                if (!parts[i].Meets(parts[j], _dependents))
                {
                    Try(parts[i], parts[j]);
                }
            }
        }

        return [.. _pairs.OrderBy(pair => pair.IsFixed).ThenBy(pair => pair.Size)];
    }

    private Verdict Weigh(IReadOnlyList<Dependent> path, params ReadOnlySpan<Edit> edits) => _trial.Weigh(_finding, _night, path, edits);

    private void Try(Part first, Part second)
    {
        if (first.Steps.Count == 0 || second.Steps.Count == 0)
        {
            return;
        }

        Dependent[] path = [.. _dependents.Of(first.Steps[0].Edit, second.Steps[0].Edit).Where(dependent => _path.Contains(dependent.Criterion.Index))];
        var found = new List<(Step First, Step Second, Verdict After)>();
        foreach (var one in first.Steps)
        {
            foreach (var other in second.Steps)
            {
                var after = Weigh(path, one.Edit, other.Edit);
                if (Move.Turns(_before, after) && !found.Any(pair => pair.After == after && one.IsNoNearerThan(pair.First) && other.IsNoNearerThan(pair.Second))
                    && Move.ArePossible(_trial.Try(one.Edit, other.Edit)))
                {
                    found.RemoveAll(pair => pair.After == after && pair.First.IsNoNearerThan(one) && pair.Second.IsNoNearerThan(other));
                    found.Add((one, other, after));
                }
            }
        }

        var night = _finding.PerNight && !_case.Nights.IsEmpty ? _case.Nights[_night].Label : null;
        _pairs.AddRange(found.Select(pair => new ChangePair(first.Change(pair.First), second.Change(pair.Second), new Turn(_finding, night, _before, pair.After))));
    }
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Changes;

/// <summary>Finds what would change an assessment, and what is worth asking, by trying one change after the other.</summary>
internal sealed class OutlookBuilder
{
    // They select the rules: a change of one is another assessment, not another answer of this one.
    private const string SelectsRules = "coverage.";

    private readonly Dependents _dependents;
    private readonly Candidates _candidates;
    private readonly Case _case;
    private readonly Trial _trial;
    private readonly Questions _questions;
    private readonly List<Change> _changes = [];

    private OutlookBuilder(RulesInForce rules, Dependents dependents, Case subject, Assessment assessment)
    {
        (_dependents, _case) = (dependents, subject);
        _candidates = new Candidates(dependents);
        _trial = new Trial(rules, dependents, subject);
        _questions = new Questions(assessment, rules.Vocabulary);
    }

    /// <summary>The outlook of an assessment.</summary>
    public static Outlook Build(RulesInForce rules, Dependents dependents, Case subject, Assessment assessment)
    {
        if (assessment.Refusal is not null)
        {
            return new Outlook([], [], []);
        }

        var builder = new OutlookBuilder(rules, dependents, subject, assessment);
        foreach (var fact in rules.Vocabulary.Facts.Where(fact => CanBeWritten(fact) && dependents.Of(fact).Count > 0))
        {
            builder.TryFact(fact);
        }

        builder.TryRecords();
        return new Outlook([.. builder._changes], builder._questions.Ranked(), builder._questions.CannotChange(subject, dependents.Plan.Settler!));
    }

    /// <summary>Whether a case file may give the fact, and the fact does not select the rules.</summary>
    internal static bool CanBeWritten(FactDefinition fact) =>
        (fact.Computed is null || fact.At is not null) && fact.At?.StartsWith(SelectsRules, StringComparison.Ordinal) != true;

    private void TryFact(FactDefinition fact)
    {
        if (fact.Scope == FactScope.Case)
        {
            TryFact(fact, null);
            return;
        }

        for (var night = 0; night < _trial.Nights; night++)
        {
            TryFact(fact, night);
        }
    }

    private void TryFact(FactDefinition fact, int? night)
    {
        var facts = _trial.Facts(night);
        var present = facts[fact];
        var isAsked = !present.IsKnown && _questions.Has(fact.Id);
        if (present.State == FactState.NotApplicable || (!present.IsKnown && !isAsked) || (present.IsKnown && Companions.IsDecidedByItsParts(fact, facts)))
        {
            return;
        }

        var companions = Companions.Of(fact, facts);
        var tried = _candidates.Of(fact, facts, companions)
            .Select(candidate => (Candidate: candidate, Moves: _trial.Try(Edit.Of(_dependents, candidate.Fact, companions, night), candidate.Facts)))
            .Where(pair => Move.ArePossible(pair.Moves)).ToArray();
        if (isAsked)
        {
            _questions.Learn(fact.Id, null, fact.IsNumeric || fact.Kind == FactKind.Date, [.. tried.Select(pair => (pair.Candidate.Text, pair.Moves))], NightOf);
        }
        else
        {
            AddChanges(tried, fact.Label, fact.Id, night is { } place && !_case.Nights.IsEmpty ? _case.Nights[place].Label : null, present);
        }
    }

    private void TryRecords()
    {
        foreach (var list in _case.Facts.Records)
        {
            foreach (var item in list.Items)
            {
                foreach (var attribute in item.Attributes)
                {
                    TryAttribute(list, item, attribute);
                }
            }
        }

        foreach (var sought in _dependents.Sought.Where(sought => _questions.Has(sought.MissingId)))
        {
            if (sought.Fitting(_trial.Facts(0)) is { } fitting)
            {
                _questions.Learn(sought.MissingId, sought.Text, false, [("on file", _trial.Try(Edit.Of(_dependents, sought.List, fitting)))], NightOf);
            }
        }
    }

    private void TryAttribute(RecordList list, CaseRecord item, Fact attribute)
    {
        var definition = attribute.Definition;
        var id = $"{item.Id}: {definition.Id}";
        if (attribute.State == FactState.NotApplicable || (!attribute.IsKnown && !_questions.Has(id)))
        {
            return;
        }

        var tried = _candidates.OfAttribute(attribute, _trial.Facts(0))
            .Select(candidate => (Candidate: candidate, Moves: _trial.Try(Edit.Of(_dependents, list.Definition, item.Id, candidate.Fact))))
            .Where(pair => Move.ArePossible(pair.Moves)).ToArray();
        if (!attribute.IsKnown)
        {
            _questions.Learn(id, null, definition.Kind == FactKind.Date && !definition.AlsoYesNo, [.. tried.Select(pair => (pair.Candidate.Text, pair.Moves))], NightOf);
        }
        else
        {
            AddChanges(tried, $"{item.Id}: {definition.Label}", id, null, attribute);
        }
    }

    private string? NightOf(Move move) => move.Criterion.PerNight && !_case.Nights.IsEmpty ? _case.Nights[move.Night].Label : null;

    // Of values in order, the nearest on each side that turns a finding; of others, each that does.
    private void AddChanges((Candidate Candidate, List<Move> Moves)[] tried, string place, string id, string? night, Fact present)
    {
        var turned = new HashSet<(int Criterion, int Night, int Side)>();
        foreach (var (candidate, moves) in tried.OrderBy(pair => Math.Abs(pair.Candidate.Order)).ThenBy(pair => pair.Candidate.Order))
        {
            var side = Math.Sign(candidate.Order);
            var turns = moves.Where(move => move.IsShown && move.IsTurn).Where(move => side == 0 || turned.Add((move.Criterion.Index, move.Night, side)))
                .OrderBy(move => move.Criterion.Index).ThenBy(move => move.Night)
                .Select(move => new Turn(move.Criterion, NightOf(move), move.Before, move.After)).ToImmutableArray();
            if (!turns.IsEmpty)
            {
                _changes.Add(new Change(place, id, night, present.Definition.Rounded ? present.Written ?? present.Text : present.Text, candidate.Text, candidate.Step, candidate.Size, present.Definition.IsFixed, turns));
            }
        }
    }
}

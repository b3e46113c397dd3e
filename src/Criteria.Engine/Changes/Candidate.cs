using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Engine.Changes;

/// <summary>One other value of a fact.</summary>
/// <param name="Fact">The fact with that value.</param>
/// <param name="Order">Where it lies: below zero under the present value, above zero over it; 0 where values have no order.</param>
/// <param name="Step">The change in words; empty where there is none.</param>
/// <param name="Size">How large the change is against the value.</param>
internal sealed record Candidate(Fact Fact, decimal Order, string Step, double Size)
{
    /// <summary>The facts of the case or night with that value, where they were made on the way.</summary>
    public FactSet? Facts { get; init; }

    /// <summary>The value in words: a printed figure as it would be printed.</summary>
    public string Text => Fact.Definition.Rounded ? Fact.Written! : Fact.Text;
}

/// <summary>The values of a fact that are worth trying: one on each side of every point at which something turns.</summary>
internal sealed class Candidates(Dependents dependents)
{
    /// <summary>Those of a fact of the case or of a night.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="facts">The facts of the case or night.</param>
    /// <param name="companions">All that is changed with it.</param>
    public IEnumerable<Candidate> Of(FactDefinition fact, FactSet facts, ImmutableArray<Fact> companions) => fact.Kind switch
    {
        FactKind.Number or FactKind.Count or FactKind.Duration => Numbers(fact, facts, companions),
        FactKind.Date => Dates(
            facts[fact],
            dependents.Dates.Where(bound => bound.Date == fact).SelectMany(bound => bound.Turns(facts))
                .Concat(dependents.Dates.Where(bound => bound.Anchor == fact).SelectMany(bound => bound.TurnsOfAnchor(facts)))),
        FactKind.Code => Codes(fact, facts),
        _ => Words(facts[fact]),
    };

    /// <summary>Those of an attribute of a document or trial.</summary>
    public IEnumerable<Candidate> OfAttribute(Fact attribute, FactSet facts)
    {
        var dates = attribute.Definition.Kind == FactKind.Date
            ? Dates(attribute, dependents.Dates.Where(bound => bound.Date == attribute.Definition).SelectMany(bound => bound.Turns(facts)))
            : [];
        return attribute.Definition.Kind == FactKind.Date && !attribute.Definition.AlsoYesNo ? dates : dates.Concat(Words(attribute));
    }

    private IEnumerable<Candidate> Numbers(FactDefinition fact, FactSet facts, ImmutableArray<Fact> companions)
    {
        if (Grid.Of(fact, facts.Vocabulary) is not { } grid)
        {
            return [];
        }

        var present = facts[fact].Value as NumberValue;
        return NumberTurns.Of(dependents, fact, grid, facts, companions)
            .Select(turn => (Changed: grid.At(turn.Step), turn.Facts))
            .Where(turn => present is null || !turn.Changed.Value!.Equals(present))
            .Select(turn => Numbered(turn.Changed, present) with { Facts = turn.Facts });
    }

    private static Candidate Numbered(Fact changed, NumberValue? present)
    {
        if (present is null)
        {
            return new Candidate(changed, 0, "", 1);
        }

        var was = (present.Printed ?? present.Range.Low).Rounded;
        var value = (NumberValue)changed.Value!;
        var difference = (value.Printed ?? value.Range.Low).Rounded - was;
        var unit = changed.Definition.Unit;
        var words = $"{QuantityText.Of(Math.Abs(difference), unit)} {(difference < 0 ? unit.Dimension == Dimension.None ? "fewer" : "less" : "more")}";
        return new Candidate(changed, difference, words, was == 0 ? 1 : (double)Math.Abs(difference / was));
    }

    private static IEnumerable<Candidate> Dates(Fact present, IEnumerable<DateOnly> days)
    {
        var was = (present.Value as DateValue)?.Date;
        foreach (var day in days.Distinct().Order().Where(day => day != was))
        {
            var moved = was is { } date ? day.DayNumber - date.DayNumber : 0;
            var words = moved == 0 ? "" : $"{Math.Abs(moved)} {(Math.Abs(moved) == 1 ? "day" : "days")} {(moved < 0 ? "earlier" : "later")}";
            yield return new Candidate(Fact.Known(present.Definition, new DateValue(day), Provenance.Entered), moved, words, 1);
        }
    }

    private static IEnumerable<Candidate> Codes(FactDefinition fact, FactSet facts) => facts.Vocabulary.CodeSets.Where(set => set.System == fact.System)
        .SelectMany(set => set.Codes.Take(1)).Where(code => facts[fact].Value is not CodeValue present || present.Code != code.Code).DistinctBy(code => code.Code)
        .Select(code => new Candidate(Fact.Known(fact, new CodeValue(code.Code), Provenance.Entered), 0, "", 1));

    private static IEnumerable<Candidate> Words(Fact present)
    {
        var fact = present.Definition;
        FactValue[] values = fact.Kind switch
        {
            FactKind.YesNo => [new YesNoValue(true), new YesNoValue(false)],
            FactKind.Choice => [.. fact.Choices.Select(word => new ChoiceValue(word))],
            FactKind.Date when fact.AlsoYesNo => present.Value is DateValue ? [new YesNoValue(false)] : [new YesNoValue(true), new YesNoValue(false)],
            _ => [],
        };
        return values.Where(value => !value.Equals(present.Value)).Select(value => new Candidate(Fact.Known(fact, value, Provenance.Entered), 0, "", 1));
    }
}

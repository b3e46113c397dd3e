using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>A fixed number that a fact is compared with, in the fact's base unit.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="At">The number.</param>
/// <param name="Text">The number as the ruleset writes it.</param>
public sealed record NumberBound(FactDefinition Fact, Ratio At, string Text);

/// <summary>A fact compared with a multiple or a share of another.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Factor">What the other is multiplied by.</param>
/// <param name="Other">The other.</param>
public sealed record FactBound(FactDefinition Fact, Ratio Factor, FactDefinition Other);

/// <summary>A date that stands in a relation to another. Either is a fact, a date of a record, or fixed.</summary>
public sealed class DateBound
{
    private readonly DateRelation _relation;

    internal DateBound(FactDefinition date, DateRelation relation) => (Date, _relation) = (date, relation);

    /// <summary>The date: a fact, or an attribute of a document or trial.</summary>
    public FactDefinition Date { get; }

    /// <summary>The fact that it is set against, or null.</summary>
    public FactDefinition? Anchor => _relation.Anchor;

    /// <summary>The date of other documents or trials that it is set against, or null.</summary>
    public FactDefinition? AnchorAttribute => _relation.Record?.Attribute;

    /// <summary>The days beside which the relation turns when the date is moved and the rest stays.</summary>
    public IEnumerable<DateOnly> Turns(FactSet facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return _relation.Anchors(facts).SelectMany(_relation.TurnsOfDate);
    }

    /// <summary>The days beside which the relation turns when the anchor is moved and the rest stays.</summary>
    public IEnumerable<DateOnly> TurnsOfAnchor(FactSet facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var dates = Date.Scope == FactScope.Record
            ? facts.Records.Where(list => list.Definition.Attributes.Contains(Date)).SelectMany(list => list.Items).Select(item => item[Date])
            : [facts[Date]];
        return dates.Select(fact => fact.Value).OfType<DateValue>().SelectMany(value => _relation.TurnsOfAnchor(value.Date));
    }
}

/// <summary>A document or therapy trial that a condition looks for.</summary>
public sealed class Sought
{
    private readonly RecordSearch _search;

    internal Sought(RecordSearch search, string text) => (_search, Text) = (search, text);

    /// <summary>The list in which it is looked for.</summary>
    public RecordDefinition List => _search.List;

    /// <summary>What is looked for, in words.</summary>
    public string Text { get; }

    /// <summary>The name under which a list of missing facts has it.</summary>
    public string MissingId => _search.MissingId;

    /// <summary>One that fits, or null where none can be made up from what is known.</summary>
    /// <param name="facts">The facts of the case.</param>
    public CaseRecord? Fitting(FactSet facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return _search.Fitting(facts);
    }
}

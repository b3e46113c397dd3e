using Criteria.Core.Facts;
using Criteria.Documents.Wording;

namespace Criteria.Documents.Model;

/// <summary>One fact of the case or of a night.</summary>
internal sealed class FactModel(Fact fact, string? night) : ITraced
{
    /// <summary>Its name in rules and case files.</summary>
    public string Id => fact.Definition.Id;

    /// <summary>A few words for it.</summary>
    [Untraced]
    public string Label => fact.Definition.Label;

    /// <summary>Its value with its unit, or why there is none: <c>not in the case</c>, <c>unknown</c>, <c>does not apply</c>.</summary>
    public string Text => fact.Value is DateValue { Date: var date } ? Words.Date(date) : fact.Text;

    /// <summary>The value as the report prints it, without the range that a rounded figure stands for.</summary>
    public string FigureAlone => fact is { IsKnown: true, Written: { } written } ? written : Text;

    /// <summary>Whether it has a value.</summary>
    public bool IsKnown => fact.IsKnown;

    /// <summary>Whether it is a yes.</summary>
    public bool IsYes => fact.Value is YesNoValue { Yes: true };

    /// <summary>Whether it is a no. An unknown is neither.</summary>
    public bool IsNo => fact.Value is YesNoValue { Yes: false };

    /// <summary>Where it came from: a document and page, or what it was computed from; empty when the case does not say.</summary>
    public string From => fact.Origin.Words;

    /// <summary>Who can supply it.</summary>
    [Untraced]
    public string Owner => fact.Definition.Owner;

    /// <summary>The question to ask for it.</summary>
    [Untraced]
    public string Ask => fact.Definition.Ask;

    bool ITraced.Stands => fact.IsKnown;

    bool ITraced.IsOpen => !fact.IsKnown;

    string ITraced.Key => night is null ? Id : $"{Id}@{night}";

    /// <summary>The night it is about, in words, or null.</summary>
    internal string? NightLabel => night;
}

/// <summary>Several facts that one sentence gives together; they share one mark.</summary>
internal sealed class FactGroupModel(IReadOnlyList<FactModel> facts) : ITraced
{
    /// <summary>The facts.</summary>
    internal IReadOnlyList<FactModel> Facts { get; } = facts;

    bool ITraced.Stands => Facts.All(fact => fact.IsKnown);

    bool ITraced.IsOpen => !Facts.All(fact => fact.IsKnown);

    string ITraced.Key => string.Join('+', Facts.Select(fact => ((ITraced)fact).Key));
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>All that the names in one criterion may mean.</summary>
internal sealed class BindingContext
{
    public required Vocabulary Vocabulary { get; init; }

    public required IReadOnlyDictionary<string, Shape> Shapes { get; init; }

    public required SourceRegister Sources { get; init; }

    public required Ruleset Ruleset { get; init; }

    public required DiagnosticBag Bag { get; init; }

    /// <summary>The index types that the criterion declares.</summary>
    public ImmutableArray<IndexType> Indices { get; set; } = [];

    public Setting? Setting(string name) => Ruleset.Settings.FirstOrDefault(setting => setting.Name == name);

    /// <summary>The fact of that name, if the criterion may read it. An index of another type than declared is reported.</summary>
    public FactDefinition? Fact(string name, SourceSpan span)
    {
        var fact = Vocabulary.Find(name);
        if (fact?.Index is null || Indices.Contains(fact.Index))
        {
            return fact;
        }

        Bag.Add(Indices.IsEmpty ? RulesetDiagnostics.IndexNotDeclared(fact, span) : RulesetDiagnostics.WrongIndex(fact, Indices, span));
        return fact;
    }

    public void ReportUnknown(string name, SourceSpan span)
    {
        var known = Vocabulary.Facts.Select(fact => fact.Id).Concat(Shapes.Keys).Concat(Ruleset.Settings.Select(setting => setting.Name));
        Bag.Add(RulesetDiagnostics.UnknownName(name, NearestName.Of(name, known), span));
    }
}

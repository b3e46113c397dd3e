using System.Collections.Frozen;

namespace Criteria.Documents.Model;

/// <summary>Findings by name: <c>findings["severity.rei-4"]</c>.</summary>
internal sealed class FindingTable(IEnumerable<FindingModel> findings)
{
    private readonly FrozenDictionary<string, FindingModel> _byId = findings.GroupBy(finding => finding.Id)
        .ToFrozenDictionary(group => group.Key, group => group.Last(), StringComparer.Ordinal);

    /// <summary>The finding of that name, or null when the rules in force have none.</summary>
    public FindingModel? this[string id] => _byId.GetValueOrDefault(id);
}

/// <summary>Facts by name: <c>facts["age"]</c>.</summary>
internal sealed class FactTable(IEnumerable<FactModel> facts)
{
    private readonly FrozenDictionary<string, FactModel> _byId = facts.ToFrozenDictionary(fact => fact.Id, fact => fact, StringComparer.Ordinal);

    /// <summary>The fact of that name, or null.</summary>
    public FactModel? this[string id] => _byId.GetValueOrDefault(id);
}

/// <summary>The known facts of a section of the case file: <c>facts_at["intake.symptoms"]</c>.</summary>
internal sealed class FactSections(IEnumerable<(string Place, FactModel Fact)> facts)
{
    private readonly (string Place, FactModel Fact)[] _known = [.. facts.Where(pair => pair.Fact.IsKnown)];

    /// <summary>The known facts below that place, in the order of the vocabulary.</summary>
    public IReadOnlyList<FactModel> this[string place] => [.. _known.Where(pair => pair.Place.StartsWith(place + ".", StringComparison.Ordinal)).Select(pair => pair.Fact)];
}

/// <summary>Who the case is about and who writes: <c>identity.patient_name</c>. Only what the document declares is there.</summary>
internal sealed class IdentityTable(IReadOnlyDictionary<string, string> values)
{
    /// <summary>The section of a case file that holds it.</summary>
    public const string Place = "identity";

    /// <summary>The value, or empty text.</summary>
    public string this[string name] => values.GetValueOrDefault(name, "");
}

using System.Text;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Files;

/// <summary>A case file with every fact that the given rules can use, all still unknown.</summary>
internal sealed class CaseTemplate
{
    private const string NightSection = Vocabulary.NightPlace;

    private readonly RulesInForce _rules;
    private readonly HashSet<int> _used = [];
    private readonly StringBuilder _text = new();

    private CaseTemplate(RulesInForce rules)
    {
        _rules = rules;
        foreach (var criterion in rules.Criteria)
        {
            _used.UnionWith(criterion.ReadsFacts);
        }
    }

    /// <summary>The template. It can be read as it stands: every fact in it is unknown.</summary>
    public static string Text(RulesInForce rules, DateOnly date, string? payer, string? item)
    {
        var template = new CaseTemplate(rules);
        template.Write(date, payer, item);
        return template._text.ToString();
    }

    private void Write(DateOnly date, string? payer, string? item)
    {
        Line("# A case file. Put in what is known; leave the rest as unknown, or take the line out: both mean unknown, never no.");
        Line("# Each value may say where it comes from: { value: 43 cm, from: visit-note p.2 }");
        Line("case: CASE-KEY                        # a key that names nobody");
        Line($"assessed_on: {date.ToIso()}               # the date the assessment is made for");
        var places = _rules.Vocabulary.Facts.Where(fact => fact.At is not null && _used.Contains(fact.Slot)).ToArray();
        var caseFacts = places.Where(fact => fact.Scope == FactScope.Case && !IsCoverage(fact)).ToArray();
        foreach (var section in caseFacts.GroupBy(fact => fact.At!.Split('.')[0]))
        {
            Section([.. section], section.Key, 0);
        }

        Night([.. places.Where(fact => fact.Scope == FactScope.Night)]);
        foreach (var record in _rules.Vocabulary.Records.Where(record => _rules.Criteria.Any(criterion => criterion.ReadsRecords.Contains(record))))
        {
            Records(record);
        }

        if (payer is not null)
        {
            Line("coverage:");
            Line($"  payer: {payer}");
            Line($"  item: {item}");
            Line($"  service_date: {date.ToIso()}          # the rules in force on this date are used");
            foreach (var fact in places.Where(fact => IsCoverage(fact) && fact.At is not ("coverage.payer" or "coverage.item" or "coverage.service_date")))
            {
                Fact(fact, 2);
            }
        }
    }

    private static bool IsCoverage(FactDefinition fact) => fact.At!.StartsWith("coverage.", StringComparison.Ordinal);

    private void Section(FactDefinition[] facts, string place, int indent)
    {
        Line($"{new string(' ', indent)}{place.Split('.')[^1]}:");
        if (_rules.Vocabulary.Groups.FirstOrDefault(group => group.At == place) is { } group)
        {
            Line($"{new string(' ', indent + 2)}# When everything left out is a no: take the unknown lines out, and add");
            Line($"{new string(' ', indent + 2)}# others: no");
            Line($"{new string(' ', indent + 2)}# reviewed_by: WHO went through the {group.Label.ToLowerInvariant()}, and when");
        }

        foreach (var fact in facts.Where(fact => fact.At!.Length > place.Length && !fact.At[(place.Length + 1)..].Contains('.', StringComparison.Ordinal)))
        {
            Fact(fact, indent + 2);
        }

        foreach (var inner in facts.Where(fact => fact.At![(place.Length + 1)..].Contains('.', StringComparison.Ordinal))
            .GroupBy(fact => $"{place}.{fact.At![(place.Length + 1)..].Split('.')[0]}"))
        {
            Section([.. inner], inner.Key, indent + 2);
        }
    }

    private void Night(FactDefinition[] facts)
    {
        var indices = _rules.Vocabulary.Indices.Where(index => _used.Contains(index.Rate.Slot)).ToArray();
        if (facts.Length == 0 && indices.Length == 0)
        {
            return;
        }

        // The first key stands beside the dash of the list; the others below it.
        Line($"{NightSection}:");
        var start = _text.Length;
        foreach (var fact in facts.Where(fact => !fact.At![(NightSection.Length + 1)..].Contains('.', StringComparison.Ordinal)))
        {
            Fact(fact, 4);
        }

        foreach (var inner in facts.Where(fact => fact.At![(NightSection.Length + 1)..].Contains('.', StringComparison.Ordinal))
            .GroupBy(fact => $"{NightSection}.{fact.At![(NightSection.Length + 1)..].Split('.')[0]}"))
        {
            Section([.. inner], inner.Key, 4);
        }

        if (indices.Length > 0)
        {
            Line("    indices:                          # one line for each index that the report gives; take the others out");
            foreach (var index in indices)
            {
                var rule = index.Type.Index == "ODI" ? "desaturation" : "hypopnea";
                Line($"      # {index.Rate.Label}, per hour of {index.Type.Per}. {Who(index.Rate)}");
                Line($"      - {{ index: {index.Type.Index}, {rule}: {index.Type.Rule}, per_hour: unknown, events: unknown, over: unknown }}");
            }
        }

        var firstKey = _text.ToString().IndexOf("    ", start, StringComparison.Ordinal);
        while (_text[firstKey + 4] is '#' or ' ')
        {
            firstKey = _text.ToString().IndexOf("\n    ", firstKey, StringComparison.Ordinal) + 1;
        }

        _text[firstKey + 2] = '-';
    }

    private void Records(RecordDefinition record)
    {
        Line($"{record.At}:");
        Line($"  # one entry for each {record.Label.ToLowerInvariant()}. Kinds: {string.Join(", ", record.Kinds)}");
        var attributes = record.Attributes.Select(attribute => $"{attribute.At![(record.At.Length + 1)..]}: {Sample(attribute)}");
        Line($"  # - {{ id: A-SHORT-NAME, kind: {record.Kinds[0]}, {string.Join(", ", attributes)} }}");
        Line($"  # When there is no other: - {{ others: no, reviewed_by: WHO and when }}");
        Line("  []");
    }

    private void Fact(FactDefinition fact, int indent)
    {
        var key = fact.At!.Split('.')[^1];
        var line = $"{new string(' ', indent)}{key}: unknown";
        Line($"{line.PadRight(36)}  # {fact.Label}: {Sample(fact)}. {Who(fact)}");
    }

    private static string Who(FactDefinition fact) => $"{fact.Owner}: {fact.Ask}";

    private static string Sample(FactDefinition fact) => fact.Kind switch
    {
        FactKind.YesNo => "yes or no",
        FactKind.Choice => string.Join(" or ", fact.Choices),
        FactKind.Date => fact.AlsoYesNo ? "2026-06-03 or yes or no" : "2026-06-03",
        FactKind.Code => $"a code of {fact.System}",
        FactKind.Durations => "a list, one for each night: [5 h 10 min, 0 h, unknown]",
        FactKind.Count => "a whole number",
        FactKind.Duration => "as 6 h 40 min",
        FactKind.Number => fact.Unit.Dimension switch
        {
            Dimension.Length => "in cm, or in ft and in",
            Dimension.Mass => "in kg or lb",
            Dimension.Share => "in %",
            _ => $"in {fact.Unit.Symbol}",
        },
        _ => "text",
    };

    private void Line(string text) => _text.Append(text.TrimEnd()).Append('\n');
}

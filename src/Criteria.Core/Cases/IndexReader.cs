using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Reads the <c>indices</c> of a night into the typed facts they are.</summary>
internal sealed class IndexReader(Vocabulary vocabulary, DiagnosticBag bag, ValueReader values)
{
    public const string Key = "indices";

    /// <summary>The key under which an index names its rule.</summary>
    public static string RuleKey(string index) => index == "ODI" ? "desaturation" : "hypopnea";

    public void Read(Node node, List<Fact> facts)
    {
        if (node is not ListNode list)
        {
            bag.Add(ReadingDiagnostics.Expected("a list of indices", node.Described, node.Span));
            return;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in list.Items)
        {
            if (Fields.Of(item, "an index", bag) is { } fields && ReadOne(fields, facts) is { } index && !seen.Add(index.Rate.Id))
            {
                bag.Add(CaseDiagnostics.IndexTwice(index.Rate.Label, item.Span));
            }
        }
    }

    private IndexDefinition? ReadOne(Fields fields, List<Fact> facts)
    {
        var name = fields.RequiredScalar("index");
        var hypopnea = fields.Scalar("hypopnea");
        var desaturation = fields.Scalar("desaturation");
        var perHour = fields.Node("per_hour");
        var events = fields.Node("events");
        var over = fields.Node("over");
        fields.Done();
        if (name is null || Find(name, hypopnea ?? desaturation, hypopnea is null ? "desaturation" : "hypopnea") is not { } index)
        {
            return null;
        }

        if (hypopnea is not null && desaturation is not null)
        {
            bag.Add(CaseDiagnostics.IndexRuleTwice(index.Type.Index, desaturation.Span));
        }

        Add(index.Printed, perHour, facts);
        Add(index.Events, events, facts);
        Add(index.Time, over, facts);
        return index;
    }

    private void Add(FactDefinition definition, Node? node, List<Fact> facts)
    {
        if (node is not null && values.Read(definition, node, unitInKey: definition.Kind == FactKind.Number) is { } fact)
        {
            facts.Add(fact);
        }
    }

    private IndexDefinition? Find(ScalarNode name, ScalarNode? rule, string ruleKey)
    {
        var known = vocabulary.Indices.Select(index => index.Type.Index).Distinct(StringComparer.Ordinal).ToArray();
        if (!known.Contains(name.Text))
        {
            bag.Add(name.Text == "RDI"
                ? CaseDiagnostics.RdiAmbiguous(name.Span)
                : CaseDiagnostics.IndexUnknown(name.Text, NearestName.Of(name.Text, known), known, name.Span));
            return null;
        }

        var candidates = vocabulary.Indices.Where(index => index.Type.Index == name.Text).ToArray();
        var rules = candidates.Select(index => index.Type.Rule).ToArray();
        if (rule is null || ruleKey != RuleKey(name.Text))
        {
            bag.Add(CaseDiagnostics.IndexRuleMissing(name.Text, RuleKey(name.Text), rules, name.Span));
            return null;
        }

        var match = candidates.FirstOrDefault(index => Same(index.Type.Rule, rule.Text));
        if (match is null)
        {
            bag.Add(CaseDiagnostics.IndexRuleUnknown(name.Text, rule.Text, rules, rule.Span));
        }

        return match;
    }

    // `4%` and `4 %` are one rule.
    private static bool Same(string known, string written) =>
        known.Replace(" ", "", StringComparison.Ordinal) == written.Replace(" ", "", StringComparison.Ordinal);
}

using System.Globalization;
using Criteria.Core.Measures;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>Puts computed facts behind what they are computed from, and checks that they can be computed.</summary>
internal sealed partial class VocabularyReader
{
    // Missing or faulty parts leave a run of no nights, which is reported with the inputs.
    private static RunOfNights ReadRun(Fields computed)
    {
        int Nights(string key) => computed.RequiredScalar(key) is { } node
            && int.TryParse(node.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 0;

        var length = Nights("run");
        var within = Nights("within");
        var text = computed.RequiredText("at_least");
        return QuantityReader.Read(text, out var atLeast, out _, out _) == QuantityFault.None && atLeast!.Dimension == Dimension.Duration
            ? new RunOfNights(length, atLeast.Base, within)
            : new RunOfNights(0, 0, within);
    }

    // A computed fact may rest only on facts defined before it, so that one pass computes all; night facts make it a night fact.
    private void CheckComputations()
    {
        var ordered = new List<Located>();
        var done = new HashSet<string>(StringComparer.Ordinal);
        var waiting = _facts;
        while (waiting.Count > 0)
        {
            var ready = new List<Located>();
            var later = new List<Located>();
            foreach (var fact in waiting)
            {
                (Inputs(fact.Definition).All(done.Contains) ? ready : later).Add(fact);
            }

            if (ready.Count == 0)
            {
                ReportUncomputable(waiting, done);
                return;
            }

            foreach (var fact in ready)
            {
                done.Add(fact.Definition.Id);
                ordered.Add(fact with { Definition = WithScopeOfInputs(fact.Definition, ordered) });
            }

            waiting = later;
        }

        _facts.Clear();
        _facts.AddRange(ordered);
    }

    private void CheckInputs()
    {
        var readable = _facts.Where(pair => pair.Definition.Scope != FactScope.Record)
            .GroupBy(pair => pair.Definition.Id, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.First().Definition, StringComparer.Ordinal);
        foreach (var (definition, span) in _facts.Where(pair => pair.Definition.Computed is not null))
        {
            // What names no fact at all was reported as such.
            if (Inputs(definition).All(_ids.Contains)
                && MeasureInputs.Fault(definition, readable.GetValueOrDefault, id => _indices.Any(index => index.Rate.Id == id), HasAttribute) is { } fault)
            {
                bag.Add(VocabularyDiagnostics.BadComputation(definition.Id, fault, span));
            }
        }
    }

    private bool HasAttribute(string list, string kind, string name, FactKind form) =>
        _records.Any(record => record.At == list && record.Kinds.Contains(kind))
        && _facts.Any(pair => pair.Definition.At == $"{list}.{name}" && pair.Definition.Kind == form);

    private void ReportUncomputable(List<Located> waiting, HashSet<string> done)
    {
        foreach (var (definition, span) in waiting)
        {
            var missing = Inputs(definition).FirstOrDefault(input => !_ids.Contains(input));
            var why = missing is null
                ? $"it rests on `{Inputs(definition).First(input => !done.Contains(input))}`, which rests on it"
                : $"there is no fact `{missing}`" + (NearestName.Of(missing, _ids) is { } near ? $", did you mean `{near}`?" : "");
            bag.Add(VocabularyDiagnostics.BadComputation(definition.Id, why, span));
        }
    }

    private static FactDefinition WithScopeOfInputs(FactDefinition fact, List<Located> ordered)
    {
        if (fact.At is not null || fact.Scope == FactScope.Night
            || !Inputs(fact).Any(input => ordered.Any(pair => pair.Definition.Id == input && pair.Definition.Scope == FactScope.Night)))
        {
            return fact;
        }

        return fact.InScope(FactScope.Night);
    }

    private static IEnumerable<string> Inputs(FactDefinition fact) => fact.Computed switch
    {
        null => [],
        { Measure: MeasureNames.OnlyStartOf or MeasureNames.BestRun } => [],
        { Measure: MeasureNames.NightWith } words => words.From.Take(1),
        var computed => computed.From,
    };
}

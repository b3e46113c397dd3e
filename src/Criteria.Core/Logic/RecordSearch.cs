using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>What is looked for in a list of documents or therapy trials: kinds, and tests of attributes.</summary>
/// <remarks>What is listed may fit, may not, or may leave it open; what is not listed is open until the list is closed.</remarks>
internal sealed class RecordSearch(RecordDefinition list, ImmutableArray<string> kinds, ImmutableArray<AttributeTest> tests)
{
    public RecordDefinition List { get; } = list;

    public ImmutableArray<string> Kinds { get; } = kinds;

    public ImmutableArray<AttributeTest> Tests { get; } = tests;

    public string KindWords => string.Join(" or ", Kinds);

    public string MissingId => $"{List.At}: {KindWords}";

    public string Text => Tests.IsEmpty ? KindWords : $"{KindWords} ({string.Join(", ", Tests.Select(test => test.Text))})";

    /// <summary>Whether some record fits and, if it does, whatever else is asked of it holds.</summary>
    public Truth Any(View view, Func<CaseRecord, Truth>? more = null)
    {
        var records = view.Facts.RecordsOf(List);
        var truth = records.ClosedBy is null ? Truth.Unknown : Truth.NotMet;
        foreach (var item in records.Items)
        {
            if (Kinds.Contains(item.Kind))
            {
                var fits = Fits(item, view);
                truth = Truths.Or(truth, more is null || fits == Truth.NotMet ? fits : Truths.And(fits, more(item)));
            }
        }

        return truth;
    }

    public IEnumerable<CaseRecord> Candidates(View view) => view.Facts.RecordsOf(List).Items.Where(item => Kinds.Contains(item.Kind));

    public Truth Fits(CaseRecord item, View view)
    {
        var truth = Truth.Met;
        foreach (var test in Tests)
        {
            truth = Truths.And(truth, test.Evaluate(item[test.Attribute], view));
        }

        return truth;
    }

    /// <summary>What of a record that may fit is still to be asked.</summary>
    public void AddMissing(CaseRecord item, View view, MissingFacts missing)
    {
        foreach (var test in Tests.Where(test => test.Evaluate(item[test.Attribute], view) == Truth.Unknown))
        {
            if (item[test.Attribute] is { IsKnown: true, Value: not YesNoValue })
            {
                test.AddMissing(item[test.Attribute], view, missing);
            }
            else
            {
                missing.Add(Attribute(item, test.Attribute));
            }
        }
    }

    /// <summary>A record that fits, or null where none can be made up from what is known.</summary>
    public CaseRecord? Fitting(FactSet facts)
    {
        var attributes = List.Attributes.Select(Fact.Absent).ToArray();
        foreach (var test in Tests)
        {
            if (test.Fitting(facts) is not { } fact)
            {
                return null;
            }

            // A date says that there is one: it need not be said as yes.
            if (fact.Value is not YesNoValue { Yes: true } || !attributes[test.Attribute.Slot].IsKnown)
            {
                attributes[test.Attribute.Slot] = fact;
            }
        }

        return new CaseRecord(MissingId, Kinds[0], [.. attributes]);
    }

    public void AddReads(Reads reads)
    {
        reads.Records.Add(List);
        foreach (var test in Tests)
        {
            test.AddReads(reads);
        }
    }

    public static MissingFact Attribute(CaseRecord item, FactDefinition attribute) =>
        new($"{item.Id}: {attribute.Id}", $"{attribute.Label} of {item.Id}", attribute.Ask, attribute.Owner);
}

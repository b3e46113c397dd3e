using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Criteria.Engine.Settling;
using NRules.RuleModel;

namespace Criteria.Engine.Network;

/// <summary>What the rule of one criterion does: NRules decides when, this decides what.</summary>
internal sealed class CriterionRule(Criterion criterion, Settler settler)
{
    private const string LinkedFinding = "finding";

    private readonly bool _maySettle = settler.MaySettle(criterion);

    /// <summary>Everything the criterion reads, to be compared: the rule fires again only when it changed.</summary>
    public object Key(Subject subject, FindingFact[] upstream)
    {
        var parts = new List<object>(criterion.ReadsFacts.Length + criterion.ReadsRecords.Length + upstream.Length);
        AddTo(parts, subject, criterion.ReadsFacts, criterion.ReadsRecords);
        foreach (var finding in upstream)
        {
            parts.Add(finding.Finding.Conclusion);

            // Whether open findings settle it together lies in what they rest on.
            if (_maySettle && Settler.IsOpen(finding.Finding.Conclusion.Verdict))
            {
                var reach = settler.ReachOf(finding.Criterion);
                AddTo(parts, subject, reach.Facts, reach.Records);
            }
        }

        return new ReadKey(parts);
    }

    /// <summary>Evaluates the criterion and links its finding.</summary>
    public void Fire(IContext context, Subject subject, FindingFact[] upstream)
    {
        var view = subject.View;
        foreach (var finding in upstream)
        {
            view[finding.Criterion] = finding.Finding.Conclusion;
        }

        var made = FindingBuilder.Build(criterion, view, subject.Night, settler);
        view.Forget(criterion.Index);
        foreach (var finding in upstream)
        {
            view.Forget(finding.Criterion);
        }

        subject.Table.Put(criterion, subject.Number, made);
        var fact = Shelves.Put(made, subject.Number);
        if (context.GetLinked(LinkedFinding) is null)
        {
            context.InsertLinked(LinkedFinding, fact);
        }
        else
        {
            context.UpdateLinked(LinkedFinding, fact);
        }
    }

    private static void AddTo(List<object> parts, Subject subject, ImmutableArray<int> facts, ImmutableArray<RecordDefinition> records)
    {
        foreach (var slot in facts)
        {
            parts.Add(subject.Facts[slot]);
        }

        foreach (var list in records)
        {
            parts.Add(subject.Facts.RecordsOf(list));
        }
    }

    private sealed class ReadKey(List<object> parts) : IEquatable<ReadKey>
    {
        private readonly List<object> _parts = parts;

        public bool Equals(ReadKey? other)
        {
            if (other is null || other._parts.Count != _parts.Count)
            {
                return false;
            }

            for (var i = 0; i < _parts.Count; i++)
            {
                var same = (_parts[i], other._parts[i]) switch
                {
                    (Conclusion left, Conclusion right) => left.SameAs(right),
                    (RecordList left, RecordList right) => ReferenceEquals(left, right) || SameRecords(left, right),
                    var (left, right) => left.Equals(right),
                };
                if (!same)
                {
                    return false;
                }
            }

            return true;
        }

        public override bool Equals(object? obj) => Equals(obj as ReadKey);

        public override int GetHashCode() => _parts.Count;

        private static bool SameRecords(RecordList left, RecordList right) =>
            left.ClosedBy == right.ClosedBy && left.Items.Length == right.Items.Length
            && left.Items.Zip(right.Items).All(pair => pair.First.Id == pair.Second.Id && pair.First.Kind == pair.Second.Kind
                && pair.First.Attributes.SequenceEqual(pair.Second.Attributes));
    }
}

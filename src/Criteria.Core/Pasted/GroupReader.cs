using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>Says what the figures of a group may mean, or why they are left out.</summary>
internal sealed class GroupReader(string file, IReadOnlyList<string> lines, Vocabulary vocabulary, ValueForms forms)
{
    public List<PastedValue> Values { get; } = [];

    public List<PastedLeftOut> LeftOut { get; } = [];

    public void Read(Group group)
    {
        var doubts = new List<string>(group.Doubts);
        var label = group.Label.ToList();
        var facts = Facts(label, doubts);
        Item[] beside = [.. label, .. group.Tail];
        var units = beside.Where(item => item.Kind == ItemKind.Unit && !item.Units.IsEmpty).SelectMany(item => item.Units).ToArray();
        if (label.Any(item => item.Kind == ItemKind.Aside))
        {
            LeaveOut(group, group.Figures[0], Doubts.SetAside);
            return;
        }

        AddIf(doubts, beside.Any(item => item.Kind == ItemKind.Unknown), Doubts.Unknown);
        AddIf(doubts, group.Tail.Any(item => item.Kind is ItemKind.Aside), Doubts.Aside);
        AddIf(doubts, group.Tail.Any(item => item.Kind is ItemKind.Rule or ItemKind.Name), Doubts.SeveralNames);
        AddIf(doubts, group.Figures.Where((item, place) => item.Fault is not null && !(place > 0 && group.Tail.Any(other => other.Kind == ItemKind.Border && other.End <= item.Start && other.Start >= group.Figures[place - 1].End))).Any(), Doubts.SeveralFigures);
        var fitting = group.Figures.Select(figure => (Figure: figure, Read: Readings(facts, figure, units, group.Line))).Where(one => one.Read.Facts.Count > 0).ToArray();
        if (fitting.Length == 0)
        {
            LeaveOut(group, group.Figures[0], group.Figures[0].Fault ?? Doubts.Fits);
            return;
        }

        var taken = new List<Fact>();
        foreach (var (figure, read) in fitting)
        {
            var others = fitting.Where(one => one.Figure != figure).SelectMany(one => one.Read.Facts).Where(other => read.Facts.Any(fact => fact.Definition == other.Definition)).ToArray();
            if (others.Length > 0 && read.Facts.All(fact => taken.Any(other => other.Definition == fact.Definition && other.Value == fact.Value)))
            {
                continue;
            }

            var own = doubts.ToList();
            AddIf(own, others.Any(other => !read.Facts.Any(fact => fact.Definition == other.Definition && fact.Value == other.Value)), Doubts.SeveralFigures);
            AddIf(own, read.UnitMissing, Doubts.UnitMissing);
            AddIf(own, read.Implausible, Doubts.Implausible);
            AddIf(own, units.Length > 0 && !units.Any(unit => read.Facts.Any(fact => fact.Definition.Unit.Dimension == unit.Dimension)), Doubts.UnitDiffers);
            own.AddRange(read.Facts.Select(fact => fact.Definition.PrintedDoubt).OfType<string>());
            taken.AddRange(read.Facts);
            Values.Add(new PastedValue(Place(group.Line, figure), HiddenSigns.Spaced(lines[group.Line]), Words(group, figure), group.Night,
                [.. read.Facts.Select(fact => new PastedReading(fact))], [.. own.Distinct()]));
        }
    }

    private (List<Fact> Facts, bool UnitMissing, bool Implausible) Readings(IReadOnlyList<FactDefinition> facts, Item figure, Unit[] units, int line)
    {
        var origin = new Provenance(OriginKind.Document, $"pasted text, line {line + 1}");
        var read = facts.Select(fact => forms.Of(fact, figure, units, origin)).Where(one => one.Facts.Count > 0).ToArray();
        return ([.. read.SelectMany(one => one.Facts)], read.Any(one => one.UnitMissing), read.Any(one => one.Implausible));
    }

    // What the label names, narrowed by rule and denominator. What serves for that is taken out of the label.
    private List<FactDefinition> Facts(List<Item> label, List<string> doubts)
    {
        var time = Denominator(label);
        var names = label.Where(item => item.Kind == ItemKind.Name && item != time).ToArray();
        AddIf(doubts, names.Length > 1, Doubts.SeveralNames);
        var facts = names.SelectMany(name => name.Facts).Distinct().ToList();
        if (time is not null)
        {
            facts.RemoveAll(fact => vocabulary.Indices.FirstOrDefault(index => index.Printed == fact) is { } index && !time.Facts.Any(other => index.Rate.Computed!.From.Contains(other.Id)));
        }

        var rules = label.Where(item => item.Kind == ItemKind.Rule).Select(item => item.Numbers[0].Digits).Distinct().ToArray();
        AddIf(doubts, rules.Length > 1 || (rules.Length == 1 && facts.Any(fact => fact.Index is null)), Doubts.SeveralRules);
        if (rules.Length > 0)
        {
            facts.RemoveAll(fact => fact.Index is { } index && !rules.Contains(ItemReader.RuleNumber(index)));
        }

        // `3 % or arousal`: the other words of a rule.
        foreach (var word in label.Where(item => item.Kind == ItemKind.Unknown && facts.Any(fact => Has(fact, item.Text))).ToArray())
        {
            facts.RemoveAll(fact => fact.Index is not null && !Has(fact, word.Text));
            label.Remove(word);
        }

        label.RemoveAll(item => item.Kind == ItemKind.Unknown && rules.Length > 0 && item.Text is "or" or "≥" or ">");
        return facts;
    }

    private static bool Has(FactDefinition fact, string word) => word.Length > 2 && fact.Index?.Rule.Split(' ').Contains(word, StringComparer.OrdinalIgnoreCase) == true;

    // `per hour of monitoring time`: the name of a time behind a rate.
    private static Item? Denominator(List<Item> label) => label.Where((item, place) => item.Kind == ItemKind.Name && place > 1
        && label[..place].LastOrDefault(before => before.Kind != ItemKind.Filler) is { Kind: ItemKind.Unit } unit && unit.Units.Any(one => one.Dimension == Dimension.Rate)).FirstOrDefault();

    private void LeaveOut(Group group, Item figure, string why) => LeftOut.Add(new PastedLeftOut(Place(group.Line, figure), Words(group, figure), why));

    // Only words of the vocabulary: any other may be a name.
    private string Words(Group group, Item figure)
    {
        var known = group.Label.Where(item => item.Kind is ItemKind.Name or ItemKind.Rule).Select(item => item.Kind == ItemKind.Name ? string.Join(" / ", item.Facts.Select(fact => fact.Index?.Index ?? fact.Label).Distinct()) : $"{item.Numbers[0].Digits} %");
        return $"{string.Join(' ', known.Distinct())}: {lines[group.Line][figure.Start..figure.End]}";
    }

    private SourceSpan Place(int line, Item figure) => new(file, line + 1, figure.Start + 1, line + 1, figure.End + 1);

    private static void AddIf(List<string> doubts, bool condition, string doubt)
    {
        if (condition)
        {
            doubts.Add(doubt);
        }
    }
}

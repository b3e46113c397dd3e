using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads the windows of a ruleset, once its criteria are bound.</summary>
internal sealed class WindowReader(RulesetFile file, IReadOnlyDictionary<string, Shape> shapes, BoundParts?[] parts, Vocabulary vocabulary, SourceRegister sources, DiagnosticBag bag)
{
    private static readonly Dictionary<string, WindowEnds> EndWords = new(StringComparer.Ordinal)
    {
        ["both"] = WindowEnds.Both,
        ["first"] = WindowEnds.First,
        ["last"] = WindowEnds.Last,
    };

    /// <summary>The windows, each with the index of its criterion.</summary>
    /// <param name="criterionAt">The criteria, which are made after their windows.</param>
    public List<(int Criterion, Window Window)> Read(Func<int, Criterion> criterionAt)
    {
        var windows = new List<(int, Window)>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var node in file.Windows)
        {
            if (Fields.Of(node, "a window", bag) is { } fields && ReadOne(fields, names, criterionAt) is { } read)
            {
                windows.Add(read);
            }
        }

        return windows;
    }

    private (int, Window)? ReadOne(Fields fields, HashSet<string> names, Func<int, Criterion> criterionAt)
    {
        var id = fields.RequiredScalar("id");
        var of = fields.RequiredScalar("of");
        var title = fields.RequiredText("title");
        var from = fields.Node("from");
        var planned = fields.Scalar("planned");
        var ends = EndWords[fields.Word("days", "a choice of days", EndWords.Keys) ?? "both"];
        var who = fields.Text("who");
        var note = fields.Text("note");
        var conditions = new ConditionReader(new BindingContext { Vocabulary = vocabulary, Shapes = shapes, Sources = sources, Ruleset = file.Ruleset, Bag = bag });
        var appliesNode = fields.Node("applies_when");
        var applies = appliesNode is null ? null : conditions.Read(appliesNode);
        var overNode = fields.Node("over_when");
        var over = overNode is null ? Constant.Never : conditions.Read(overNode);
        fields.Done();
        if (id is null || of is null)
        {
            return null;
        }

        Names.Check(id, bag);
        if (!names.Add(id.Text))
        {
            bag.Add(RulesetDiagnostics.Twice("window", id.Text, id.Span));
        }

        if (!shapes.TryGetValue(file.ReplacedBy.GetValueOrDefault(of.Text, of.Text), out var shape) || shape.Ruleset.Id != file.Ruleset.Id)
        {
            bag.Add(RulesetDiagnostics.WindowOfNothing(of.Text, file.Ruleset.Id, NearestName.Of(of.Text, file.Criteria.Select(RulesetFile.IdOf)), of.Span));
            return null;
        }

        if ((from is null) == (planned is null))
        {
            bag.Add(RulesetDiagnostics.WindowWithoutDate(id.Text, id.Span));
            return null;
        }

        // Whatever is wrong with the criterion was reported there.
        var index = shape.Reference.Index;
        if (parts[index] is not { } bound || (appliesNode is not null && applies is null) || over is null)
        {
            return null;
        }

        var dates = from is not null ? new WindowDatesReader(vocabulary, bag).Counted(from, id, bound) : Planned(planned!, id, bound, () => criterionAt(index));
        return dates is null ? null : (index, new Window(dates)
        {
            Id = id.Text,
            Title = title,
            Who = who ?? bound.Owner ?? "",
            Note = note,
            Ends = ends,
            AppliesWhen = applies ?? bound.AppliesWhen,
            OverWhen = over,
            IsValidity = planned is not null,
        });
    }

    // The criterion is tried with other days: one that reads other findings would see them as they were.
    private TriedDates? Planned(ScalarNode name, ScalarNode id, BoundParts bound, Func<Criterion> criterion)
    {
        var dates = bound.Reads.Dates.SelectMany(date => new[] { date.Date, date.Anchor }).OfType<FactDefinition>().Where(date => date.Scope != FactScope.Record).Distinct().ToArray();
        if (dates.FirstOrDefault(date => date.Id == name.Text) is not { Computed: null } planned)
        {
            var known = dates.Where(date => date.Computed is null).Select(date => date.Id).ToArray();
            bag.Add(RulesetDiagnostics.WindowNotCounted(id.Text, name.Text, bound.Shape.Reference.Id, NearestName.Of(name.Text, known), known, name.Span));
            return null;
        }

        var reads = new Reads();
        bound.Body.AddReads(reads);
        foreach (var question in bound.Silent)
        {
            question.When.AddReads(reads);
        }

        if (reads.Criteria.Count > 0)
        {
            bag.Add(RulesetDiagnostics.WindowReadsFindings(id.Text, bound.Shape.Reference.Id, name.Span));
            return null;
        }

        return new TriedDates(planned, criterion);
    }
}

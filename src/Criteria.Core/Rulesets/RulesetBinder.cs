using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Binds the criteria of a selection of rulesets to one another, and puts them in an order without loops.</summary>
internal sealed class RulesetBinder(Vocabulary vocabulary, SourceRegister sources, PublishedFacts? facts, DiagnosticBag bag)
{
    /// <summary>The bound rules, or null (and every diagnostic).</summary>
    /// <param name="files">The selection.</param>
    /// <param name="leftOut">What was taken out of the selection before.</param>
    public RulesInForce? Bind(IReadOnlyList<RulesetFile> files, ImmutableArray<Ruleset> leftOut)
    {
        var ordered = files.OrderBy(file => file.Ruleset.Order).ThenBy(file => file.Ruleset.Id, StringComparer.Ordinal).ToArray();
        var shapes = ShapeReader.Read(ordered, bag);
        CheckNames(shapes);
        CheckGradesNamed(ordered, shapes);
        if (bag.HasErrors)
        {
            return null;
        }

        var parts = new BoundParts?[shapes.Count];
        foreach (var file in ordered)
        {
            var reader = new CriterionReader(file, shapes, vocabulary, sources, facts, bag);
            foreach (var node in file.Criteria)
            {
                var shape = shapes[RulesetFile.IdOf(node)];
                parts[shape.Reference.Index] = reader.Read(shape);
            }
        }

        // A window tries the days of its criterion, which is made last of all.
        Criterion[] made = [];
        var windows = ordered.SelectMany(file => new WindowReader(file, shapes, parts, vocabulary, sources, bag).Read(index => made[index])).ToLookup(window => window.Criterion, window => window.Window);
        var bound = parts.OfType<BoundParts>().ToArray();
        if (bag.HasErrors || bound.Length != parts.Length || Order(bound) is not { } order)
        {
            return null;
        }

        var rules = Finish(ordered, bound, windows, order, leftOut);
        made = [.. rules.Criteria];
        return rules;
    }

    private void CheckNames(Dictionary<string, Shape> shapes)
    {
        foreach (var shape in shapes.Values)
        {
            if (vocabulary.Find(shape.Reference.Id) is not null)
            {
                bag.Add(RulesetDiagnostics.NameTaken(shape.Reference.Id, "a fact", shape.Span));
            }

            if (shape.Ruleset.Settings.Any(setting => setting.Name == shape.Reference.Id))
            {
                bag.Add(RulesetDiagnostics.NameTaken(shape.Reference.Id, "a setting", shape.Span));
            }
        }

        foreach (var ruleset in shapes.Values.Select(shape => shape.Ruleset).DistinctBy(ruleset => ruleset.Id))
        {
            foreach (var setting in ruleset.Settings.Where(setting => vocabulary.Find(setting.Name) is not null))
            {
                bag.Add(RulesetDiagnostics.NameTaken(setting.Name, "a fact", SourceSpan.StartOf(shapes.Values.First(shape => shape.Ruleset.Id == ruleset.Id).Span.File)));
            }
        }
    }

    // A figure or a word beside a grade that no criterion gives would never be seen.
    private void CheckGradesNamed(RulesetFile[] files, Dictionary<string, Shape> shapes)
    {
        foreach (var file in files)
        {
            var known = shapes.Values.Where(shape => shape.Ruleset.Id == file.Ruleset.Id && shape.Kind == "grade").SelectMany(shape => shape.Bands).Distinct(StringComparer.Ordinal).ToArray();
            var named = file.NightGrades.Select(grade => (Grade: grade, Of: NightFigureReader.Key)).Concat(file.PlainGrades.Select(grade => (Grade: grade, Of: PlainGradeReader.Key)));
            foreach (var (grade, of) in named.Where(pair => !known.Contains(pair.Grade.Text, StringComparer.Ordinal)))
            {
                bag.Add(RulesetDiagnostics.UnknownWord(grade.Text, of, NearestName.Of(grade.Text, known), known, grade.Span));
            }
        }
    }

    // Depth first; a criterion met again while it is still open closes a loop.
    private List<int>? Order(BoundParts[] parts)
    {
        var order = new List<int>();
        var state = new int[parts.Length];
        var path = new List<int>();
        var loops = false;

        void Visit(int index)
        {
            if (state[index] == 2)
            {
                return;
            }

            if (state[index] == 1)
            {
                var loop = path.SkipWhile(item => item != index).Append(index).Select(item => parts[item].Shape.Reference.Id);
                bag.Add(RulesetDiagnostics.Cycle(loop, parts[index].Shape.Span));
                loops = true;
                return;
            }

            state[index] = 1;
            path.Add(index);
            foreach (var next in parts[index].Reads.Criteria)
            {
                Visit(next);
            }

            path.RemoveAt(path.Count - 1);
            state[index] = 2;
            order.Add(index);
        }

        for (var index = 0; index < parts.Length; index++)
        {
            Visit(index);
        }

        return loops ? null : order;
    }

    private RulesInForce Finish(RulesetFile[] files, BoundParts[] parts, ILookup<int, Window> windows, List<int> order, ImmutableArray<Ruleset> leftOut)
    {
        var perNight = new bool[parts.Length];
        var strata = new int[parts.Length];
        foreach (var index in order)
        {
            var reads = parts[index].Reads;
            perNight[index] = reads.Facts.Any(slot => vocabulary.Facts[slot].Scope == FactScope.Night) || reads.Criteria.Any(upstream => perNight[upstream]);
            strata[index] = reads.Criteria.Count == 0 ? 0 : reads.Criteria.Max(upstream => strata[upstream]) + 1;
        }

        var criteria = parts.Select((part, index) => new Criterion
        {
            Id = part.Shape.Reference.Id,
            Title = part.Shape.Reference.Title,
            Ruleset = part.Shape.Ruleset,
            Index = index,
            AppliesWhen = part.AppliesWhen,
            Body = part.Body,
            Silent = part.Silent,
            Cautions = part.Cautions,
            ReadFirst = part.ReadFirst,
            Refuses = part.Refuses,
            Impossible = part.Impossible,
            Shown = part.Shown,
            Owner = part.Owner,
            Ask = part.Ask,
            Why = part.Why,
            Plain = part.Plain,
            RestsOn = part.RestsOn,
            Cites = part.Cites,
            PerNight = perNight[index],
            ReadsFacts = [.. part.Reads.Facts],
            ReadsRecords = [.. part.Reads.Records],
            Bounds = [.. part.Reads.Bounds.Distinct()],
            FactBounds = [.. part.Reads.FactBounds.Distinct()],
            DateBounds = [.. part.Reads.Dates],
            Sought = [.. part.Reads.Sought],
            ReadsCriteria = [.. part.Reads.Criteria],
            Windows = [.. windows[index]],
        });
        return new RulesInForce(vocabulary, [.. files.Select(file => file.Ruleset)], leftOut, [.. criteria], [.. order], [.. strata]);
    }
}

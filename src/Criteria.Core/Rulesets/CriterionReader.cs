using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>A criterion whose conditions are bound, before it is known what it reads in all.</summary>
internal sealed record BoundParts(
    Shape Shape, Predicate AppliesWhen, Body Body, ImmutableArray<SilentQuestion> Silent, ImmutableArray<Caution> Cautions,
    Sentence? ReadFirst, bool Refuses, bool Impossible, Shown Shown, string? Owner, string? Ask, string? Why, string? Plain, ImmutableArray<string> RestsOn,
    ImmutableArray<Citation> Cites, Reads Reads);

/// <summary>Reads one criterion.</summary>
internal sealed class CriterionReader(
    RulesetFile file, IReadOnlyDictionary<string, Shape> shapes, Vocabulary vocabulary, SourceRegister sources, PublishedFacts? facts, DiagnosticBag bag)
{
    private static readonly Dictionary<string, Shown> ShownWords = new(StringComparer.Ordinal)
    {
        ["always"] = Shown.Always,
        ["at the top"] = Shown.AtTheTop,
        ["when met"] = Shown.WhenMet,
        ["when it applies"] = Shown.WhenItApplies,
        ["in the trace"] = Shown.InTheTrace,
    };

    private static readonly string[] BodyKeys = ["when", "grade", "score", "option"];

    public BoundParts? Read(Shape shape)
    {
        var context = new BindingContext { Vocabulary = vocabulary, Shapes = shapes, Sources = sources, Ruleset = file.Ruleset, Bag = bag };
        var fields = Fields.Of(shape.Node, $"the criterion `{shape.Reference.Id}`", bag)!;
        fields.RequiredText("id");
        fields.RequiredText("title");
        if (fields.Node("index") is { } index)
        {
            context.Indices = IndexTypes(index);
        }

        var conditions = new ConditionReader(context);
        var applies = fields.Node("applies_when") is { } appliesNode ? conditions.Read(appliesNode) : Constant.Always;
        var body = ReadBody(fields, shape, context, conditions);
        var silent = fields.List("silent").Select(node => ReadSilent(node, shape, conditions)).ToArray();
        var cautions = fields.List("cautions").Select(node => ReadCaution(node, conditions)).ToArray();
        var readFirst = fields.Scalar("read_first") is { } sentence ? ReadSentence(sentence, context) : null;
        var refuses = fields.Flag("refuses");
        var impossible = fields.Flag("impossible");
        var shown = ShownWords.GetValueOrDefault(fields.Word("shown", "a way of showing", ShownWords.Keys) ?? "always");
        var owner = fields.Text("owner");
        var ask = fields.Text("ask");
        var why = fields.Text("why");
        var plain = fields.Text("plain");
        var restsOn = fields.Words("rests_on").Where(row => facts?.Check(row, bag) ?? true).Select(row => row.Text).ToImmutableArray();
        var citeNodes = fields.Words("cites").ToArray();
        var cites = CitationReader.Read(citeNodes, sources, bag);
        if (citeNodes.Length == 0)
        {
            bag.Add(RulesetDiagnostics.NoCitation(shape.Reference.Id, shape.Span));
        }

        fields.Done();
        if (applies is null || body is null || silent.Contains(null) || cautions.Contains(null))
        {
            return null;
        }

        var parts = new BoundParts(shape, applies, body, [.. silent!], [.. cautions!], readFirst, refuses, impossible, shown, owner, ask, why, plain, restsOn, cites, new Reads());
        AddReads(parts);
        return parts;
    }

    private static void AddReads(BoundParts parts)
    {
        parts.AppliesWhen.AddReads(parts.Reads);
        parts.Body.AddReads(parts.Reads);
        foreach (var question in parts.Silent)
        {
            question.When.AddReads(parts.Reads);
        }

        foreach (var caution in parts.Cautions)
        {
            caution.When.AddReads(parts.Reads);
        }

        foreach (var (_, fact) in parts.ReadFirst?.Facts ?? [])
        {
            parts.Reads.Facts.Add(fact.Slot);
        }

        foreach (var (_, criterion) in parts.ReadFirst?.Criteria ?? [])
        {
            if (criterion.Index != parts.Shape.Reference.Index)
            {
                parts.Reads.Criteria.Add(criterion.Index);
            }
        }
    }

    private Body? ReadBody(Fields fields, Shape shape, BindingContext context, ConditionReader conditions)
    {
        var when = fields.Node("when");
        var grade = fields.Node("grade");
        var score = fields.Node("score");
        var option = fields.Node("option");
        var count = BodyKeys.Count(key => shape.Node[key] is not null);
        if (count != 1 && !(count == 2 && when is not null && option is not null))
        {
            bag.Add(RulesetDiagnostics.OneBody(shape.Reference.Id, shape.Span));
            return null;
        }

        if (grade is not null)
        {
            return new GradeReader(context).Read(grade);
        }

        if (score is not null)
        {
            return new ScoreReader(context, conditions).Read(score);
        }

        var condition = when is null ? Constant.Always : conditions.Read(when);
        if (option is not null)
        {
            return ReadOption(option, condition, conditions);
        }

        return condition is null ? null : new ConditionBody(condition);
    }

    private OptionBody? ReadOption(Node node, Predicate? when, ConditionReader conditions)
    {
        if (Fields.Of(node, "an option", bag) is not { } fields)
        {
            return null;
        }

        var offer = fields.RequiredText("offer");
        var pointsFor = fields.List("for").Select(item => ReadPoint(item, conditions)).ToArray();
        var pointsAgainst = fields.List("against").Select(item => ReadPoint(item, conditions)).ToArray();
        var strength = fields.RequiredText("strength");
        var certainty = fields.RequiredText("certainty");
        var carriedOutBy = ReadOffices(fields);
        fields.Done();
        return when is null || pointsFor.Contains(null) || pointsAgainst.Contains(null)
            ? null
            : new OptionBody(when, offer, [.. pointsFor!], [.. pointsAgainst!], strength, certainty) { CarriedOutBy = carriedOutBy };
    }

    // Whom a letter can go to: an office of another name would be missed by every letter.
    private ImmutableArray<string> ReadOffices(Fields fields)
    {
        var offices = fields.Words("carried_out_by").ToArray();
        var known = vocabulary.Record(Vocabulary.RecipientPlace)?.Kinds ?? [];
        foreach (var office in offices.Where(office => !known.Contains(office.Text)))
        {
            bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(office.Text), "a kind of recipient", NearestName.Of(office.Text, known), known, office.Span));
        }

        return [.. offices.Select(office => office.Text)];
    }

    private OptionPoint? ReadPoint(Node node, ConditionReader conditions)
    {
        if (Fields.Of(node, "a point for or against", bag) is not { } fields)
        {
            return null;
        }

        var when = fields.RequiredNode("when") is { } condition ? conditions.Read(condition) : null;
        var say = fields.RequiredText("say");
        fields.Done();
        return when is null ? null : new OptionPoint(when, say);
    }

    private SilentQuestion? ReadSilent(Node node, Shape shape, ConditionReader conditions)
    {
        if (Fields.Of(node, "a silent question", bag) is not { } fields)
        {
            return null;
        }

        var id = fields.RequiredText("id");
        var when = fields.RequiredNode("when") is { } condition ? conditions.Read(condition) : null;
        var question = fields.RequiredText("question");
        var readings = fields.Words("readings").Select(word => word.Text).ToImmutableArray();
        fields.Done();
        return when is null
            ? null
            : new SilentQuestion(id, when, question, readings, file.Answers.GetValueOrDefault((shape.Reference.Id, id)));
    }

    private Caution? ReadCaution(Node node, ConditionReader conditions)
    {
        if (node is ScalarNode { Text.Length: > 0 } text)
        {
            return new Caution(Constant.Always, text.Text);
        }

        if (Fields.Of(node, "a caution", bag) is not { } fields)
        {
            return null;
        }

        var when = fields.RequiredNode("when") is { } condition ? conditions.Read(condition, gapsAllowed: true) : null;
        var say = fields.RequiredText("say");
        fields.Done();
        return when is null ? null : new Caution(when, say);
    }

    private Sentence ReadSentence(ScalarNode node, BindingContext context)
    {
        var facts = ImmutableArray.CreateBuilder<(string, FactDefinition)>();
        var criteria = ImmutableArray.CreateBuilder<(string, CriterionReference)>();
        foreach (Match match in Sentence.Place().Matches(node.Text))
        {
            var name = match.Groups[1].Value;
            if (shapes.TryGetValue(name, out var shape))
            {
                criteria.Add((name, shape.Reference));
            }
            else if (context.Fact(name, node.Span) is { } fact)
            {
                facts.Add((name, fact));
            }
            else
            {
                context.ReportUnknown(name, node.Part(match.Index, match.Length));
            }
        }

        return new Sentence(node.Text, facts.ToImmutable(), criteria.ToImmutable());
    }

    private ImmutableArray<IndexType> IndexTypes(Node node)
    {
        var known = vocabulary.Facts.Select(fact => fact.Index).OfType<IndexType>().Distinct().ToArray();
        var types = ImmutableArray.CreateBuilder<IndexType>();
        foreach (var item in node is ListNode list ? list.Items : [node])
        {
            if (Fields.Of(item, "an index type", bag) is not { } fields)
            {
                continue;
            }

            var type = new IndexType(fields.RequiredText("index"), fields.RequiredText("rule"), fields.RequiredText("per"));
            fields.Done();
            if (known.Contains(type))
            {
                types.Add(type);
            }
            else
            {
                bag.Add(RulesetDiagnostics.UnknownIndexType(type.ToString(), known.Select(index => index.ToString()).Order(StringComparer.Ordinal), item.Span));
            }
        }

        return types.ToImmutable();
    }
}

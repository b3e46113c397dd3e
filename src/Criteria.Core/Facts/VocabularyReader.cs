using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Measures;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>Reads the files of <c>rulesets/vocabulary</c>; the format is that of <c>docs/vocabulary.md</c>.</summary>
internal sealed partial class VocabularyReader(DiagnosticBag bag)
{
    private static readonly Dictionary<string, FactKind> Kinds = new(StringComparer.Ordinal)
    {
        ["number"] = FactKind.Number,
        ["count"] = FactKind.Count,
        ["duration"] = FactKind.Duration,
        ["date"] = FactKind.Date,
        ["yes/no"] = FactKind.YesNo,
        ["choice"] = FactKind.Choice,
        ["text"] = FactKind.Text,
        ["durations"] = FactKind.Durations,
        ["code"] = FactKind.Code,
    };

    private static readonly string[] Owners =
    [
        "patient", "clinician", "ordering clinician", "interpreting physician", "scorer", "technologist", "dentist", "billing staff", "supplier",
    ];

    private const int MinutesInADay = 24 * 60;

    private readonly List<Located> _facts = [];
    private readonly List<FactGroup> _groups = [];
    private readonly List<(string At, string Label, ImmutableArray<string> Kinds, string? Identifies)> _records = [];
    private readonly List<IndexDefinition> _indices = [];
    private readonly List<CodeSet> _codeSets = [];
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly HashSet<string> _places = new(StringComparer.Ordinal);

    public Vocabulary? Read(IEnumerable<SourceFile> files)
    {
        var trees = files.OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file => TreeReader.Read(file.Name, file.Content.Span, bag)).OfType<Node>()
            .Select(tree => Fields.Of(tree, "a vocabulary file", bag)).OfType<Fields>().OrderBy(OrderOf).ToArray();

        // Records first: they say which places are attributes of a list.
        foreach (var fields in trees)
        {
            foreach (var record in fields.List("records"))
            {
                ReadRecord(record);
            }
        }

        foreach (var fields in trees)
        {
            foreach (var group in fields.List("groups"))
            {
                ReadGroup(group);
            }

            foreach (var set in fields.List("code_sets"))
            {
                ReadCodeSet(set);
            }

            foreach (var fact in fields.List("facts"))
            {
                ReadFact(fact);
            }

            foreach (var index in fields.List("indices"))
            {
                ReadIndex(index);
            }

            if (fields.Node("printed_words") is { } words)
            {
                ReadPrintedWords(words);
            }

            fields.Done();
        }

        CheckComputations();
        CheckInputs();
        CheckLimits();
        return bag.HasErrors ? null : Build();
    }

    // The order in which a template asks for the facts; files without one come last.
    private int OrderOf(Fields fields)
    {
        if (fields.Scalar("order") is not { } node)
        {
            return int.MaxValue;
        }

        if (int.TryParse(node.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var order))
        {
            return order;
        }

        bag.Add(ReadingDiagnostics.Expected("a whole number for `order`", node.Described, node.Span));
        return int.MaxValue;
    }

    private Vocabulary Build()
    {
        var facts = _facts.Select(pair => pair.Definition).ToArray();
        var records = _records.Select(record => new RecordDefinition(
            record.At, record.Label, record.Kinds,
            [.. facts.Where(fact => fact.Scope == FactScope.Record && Head(fact.At!) == record.At)], record.Identifies));
        return new Vocabulary([.. facts.Where(fact => fact.Scope != FactScope.Record)], [.. _groups], [.. records], [.. _indices], [.. _codeSets], _printedWords);
    }

    private void ReadRecord(Node node)
    {
        if (Fields.Of(node, "a record list", bag) is { } fields)
        {
            _records.Add((fields.RequiredText("at"), fields.RequiredText("label"), [.. fields.Words("kinds").Select(word => word.Text)], ReadIdentifies(fields)));
            fields.Done();
        }
    }

    private void ReadGroup(Node node)
    {
        if (Fields.Of(node, "a group", bag) is { } fields)
        {
            _groups.Add(new FactGroup(
                fields.RequiredText("at"), fields.RequiredText("label"), fields.Word("list", "a form of list", ["complete"]) is not null));
            fields.Done();
        }
    }

    private void ReadFact(Node node)
    {
        if (Fields.Of(node, "a fact", bag) is not { } fields)
        {
            return;
        }

        var id = fields.RequiredScalar("id");
        var kind = Kinds.GetValueOrDefault(fields.Word("kind", "a kind of fact", Kinds.Keys, required: true) ?? "text", FactKind.Text);
        var place = fields.Text("at");
        var scope = ScopeOf(place);
        var unit = ReadUnit(fields, kind);
        var computed = ReadComputation(fields);
        var isRecord = scope == FactScope.Record;
        var limits = fields.Words("not_above").ToArray();
        var definition = new FactDefinition
        {
            Id = id?.Text ?? "",
            At = place,
            Label = fields.RequiredText("label"),
            Kind = kind,
            Scope = scope,
            Unit = unit,
            Range = ReadRange(fields, "range", unit, required: kind is FactKind.Number or FactKind.Count or FactKind.Duration or FactKind.Durations),
            Plausible = ReadRange(fields, "plausible", unit, required: false),
            SharedAs = ReadRange(fields, "shared_as", unit, required: false),
            Identifies = ReadIdentifies(fields) ?? ByKind(kind),
            Choices = [.. fields.Words("choices").Select(word => word.Text)],
            System = fields.Text("system"),
            Rounded = fields.Flag("rounded"),
            IsFixed = fields.Flag("fixed"),
            AlsoYesNo = fields.Word("also", "another form", ["yes/no"]) is not null,
            Meaning = fields.RequiredText("meaning"),
            Owner = fields.Word("owner", "an owner", Owners, required: computed is null && !isRecord) ?? "",
            Ask = (computed is null && !isRecord ? fields.RequiredText("ask") : fields.Text("ask")) ?? "",
            Computed = computed,
            Index = fields.Node("measure_type") is { } type ? IndexTypeOf(type) : null,
            PrintedAs = ReadPrintedAs(fields),
            PrintedDoubt = fields.Text("printed_doubt"),
            NotAbove = [.. limits.Select(word => word.Text)],
        };
        fields.Done();
        Check(definition, id?.Span ?? fields.Map.Span);
        CheckPrinted(definition, fields.Map, limits);
        Add(definition, id?.Span ?? fields.Map.Span);
    }

    private static string? ReadIdentifies(Fields fields) => fields.Word("identifies", "a class of identifiers", IdentifierClasses.All);

    private static string? ByKind(FactKind kind) => kind switch
    {
        FactKind.Text => IdentifierClasses.FreeText,
        FactKind.Date => IdentifierClasses.Day,
        _ => null,
    };

    private void Check(FactDefinition fact, SourceSpan span)
    {
        if (fact.Kind == FactKind.Choice && fact.Choices.IsEmpty)
        {
            bag.Add(VocabularyDiagnostics.ChoicesMissing(fact.Id, span));
        }

        if ((fact.Kind == FactKind.Code) != (fact.System is not null))
        {
            bag.Add(VocabularyDiagnostics.SystemOfCodes(fact.Id, span));
        }

        if (fact.At is null && fact.Computed is null)
        {
            bag.Add(VocabularyDiagnostics.NoPlace(fact.Id, span));
        }

        if (fact is { Range: { } range, Plausible: { } plausible } && (plausible.Low < range.Low || plausible.High > range.High))
        {
            bag.Add(VocabularyDiagnostics.PlausibleOutsideRange(fact.Id, span));
        }
    }

    private void Add(FactDefinition definition, SourceSpan span)
    {
        if (definition.Id.Length == 0)
        {
            return;
        }

        if (!char.IsAsciiLetterLower(definition.Id[0]) || definition.Id.Any(c => !(char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '_' or '.')))
        {
            bag.Add(VocabularyDiagnostics.BadId(definition.Id, span));
        }

        // Night facts and attributes stand below the key of their list, never in its place.
        if (definition.At is { } place && (place.Split('.').Any(part => part.Length == 0) || (!place.Contains('.', StringComparison.Ordinal) && definition.Scope != FactScope.Case)))
        {
            bag.Add(VocabularyDiagnostics.BadPlace(place, span));
        }

        if (!_ids.Add(definition.Id))
        {
            bag.Add(VocabularyDiagnostics.Twice("fact", definition.Id, span));
        }

        if (definition.At is not null && !_places.Add(definition.At))
        {
            bag.Add(VocabularyDiagnostics.Twice("place", definition.At, span));
        }

        _facts.Add(new Located(definition, span));
    }

    private FactScope ScopeOf(string? place) => place is null ? FactScope.Case
        : Head(place) == Vocabulary.NightPlace ? FactScope.Night
        : _records.Any(record => record.At == Head(place)) ? FactScope.Record
        : FactScope.Case;

    private static string Head(string place) => place.Split('.')[0];

    private Unit ReadUnit(Fields fields, FactKind kind)
    {
        if (fields.Scalar("unit") is not { } node)
        {
            return kind is FactKind.Duration or FactKind.Durations ? Units.Minute : Units.One;
        }

        if (Units.Find(node.Text) is { } unit)
        {
            return unit;
        }

        bag.Add(VocabularyDiagnostics.UnknownUnit(node.Text, NearestName.Of(node.Text, Units.Symbols), node.Span));
        return Units.One;
    }

    private Interval? ReadRange(Fields fields, string key, Unit unit, bool required)
    {
        if (fields.Scalar(key) is not { } node)
        {
            if (required)
            {
                bag.Add(VocabularyDiagnostics.RangeMissing(fields.Map["id"] is ScalarNode id ? id.Text : "?", fields.Map.Span));
            }

            return null;
        }

        var ends = node.Text.Split(" to ");
        if (ends.Length != 2)
        {
            bag.Add(VocabularyDiagnostics.BadRange(node.Text, "it has not two ends", node.Span));
            return null;
        }

        if (QuantityReader.Read(ends[0], out var low, out _, out _) != QuantityFault.None
            || QuantityReader.Read(ends[1], out var high, out _, out _) != QuantityFault.None)
        {
            bag.Add(VocabularyDiagnostics.BadRange(node.Text, "an end is not a quantity", node.Span));
            return null;
        }

        if (low!.Dimension != unit.Dimension || high!.Dimension != unit.Dimension)
        {
            bag.Add(VocabularyDiagnostics.BadRange(node.Text, "an end has another dimension than the fact", node.Span));
            return null;
        }

        if (low.Base > high.Base)
        {
            bag.Add(VocabularyDiagnostics.BadRange(node.Text, "the low end is above the high end", node.Span));
            return null;
        }

        return Interval.Between(low.Base, high.Base);
    }

    private Computation? ReadComputation(Fields fields)
    {
        if (fields.Node("computed") is not { } node || Fields.Of(node, "`computed`", bag) is not { } computed)
        {
            return null;
        }

        var measure = computed.Word("measure", "a measure", MeasureNames.All, required: true);
        var from = computed.Words("from").Select(word => word.Text).ToImmutableArray();
        var run = measure == MeasureNames.BestRun ? ReadRun(computed) : null;
        computed.Done();
        return measure is null ? null : new Computation(measure, from, run);
    }

    private sealed record Located(FactDefinition Definition, SourceSpan Span);
}

using Criteria.Core.Measures;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>Reads indices: each is five facts, typed by name, rule and denominator.</summary>
internal sealed partial class VocabularyReader
{
    private IndexType? IndexTypeOf(Node node)
    {
        if (Fields.Of(node, "an index type", bag) is not { } fields)
        {
            return null;
        }

        var type = new IndexType(fields.RequiredText("index"), fields.RequiredText("rule"), fields.RequiredText("per"));
        fields.Done();
        return type;
    }

    private void ReadIndex(Node node)
    {
        if (Fields.Of(node, "an index", bag) is not { } fields)
        {
            return;
        }

        var idNode = fields.RequiredScalar("id");
        var id = idNode?.Text ?? "";
        var span = idNode?.Span ?? fields.Map.Span;
        var type = new IndexType(fields.RequiredText("index"), fields.RequiredText("rule"), fields.RequiredText("per"));
        var label = fields.RequiredText("label");
        var time = fields.RequiredText("time");
        var meaning = fields.RequiredText("meaning");
        var owner = fields.Word("owner", "an owner", Owners, required: true) ?? "";
        var ask = fields.RequiredText("ask");
        var range = ReadRange(fields, "range", Units.PerHour, required: true);
        var plausible = ReadRange(fields, "plausible", Units.PerHour, required: false);
        var printedAs = ReadPrintedAs(fields);
        var doubt = fields.Text("printed_doubt");
        fields.Done();

        FactDefinition Part(string suffix, string words, FactKind kind, Unit unit, Interval? within, string question, Computation? computed = null) => new()
        {
            Id = id + suffix,
            Label = label + words,
            Kind = kind,
            Scope = FactScope.Night,
            Unit = unit,
            Range = within,
            Plausible = suffix is "" or ".printed" ? plausible : null,
            Rounded = suffix == ".printed",
            Meaning = meaning,
            Owner = owner,
            Ask = question,
            Computed = computed,
            Index = suffix is ".events" or ".time" ? null : type,
            PrintedAs = suffix == ".printed" ? printedAs : [],
            PrintedDoubt = suffix == ".printed" ? doubt : null,
        };

        var rate = Part("", "", FactKind.Number, Units.PerHour, range, ask,
            new Computation(MeasureNames.EventRate, [id + ".events", id + ".time", id + ".printed", time]));
        var printed = Part(".printed", ", as printed", FactKind.Number, Units.PerHour, range, ask);
        var events = Part(".events", ", events", FactKind.Count, Units.One, Interval.Between(0, MostInADay(range)), $"How many events does the {label} count?");
        var duration = Part(".time", $", {type.Per}", FactKind.Duration, Units.Minute, Interval.Between(0, MinutesInADay), $"What time ({type.Per}) is the {label} divided by?");
        var counted = Part(".counted", ", events over time", FactKind.Number, Units.PerHour, range, ask,
            new Computation(MeasureNames.CountedRate, [id + ".events", id + ".time", time]));
        _indices.Add(new IndexDefinition(type, rate, printed, events, duration));
        foreach (var part in new[] { rate, printed, events, duration, counted })
        {
            Add(part, span);
        }
    }

    private static Ratio MostInADay(Interval? rate) => rate is { } range ? Ratio.Multiply(range.High, Ratio.Of(MinutesInADay, 60)) : 0;
}

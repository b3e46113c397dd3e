using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Reads one value of a case file as the vocabulary says.</summary>
internal sealed class ValueReader(Vocabulary vocabulary, DiagnosticBag bag)
{
    public const string UnknownWord = "unknown";
    public const string NotApplicableWord = "not applicable";

    private readonly List<(string Text, SourceSpan Span)> _pointers = [];

    /// <summary>Every <c>from</c> that was read, to be checked once the documents are known.</summary>
    public IReadOnlyList<(string Text, SourceSpan Span)> Pointers => _pointers;

    /// <summary>The fact, or null (and a diagnostic).</summary>
    /// <param name="fact">Its entry in the vocabulary.</param>
    /// <param name="node">The value, or a map of <c>value</c> and <c>from</c>.</param>
    /// <param name="unitInKey">Whether the key names the unit, so that a bare number will do.</param>
    public Fact? Read(FactDefinition fact, Node node, bool unitInKey = false)
    {
        var origin = Provenance.Entered;
        if (node is MapNode map)
        {
            if (Fields.Of(map, $"`{fact.Id}`", bag) is not { } fields)
            {
                return null;
            }

            var value = fields.RequiredNode("value");
            if (fields.Scalar("from") is { } from)
            {
                origin = new Provenance(OriginKind.Document, Wording.Quote(from.Text));
                _pointers.Add((from.Text, from.Span));
            }

            fields.Done();
            if (value is null)
            {
                return null;
            }

            node = value;
        }

        if (fact.Kind == FactKind.Durations && node is ListNode list)
        {
            return Fact.Known(fact, Nights(fact, list), origin);
        }

        if (node is not ScalarNode { Text.Length: > 0 } scalar)
        {
            bag.Add(ReadingDiagnostics.Expected($"one value for `{fact.Id}`", node.Described, node.Span));
            return null;
        }

        return scalar.Text switch
        {
            UnknownWord => new Fact(fact, FactState.Unknown, null, origin),
            NotApplicableWord => new Fact(fact, FactState.NotApplicable, null, origin),
            _ => Value(fact, scalar, unitInKey) is { } known ? Fact.Known(fact, known.Value, origin, known.Written) : null,
        };
    }

    // A time that cannot be read is reported and stays unknown.
    private DurationsValue Nights(FactDefinition fact, ListNode list)
    {
        var times = ImmutableArray.CreateBuilder<Ratio?>(list.Items.Count);
        foreach (var item in list.Items)
        {
            if (item is ScalarNode { Text.Length: > 0 } time)
            {
                times.Add(time.Text == UnknownWord ? null : Number(fact, time, unitInKey: false)?.Value is NumberValue { Range.Low: var minutes } ? minutes : null);
            }
            else
            {
                bag.Add(ReadingDiagnostics.Expected($"a time, or `{UnknownWord}`, for each night of `{fact.Id}`", item.Described, item.Span));
            }
        }

        return new DurationsValue(times.ToImmutable());
    }

    private (FactValue Value, string? Written)? Value(FactDefinition fact, ScalarNode node, bool unitInKey)
    {
        if (fact.AlsoYesNo && YesNoWords.Read(node.Text) is { } existing)
        {
            return (new YesNoValue(existing), null);
        }

        switch (fact.Kind)
        {
            case FactKind.Number or FactKind.Count or FactKind.Duration:
                return Number(fact, node, unitInKey);
            case FactKind.Date:
                return Dates.Read(node, bag) is { } date ? (new DateValue(date), null) : null;
            case FactKind.YesNo:
                if (YesNoWords.Read(node.Text) is { } yes)
                {
                    return (new YesNoValue(yes), null);
                }

                bag.Add(CaseDiagnostics.NotYesNo(fact, node.Text, node.Span));
                return null;
            case FactKind.Choice:
                if (fact.Choices.Contains(node.Text))
                {
                    return (new ChoiceValue(node.Text), null);
                }

                bag.Add(CaseDiagnostics.NotAChoice(fact, node.Text, NearestName.Of(node.Text, fact.Choices), node.Span));
                return null;
            case FactKind.Durations:
                bag.Add(ReadingDiagnostics.Expected($"a list for `{fact.Id}`, one time or `{UnknownWord}` for each night,", node.Described, node.Span));
                return null;
            case FactKind.Code:
                return Code(fact, node);
            default:
                return (new TextValue(HiddenSigns.Spaced(node.Text)), null);
        }
    }

    // A code of none of the sets is a code all the same; one that only misses its dot is a slip.
    private (FactValue Value, string? Written)? Code(FactDefinition fact, ScalarNode node)
    {
        if (!CodeSet.IsCode(node.Text))
        {
            bag.Add(CaseDiagnostics.NotACode(fact, node.Text, node.Span));
            return null;
        }

        var known = vocabulary.CodeSets.Where(set => set.System == fact.System).SelectMany(set => set.Codes).Select(code => code.Code).ToArray();
        if (!known.Contains(node.Text) && known.FirstOrDefault(code => Bare(code) == Bare(node.Text)) is { } meant)
        {
            bag.Add(CaseDiagnostics.CodeWithoutDot(fact, node.Text, meant, node.Span));
        }

        return (new CodeValue(node.Text), null);
    }

    private static string Bare(string code) => code.Replace(".", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);

    private (FactValue Value, string? Written)? Number(FactDefinition fact, ScalarNode node, bool unitInKey)
    {
        var fault = QuantityReader.Read(node.Text, out var quantity, out var at, out var part);
        if (fault != QuantityFault.None)
        {
            bag.Add(FaultOf(fault, fact, part, node.Text, node.Part(at, part.Length)));
            return null;
        }

        var bare = quantity!.Dimension == Dimension.None;
        var factor = 1m;
        if (bare && unitInKey)
        {
            factor = fact.Unit.Factor;
        }
        else if (quantity.Dimension != fact.Unit.Dimension)
        {
            bag.Add(bare ? CaseDiagnostics.UnitMissing(fact, node.Text, node.Span) : CaseDiagnostics.WrongUnit(fact, node.Text, node.Span));
            return null;
        }

        var value = quantity.Base * factor;
        if (fact.Kind == FactKind.Count && value != decimal.Truncate(value))
        {
            bag.Add(CaseDiagnostics.NotWhole(fact, node.Text, node.Span));
            return null;
        }

        if (fact.Range is { } range && !range.Contains(value))
        {
            bag.Add(CaseDiagnostics.Impossible(fact, node.Text, node.Span));
            return null;
        }

        if (fact.Plausible is { } plausible && !plausible.Contains(value))
        {
            bag.Add(CaseDiagnostics.Implausible(fact, node.Text, node.Span));
        }

        if (!fact.Rounded)
        {
            return (new NumberValue(Interval.Exactly(value)), Wording.Quote(node.Text.Trim()));
        }

        var written = Wording.Quote(node.Text.Trim()) + (bare ? fact.Unit.Symbol : "");
        return (new NumberValue((quantity with { Base = value, Step = quantity.Step * factor }).Rounding, value), written);
    }

    private static Diagnostic FaultOf(QuantityFault fault, FactDefinition fact, string part, string text, SourceSpan span) => fault switch
    {
        QuantityFault.DecimalComma => CaseDiagnostics.DecimalComma(part, span),
        QuantityFault.NumberForm => CaseDiagnostics.NumberForm(part, span),
        QuantityFault.TooManyDigits => CaseDiagnostics.TooManyDigits(part, span),
        QuantityFault.UnknownUnit => CaseDiagnostics.UnknownUnit(
            fact, part, NearestName.Of(part, Units.Of(fact.Unit.Dimension).Where(symbol => symbol.Length > 0)), span),
        QuantityFault.MixedUnits => CaseDiagnostics.MixedUnits(part, span),
        QuantityFault.Negative => CaseDiagnostics.Negative(part, span),
        _ => CaseDiagnostics.NoNumber(fact, text, span),
    };
}

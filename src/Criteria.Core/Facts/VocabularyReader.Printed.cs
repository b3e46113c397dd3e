using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>Reads how printed summaries name facts and units, and what cannot lie above what.</summary>
internal sealed partial class VocabularyReader
{
    private readonly List<(string Id, string Other, SourceSpan Span)> _limits = [];
    private PrintedWords _printedWords = PrintedWords.None;

    private ImmutableArray<string> ReadPrintedAs(Fields fields) => ReadPhrases(fields, "printed_as");

    private ImmutableArray<string> ReadPhrases(Fields fields, string key)
    {
        var phrases = ImmutableArray.CreateBuilder<string>();
        foreach (var phrase in fields.Words(key))
        {
            if (phrase.Text.Any(char.IsLetter))
            {
                phrases.Add(phrase.Text);
            }
            else
            {
                bag.Add(VocabularyDiagnostics.BadPrintedWords(phrase.Text, phrase.Span));
            }
        }

        return phrases.ToImmutable();
    }

    // Several files may have their part of it.
    private void ReadPrintedWords(Node node)
    {
        if (Fields.Of(node, "`printed_words`", bag) is not { } fields)
        {
            return;
        }

        _printedWords = new PrintedWords(
            [.. _printedWords.PassOver, .. ReadPhrases(fields, "pass_over")],
            [.. _printedWords.SetAside, .. ReadPhrases(fields, "set_aside")],
            [.. _printedWords.Nights, .. ReadPhrases(fields, "nights")],
            [.. _printedWords.Units, .. fields.List("units").Select(ReadPrintedUnit).OfType<PrintedUnit>()]);
        fields.Done();
    }

    private PrintedUnit? ReadPrintedUnit(Node node)
    {
        if (Fields.Of(node, "a printed unit", bag) is not { } fields)
        {
            return null;
        }

        var symbol = fields.RequiredScalar("unit");
        ImmutableArray<string> spellings = [.. fields.Words("as").Select(word => word.Text)];
        fields.Done();
        if (symbol is not null && Units.Find(symbol.Text) is null)
        {
            bag.Add(VocabularyDiagnostics.UnknownUnit(symbol.Text, NearestName.Of(symbol.Text, Units.Symbols), symbol.Span));
        }

        return symbol is not null && Units.Find(symbol.Text) is { } unit ? new PrintedUnit(unit, spellings) : null;
    }

    private void CheckPrinted(FactDefinition fact, MapNode map, ScalarNode[] limits)
    {
        if (map.Find("printed_as") is { } entry && WhyNotPrinted(fact) is { } why)
        {
            bag.Add(VocabularyDiagnostics.NotPrinted(fact.Id, why, entry.KeySpan));
        }

        _limits.AddRange(limits.Select(word => (fact.Id, word.Text, word.Span)));
    }

    // A name or a birth date in a pasted text must have no way into a case.
    private static string? WhyNotPrinted(FactDefinition fact) => fact switch
    {
        { Identifies: not (null or IdentifierClasses.Day) } => $"it identifies a person ({fact.Identifies})",
        { At: null } => "it has no place in a case file",
        { Scope: FactScope.Record } => "it belongs to an entry of a list",
        { IsNumeric: false, Kind: not FactKind.Date } => "it is not a number",
        _ => null,
    };

    private void CheckLimits()
    {
        foreach (var (id, other, span) in _limits)
        {
            var (fact, limit) = (Defined(id), Defined(other));
            var why = limit is null ? "there is no such fact" + (NearestName.Of(other, _ids) is { } near ? $", did you mean `{near}`?" : "")
                : id == other ? "it is the same fact"
                : !limit.IsNumeric || limit.Unit.Dimension != fact!.Unit.Dimension ? "they have no unit in common"
                : limit.Scope != fact.Scope ? "one belongs to a night and the other does not"
                : null;
            if (why is not null)
            {
                bag.Add(VocabularyDiagnostics.BadLimit(id, other, why, span));
            }
        }
    }

    private FactDefinition? Defined(string id) => _facts.Find(pair => pair.Definition.Id == id)?.Definition;
}

using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Turns the tree of one case file into a case.</summary>
internal sealed class CaseBuilder
{
    private const string CaseKey = "case";
    private const string AssessedOnKey = "assessed_on";

    private readonly Vocabulary _vocabulary;
    private readonly DiagnosticBag _bag;
    private readonly ValueReader _values;
    private readonly SectionReader _sections;

    public CaseBuilder(Vocabulary vocabulary, DiagnosticBag bag)
    {
        (_vocabulary, _bag, _values) = (vocabulary, bag, new ValueReader(vocabulary, bag));
        _sections = new SectionReader(vocabulary, bag, _values);
    }

    /// <summary>The case, or null when not even its outline can be read.</summary>
    public Case? Build(Node tree)
    {
        if (tree is not MapNode map)
        {
            _bag.Add(ReadingDiagnostics.Expected("a case: a map that starts with `case: KEY`", tree.Described, tree.Span));
            return null;
        }

        var key = Key(map);
        DateOnly? assessedOn = null;
        var facts = new List<Fact>();
        var records = new List<RecordList>();
        var nights = new List<(List<Fact> Facts, SourceSpan Span)>();
        foreach (var entry in map.Entries)
        {
            if (entry.Key == CaseKey)
            {
                continue;
            }

            if (entry.Key == AssessedOnKey)
            {
                assessedOn = entry.Value is ScalarNode date ? Dates.Read(date, _bag) : NotADate(entry.Value);
            }
            else if (entry.Key == Vocabulary.NightPlace)
            {
                ReadNights(entry.Value, nights);
            }
            else if (_vocabulary.Record(entry.Key) is { } record)
            {
                records.Add(new RecordReader(_bag, _values).Read(record, entry.Value));
            }
            else
            {
                _sections.ReadEntry(entry, "", [CaseKey, AssessedOnKey, Vocabulary.NightPlace, .. _vocabulary.Records.Select(list => list.At)], facts);
            }
        }

        CheckPointers(records);
        var caseFacts = FactSet.Of(_vocabulary, facts, records);
        var built = new Case(key, assessedOn, caseFacts, []).WithNights(Nights(nights, caseFacts));
        WarnOfContradictions(built.Facts, map.Span);
        if (built.NightsDeclaration is { By: null or "" } && map.Find(NightsPlaces.Section) is { } declaration)
        {
            _bag.Add(CaseDiagnostics.DeclarationUnsigned(declaration.KeySpan));
        }

        return built;
    }

    private string Key(MapNode map)
    {
        if (map.Find(CaseKey) is not { } entry)
        {
            _bag.Add(ReadingDiagnostics.MissingKey(CaseKey, "the case file", map.Span with { EndLine = map.Span.Line, EndColumn = map.Span.Column }));
            return "";
        }

        if (entry.Value is not ScalarNode { Text.Length: > 0 } key)
        {
            _bag.Add(ReadingDiagnostics.Expected("a case key", entry.Value.Described, entry.Value.Span));
            return "";
        }

        if (LooksLikeName(key.Text))
        {
            _bag.Add(CaseDiagnostics.KeyLooksLikeName(key.Text, key.Span));
        }

        return Wording.Quote(key.Text);
    }

    // Two capitalised words and no digit: a key of that form is likely a name that slipped in.
    private static bool LooksLikeName(string key)
    {
        var words = key.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        return words.Length is 2 or 3 && !key.Any(char.IsDigit) && words.All(word => char.IsUpper(word[0]) && word.Length > 1 && word.Skip(1).Any(char.IsLower));
    }

    private DateOnly? NotADate(Node node)
    {
        _bag.Add(ReadingDiagnostics.Expected("a date", node.Described, node.Span));
        return null;
    }

    private void ReadNights(Node node, List<(List<Fact> Facts, SourceSpan Span)> nights)
    {
        if (node is not ListNode list)
        {
            _bag.Add(ReadingDiagnostics.Expected("a list of nights", node.Described, node.Span));
            return;
        }

        foreach (var item in list.Items)
        {
            if (item is not MapNode night)
            {
                _bag.Add(ReadingDiagnostics.Expected("a night: a map of keys and values", item.Described, item.Span));
                continue;
            }

            var facts = new List<Fact>();
            foreach (var entry in night.Entries)
            {
                if (entry.Key == IndexReader.Key)
                {
                    new IndexReader(_vocabulary, _bag, _values).Read(entry.Value, facts);
                }
                else
                {
                    _sections.ReadEntry(entry, Vocabulary.NightPlace, [IndexReader.Key], facts);
                }
            }

            nights.Add((facts, night.Span));
        }
    }

    private ImmutableArray<Night> Nights(List<(List<Fact> Facts, SourceSpan Span)> nights, FactSet caseFacts)
    {
        var built = new List<DatedNight>();
        var seen = new HashSet<DateOnly>();
        for (var i = 0; i < nights.Count; i++)
        {
            var (facts, span) = nights[i];
            var set = caseFacts.With(facts);
            var date = _vocabulary.At($"{Vocabulary.NightPlace}.date") is { } definition ? (set[definition].Value as DateValue)?.Date : null;
            var label = date is { } day ? set[_vocabulary.At($"{Vocabulary.NightPlace}.date")!].Text : $"night {i + 1}";
            if (date is { } once && !seen.Add(once))
            {
                _bag.Add(CaseDiagnostics.SameNightTwice(label, span));
            }

            WarnOfRates(set, span);
            built.Add(new DatedNight(date ?? DateOnly.MaxValue, new Night(label, set)));
        }

        return [.. built.OrderBy(night => night.Date).Select(night => night.Night)];
    }

    private void WarnOfRates(FactSet facts, SourceSpan span)
    {
        foreach (var index in _vocabulary.Indices)
        {
            var rate = facts[index.Rate];
            var printed = facts[index.Printed];
            if (rate.Origin.Kind == OriginKind.Computed && printed.Number is { } figure && rate.Number is { IsExact: false } both)
            {
                var other = both.Low < figure.Low ? both.Low : both.High;
                _bag.Add(CaseDiagnostics.RateDisagrees(
                    index.Rate.Label, printed.Written ?? printed.Text, QuantityText.Of(other, index.Rate.Unit),
                    span with { EndLine = span.Line, EndColumn = span.Column }));
            }
        }
    }

    private void WarnOfContradictions(FactSet facts, SourceSpan span)
    {
        foreach (var definition in _vocabulary.Facts.Where(fact => fact is { Computed: not null, At: not null }))
        {
            var written = facts.Entered.FirstOrDefault(fact => ReferenceEquals(fact.Definition, definition));
            if (written?.Number is { } figure && facts[definition].Origin.Kind == OriginKind.Computed && facts[definition].Number is { IsExact: false } both)
            {
                var other = both.Low < figure.Low ? both.Low : both.High;
                _bag.Add(CaseDiagnostics.ComputedDisagrees(
                    definition.Label.ToLowerInvariant(), written.Written ?? written.Text, QuantityText.Of(other, definition.Unit, 1), span with { EndLine = span.Line, EndColumn = span.Column }));
            }
        }
    }

    // `visit-note p.2`: a first word that is nearly the id of a document is most likely meant to be one; any other text stands as it is.
    private void CheckPointers(List<RecordList> records)
    {
        var documents = records.SelectMany(list => list.Items).DistinctBy(record => record.Id).ToDictionary(record => record.Id, StringComparer.Ordinal);
        foreach (var (text, span) in _values.Pointers)
        {
            var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0)
            {
                continue;
            }

            if (!documents.TryGetValue(words[0], out var document))
            {
                if (NearestName.Of(words[0], documents.Keys) is { } nearest)
                {
                    _bag.Add(CaseDiagnostics.NoSuchDocument(words[0], nearest, span));
                }

                continue;
            }

            var page = words.Skip(1).Select(word => word.TrimStart('p', '.')).FirstOrDefault(word => word.Length is > 0 and < 6 && word.All(char.IsAsciiDigit));
            var pages = document.Attributes.FirstOrDefault(fact => fact.Definition.At!.EndsWith(".pages", StringComparison.Ordinal))?.Number;
            if (page is not null && pages is { } count && decimal.Parse(page, System.Globalization.CultureInfo.InvariantCulture) > count.High.Rounded)
            {
                _bag.Add(CaseDiagnostics.PageOutside(
                    document.Id, decimal.Parse(page, System.Globalization.CultureInfo.InvariantCulture), count.High.Rounded, span));
            }
        }
    }

    private sealed record DatedNight(DateOnly Date, Night Night);
}

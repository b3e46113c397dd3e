using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Reads the nested sections of a case or a night, as the vocabulary's places lay them out.</summary>
internal sealed class SectionReader(Vocabulary vocabulary, DiagnosticBag bag, ValueReader values)
{
    private const string Others = "others";
    private const string ReviewedBy = "reviewed_by";
    private const int ShortestWord = 4;

    /// <summary>Reads one key of a section and what hangs below it.</summary>
    /// <param name="entry">The key and its value.</param>
    /// <param name="section">The place of the section; empty at the top.</param>
    /// <param name="alsoAllowed">Other keys that are allowed there, for messages.</param>
    /// <param name="facts">Receives the facts.</param>
    public void ReadEntry(MapEntry entry, string section, IReadOnlyCollection<string> alsoAllowed, List<Fact> facts)
    {
        var place = section.Length == 0 ? entry.Key : $"{section}.{entry.Key}";
        if (vocabulary.At(place) is { } fact)
        {
            if (values.Read(fact, entry.Value) is { } read)
            {
                facts.Add(read);
            }

            return;
        }

        if (IsSection(place))
        {
            ReadSection(entry, place, facts);
            return;
        }

        ReportUnknown(entry, section, alsoAllowed);
    }

    private bool IsSection(string place) => vocabulary.Facts.Any(fact => fact.At is { } at && IsBelow(at, place));

    private static bool IsBelow(string at, string place) => at.Length > place.Length && at[place.Length] == '.' && at.StartsWith(place, StringComparison.Ordinal);

    private void ReadSection(MapEntry entry, string place, List<Fact> facts)
    {
        var group = vocabulary.Groups.FirstOrDefault(candidate => candidate.At == place);
        if (entry.Value is ListNode list && group is { ListIsComplete: true })
        {
            ReadCompleteList(list, group, facts);
            return;
        }

        if (entry.Value is not MapNode map)
        {
            var form = group is { ListIsComplete: true } ? "a list, or a map of keys and values," : "a map of keys and values";
            bag.Add(ReadingDiagnostics.Expected($"{form} for `{place}`", entry.Value.Described, entry.Value.Span));
            return;
        }

        var own = new List<Fact>();
        foreach (var inner in map.Entries.Where(inner => inner.Key is not (Others or ReviewedBy)))
        {
            ReadEntry(inner, place, group is null ? [] : [Others, ReviewedBy], own);
        }

        facts.AddRange(own);
        if (Closing.Read(map, $"`{place}`", bag) is { } reviewer)
        {
            if (group is null)
            {
                bag.Add(CaseDiagnostics.NotClosable($"`{place}`", map.Find(Others)!.KeySpan));
                return;
            }

            Close(group, map, new Provenance(OriginKind.ClosedList, reviewer), facts);
        }
    }

    private void ReadCompleteList(ListNode list, FactGroup group, List<Fact> facts)
    {
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in list.Items)
        {
            if (item is not ScalarNode word)
            {
                bag.Add(ReadingDiagnostics.Expected("a word", item.Described, item.Span));
            }
            else if (vocabulary.At($"{group.At}.{word.Text}") is not { } fact)
            {
                ReportUnknown(new MapEntry(word.Text, word.Span, word), group.At, []);
            }
            else if (named.Add(word.Text))
            {
                facts.Add(Fact.Known(fact, new YesNoValue(true), Provenance.Entered));
            }
        }

        foreach (var fact in Members(group).Where(fact => !named.Contains(fact.At![(group.At.Length + 1)..])))
        {
            facts.Add(Fact.Known(fact, new YesNoValue(false), new Provenance(OriginKind.ClosedList, $"the list of {group.Label.ToLowerInvariant()}")));
        }
    }

    private void Close(FactGroup group, MapNode map, Provenance origin, List<Fact> facts)
    {
        foreach (var fact in Members(group).Where(fact => map.Find(fact.At![(group.At.Length + 1)..]) is null))
        {
            facts.Add(Fact.Known(fact, new YesNoValue(false), origin));
        }
    }

    private IEnumerable<FactDefinition> Members(FactGroup group) =>
        vocabulary.Facts.Where(fact => fact.Kind == FactKind.YesNo && fact.Computed is null && fact.At is { } at && IsBelow(at, group.At));

    private void ReportUnknown(MapEntry entry, string section, IReadOnlyCollection<string> alsoAllowed)
    {
        // Looking for near names takes time that a file full of problems is not worth.
        if (bag.IsFull(entry.KeySpan.File))
        {
            return;
        }

        var where = section.Length == 0 ? "the case file" : section == Vocabulary.NightPlace ? "a night" : $"`{section}`";
        if (vocabulary.Find(entry.Key) is { Computed: not null, At: null } computed)
        {
            bag.Add(CaseDiagnostics.Computed(computed, entry.KeySpan));
            return;
        }

        // `{ height: 178,5 cm }`: in braces the decimal comma parts the value in two.
        if (char.IsAsciiDigit(entry.Key.FirstOrDefault()))
        {
            bag.Add(CaseDiagnostics.PartedByComma(entry.Key, where, entry.KeySpan));
            return;
        }

        // A known fact in the wrong section: name the right one.
        var elsewhere = vocabulary.Facts.FirstOrDefault(fact => fact.At is { } at && (at.EndsWith("." + entry.Key, StringComparison.Ordinal) || fact.Id == entry.Key));
        if (elsewhere is not null)
        {
            bag.Add(CaseDiagnostics.Misplaced(entry.Key, where, elsewhere.At!, entry.KeySpan));
            return;
        }

        var allowed = vocabulary.Facts.Select(fact => fact.At).OfType<string>()
            .Where(at => section.Length == 0 || IsBelow(at, section))
            .Select(at => at[(section.Length == 0 ? 0 : section.Length + 1)..].Split('.')[0])
            .Concat(alsoAllowed).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        var nearest = NearestName.Of(entry.Key, allowed);
        bag.Add(nearest is null && Containing(entry.Key) is { } place
            ? CaseDiagnostics.UnknownFactElsewhere(entry.Key, where, place, entry.KeySpan)
            : CaseDiagnostics.UnknownFact(entry.Key, where, nearest, allowed, entry.KeySpan));
    }

    // `snoring` is no fact, but one whose name holds the word is most likely meant, wherever it stands.
    private string? Containing(string word) => word.Length < ShortestWord
        ? null
        : vocabulary.Facts.Select(fact => fact.At).OfType<string>()
            .FirstOrDefault(at => at.Split('.')[^1].Split('_').Contains(word, StringComparer.Ordinal));
}

/// <summary>Reads the two keys that close a list.</summary>
internal static class Closing
{
    /// <summary>Who closed the list, or null when it stays open.</summary>
    public static string? Read(MapNode map, string group, DiagnosticBag bag)
    {
        var others = map.Find("others");
        var reviewer = map.Find("reviewed_by");
        if (others is null)
        {
            if (reviewer is not null)
            {
                bag.Add(CaseDiagnostics.ReviewerWithoutOthers(reviewer.KeySpan));
            }

            return null;
        }

        var text = (others.Value as ScalarNode)?.Text ?? others.Value.Described;
        if (YesNoWords.Read(text) is not false)
        {
            bag.Add(CaseDiagnostics.OthersNotNo(text, others.Value.Span));
            return null;
        }

        if (reviewer?.Value is ScalarNode { Text.Length: > 0 } name)
        {
            return Wording.Quote(name.Text);
        }

        bag.Add(CaseDiagnostics.ReviewerMissing(group, others.KeySpan));
        return null;
    }
}

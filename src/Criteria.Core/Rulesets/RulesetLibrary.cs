using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>A vocabulary, a register of sources and every ruleset, loaded together or not at all.</summary>
/// <remarks>Thread-safe once loaded.</remarks>
public sealed class RulesetLibrary
{
    private readonly ImmutableArray<RulesetFile> _files;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, RulesInForce> _selections = new(StringComparer.Ordinal);

    private RulesetLibrary(Vocabulary vocabulary, SourceRegister sources, PublishedFacts? facts, ImmutableArray<RulesetFile> files, RulesInForce all, string vocabularyDigest) =>
        (Vocabulary, Sources, PublishedFacts, _files, All, VocabularyDigest) = (vocabulary, sources, facts, files, all, vocabularyDigest);

    /// <summary>The vocabulary.</summary>
    public Vocabulary Vocabulary { get; }

    /// <summary>SHA-256 over the files of the vocabulary.</summary>
    public string VocabularyDigest { get; }

    /// <summary>The register of sources.</summary>
    public SourceRegister Sources { get; }

    /// <summary>The register of published facts, or null when the rules have none.</summary>
    public PublishedFacts? PublishedFacts { get; }

    /// <summary>Every ruleset, of whatever status and date, in report order.</summary>
    public IEnumerable<Ruleset> Rulesets => _files.Select(file => file.Ruleset).OrderBy(ruleset => ruleset.Order).ThenBy(ruleset => ruleset.Id, StringComparer.Ordinal);

    /// <summary>Every criterion of every payer and item, each ruleset in its newest version: for tests and lists, not for assessing.</summary>
    public RulesInForce All { get; }

    /// <summary>Loads a whole folder of rules.</summary>
    /// <param name="files">The files: <c>vocabulary/*.yaml</c>, <c>sources.yaml</c>, <c>published-facts.yaml</c>, rulesets and overlays.</param>
    /// <returns>The library, or null when any file has an error; and every problem found.</returns>
    public static LibraryLoading Load(IEnumerable<SourceFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        var library = Load([.. files.Where(file => !IsForTests(file)).OrderBy(file => file.Name, StringComparer.Ordinal)], bag);
        return new LibraryLoading(bag.HasErrors ? null : library, [.. bag.Ordered()]);
    }

    /// <summary>The rules that count on a date: the rulesets in force, without those of other payers and items.</summary>
    /// <param name="date">The date.</param>
    /// <param name="payer">The payer asked about, or null for no coverage check.</param>
    /// <param name="item">The item asked about, or null for no coverage check.</param>
    /// <remarks>A ruleset that refers to one that is not in force is left out with it, and <see cref="RulesInForce.LeftOut"/> names it.</remarks>
    public RulesInForce InForce(DateOnly date, string? payer, string? item) => InForce(date, ruleset => ruleset.Payer == payer && ruleset.Item == item);

    /// <summary>The rules that count on a date, those of every payer and item: for books and lists, not for assessing.</summary>
    /// <param name="date">The date.</param>
    public RulesInForce InForce(DateOnly date) => InForce(date, _ => true);

    private RulesInForce InForce(DateOnly date, Predicate<Ruleset> coverage)
    {
        var selected = _files.Where(file => file.Ruleset.IsInForce(date)
            && (file.Ruleset.Function == RulesetFunction.Clinical || coverage(file.Ruleset))).ToList();
        var key = string.Join('|', selected.Select(file => $"{file.Ruleset.Id}@{file.Ruleset.Version} {file.Ruleset.Digest}"));
        lock (_lock)
        {
            if (!_selections.TryGetValue(key, out var rules))
            {
                rules = Bind(selected);
                _selections.Add(key, rules);
            }

            return rules;
        }
    }

    private RulesInForce Bind(List<RulesetFile> selected)
    {
        var leftOut = ImmutableArray.CreateBuilder<Ruleset>();
        while (true)
        {
            var bag = new DiagnosticBag();
            if (new RulesetBinder(Vocabulary, Sources, PublishedFacts, bag).Bind(selected, leftOut.ToImmutable()) is { } rules)
            {
                return rules;
            }

            // Loading bound all rulesets together without an error: what fails now refers to a ruleset that is not in force.
            var broken = bag.Ordered().Select(problem => problem.Span.File).ToHashSet(StringComparer.Ordinal);
            // A criterion that an overlay added stands in the overlay's file.
            var dropped = selected.Where(file => broken.Contains(file.Span.File) || file.Criteria.Any(criterion => broken.Contains(criterion.Span.File))).ToArray();
            leftOut.AddRange(dropped.Select(file => file.Ruleset));
            if (selected.RemoveAll(dropped.Contains) == 0)
            {
                throw new InvalidOperationException("rules that loaded do not bind: " + string.Join("; ", bag.Ordered()));
            }
        }
    }

    private static RulesetLibrary? Load(ImmutableArray<SourceFile> files, DiagnosticBag bag)
    {
        var vocabularyFiles = files.Where(IsVocabulary).ToArray();
        var sourceFiles = files.Where(IsSources).ToArray();
        var factFiles = files.Where(IsPublishedFacts).ToArray();
        var ruleFiles = files.Where(file => !IsVocabulary(file) && !IsSources(file) && !IsPublishedFacts(file)).ToArray();
        if (vocabularyFiles.Length == 0)
        {
            bag.Add(RulesetDiagnostics.NoVocabulary());
        }

        if (sourceFiles.Length == 0)
        {
            bag.Add(RulesetDiagnostics.NoSources());
        }

        if (ruleFiles.Length == 0)
        {
            bag.Add(RulesetDiagnostics.NoRulesets());
        }

        var vocabulary = Vocabulary.Read(vocabularyFiles, bag);
        var sources = SourceRegister.Read(sourceFiles, bag);
        var facts = PublishedFacts.Read(factFiles, sources, bag);
        var rulesets = ReadRulesets(ruleFiles, sources, bag);
        CheckVersions(rulesets, bag);
        if (vocabulary is null)
        {
            return null;
        }

        // Of several versions of a ruleset the newest stands for all when names are bound; the others are bound in its place.
        var newest = rulesets.GroupBy(file => file.Ruleset.Id).Select(group => group.MaxBy(file => file.Ruleset.EffectiveFrom ?? DateOnly.MinValue)!).ToArray();
        var all = new RulesetBinder(vocabulary, sources, facts, bag).Bind(newest, []);
        foreach (var older in rulesets.Except(newest))
        {
            new RulesetBinder(vocabulary, sources, facts, bag).Bind([.. newest.Where(file => file.Ruleset.Id != older.Ruleset.Id), older], []);
        }

        return all is null ? null : new RulesetLibrary(vocabulary, sources, facts, [.. rulesets], all, Digests.Of(vocabularyFiles));
    }

    private static List<RulesetFile> ReadRulesets(IEnumerable<SourceFile> files, SourceRegister sources, DiagnosticBag bag)
    {
        var rulesets = new List<RulesetFile>();
        var overlays = new List<(MapNode Tree, SourceFile File)>();
        var filesOf = new Dictionary<RulesetFile, List<SourceFile>>();
        var headers = new RulesetHeaderReader(sources, bag);
        foreach (var file in files)
        {
            switch (TreeReader.Read(file.Name, file.Content.Span, bag))
            {
                case null:
                    break;
                case MapNode map when map["ruleset"] is not null:
                    if (headers.Read(map, file) is { } ruleset)
                    {
                        rulesets.Add(ruleset);
                        filesOf[ruleset] = [file];
                    }

                    break;
                case MapNode map when map["overlay"] is not null:
                    overlays.Add((map, file));
                    break;
                case var other:
                    bag.Add(RulesetDiagnostics.NotARuleset(other.Span with { EndLine = other.Span.Line, EndColumn = other.Span.Column }));
                    break;
            }
        }

        var reader = new OverlayReader(bag);
        foreach (var (tree, file) in overlays)
        {
            reader.Apply(tree, file, rulesets, filesOf);
        }

        return rulesets;
    }

    private static void CheckVersions(List<RulesetFile> rulesets, DiagnosticBag bag)
    {
        foreach (var versions in rulesets.Where(file => file.Ruleset.Status == RulesetStatus.Active).GroupBy(file => file.Ruleset.Id))
        {
            var ordered = versions.OrderBy(file => file.Ruleset.EffectiveFrom ?? DateOnly.MinValue).ToArray();
            for (var i = 1; i < ordered.Length; i++)
            {
                if (ordered[i - 1].Ruleset.EffectiveUntil is not { } until || ordered[i].Ruleset.EffectiveFrom is not { } from || until > from)
                {
                    bag.Add(RulesetDiagnostics.EffectiveOverlap(versions.Key, ordered[i].Span));
                }
            }
        }
    }

    private static bool IsVocabulary(SourceFile file) => Steps(file).SkipLast(1).Contains("vocabulary");

    private static bool IsSources(SourceFile file) => Steps(file)[^1] == "sources.yaml";

    private static bool IsPublishedFacts(SourceFile file) => Steps(file)[^1] == "published-facts.yaml";

    // Tests stand beside the rulesets that they hold, with the cases that they begin from.
    internal static bool IsForTests(SourceFile file) => IsTests(file) || IsCaseForTests(file);

    /// <summary>Whether a file holds the tests of a ruleset.</summary>
    internal static bool IsTests(SourceFile file) => file.Name.EndsWith(".tests.yaml", StringComparison.Ordinal);

    /// <summary>Whether a file is a case that tests begin from.</summary>
    internal static bool IsCaseForTests(SourceFile file) => Steps(file).SkipLast(1).Contains("cases");

    private static string[] Steps(SourceFile file) => file.Name.Replace('\\', '/').Split('/');
}

/// <summary>What loading rules gave.</summary>
/// <param name="Library">The library, or null when any file has an error.</param>
/// <param name="Problems">Every problem found.</param>
public sealed record LibraryLoading(RulesetLibrary? Library, ImmutableArray<Diagnostic> Problems);

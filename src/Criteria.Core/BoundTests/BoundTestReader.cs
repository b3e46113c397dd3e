using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Core.BoundTests;

/// <summary>Reads the tests that stand beside rulesets (<c>NAME.tests.yaml</c>); the form is that of <c>docs/rule-language.md</c>.</summary>
public sealed class BoundTestReader
{
    private const string Nothing = "nothing";
    private const string EmptyCase = "case: HT-NOTHING\nassessed_on: 2026-06-18\n";

    private readonly Vocabulary _vocabulary;
    private readonly Dictionary<string, Criterion> _criteria;
    private readonly HashSet<string> _rulesets;
    private readonly DiagnosticBag _bag = new();
    private readonly CaseEdits _edits;
    private readonly Dictionary<string, MapNode> _beginnings = new(StringComparer.Ordinal);
    private readonly ImmutableArray<BoundTest>.Builder _tests = ImmutableArray.CreateBuilder<BoundTest>();
    private readonly ImmutableArray<AcceptedGap>.Builder _gaps = ImmutableArray.CreateBuilder<AcceptedGap>();

    private BoundTestReader(RulesetLibrary library)
    {
        _vocabulary = library.Vocabulary;
        _criteria = library.All.Criteria.ToDictionary(criterion => criterion.Id, StringComparer.Ordinal);
        _rulesets = [.. library.Rulesets.Select(ruleset => ruleset.Id)];
        _edits = new CaseEdits(_vocabulary, _bag);
    }

    /// <summary>Reads all tests among the files of a folder of rules.</summary>
    /// <param name="files">The files; those that are no tests and no beginnings of tests are passed over.</param>
    /// <param name="library">The rules that the tests are bound to.</param>
    public static BoundTestReading Read(IEnumerable<SourceFile> files, RulesetLibrary library)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(library);
        var ordered = files.OrderBy(file => file.Name, StringComparer.Ordinal).ToArray();
        var reader = new BoundTestReader(library);
        reader.ReadBeginnings(ordered.Where(file => RulesetLibrary.IsCaseForTests(file)));
        foreach (var file in ordered.Where(RulesetLibrary.IsTests))
        {
            reader.ReadFile(file);
        }

        return new BoundTestReading(reader._tests.ToImmutable(), reader._gaps.ToImmutable(), [.. reader._bag.Ordered()]);
    }

    private void ReadBeginnings(IEnumerable<SourceFile> files)
    {
        _beginnings[Nothing] = (MapNode)TreeReader.Read(Nothing, System.Text.Encoding.UTF8.GetBytes(EmptyCase), _bag)!;
        foreach (var file in files)
        {
            if (TreeReader.Read(file.Name, file.Content.Span, _bag) is MapNode tree)
            {
                _beginnings[Path.GetFileNameWithoutExtension(file.Name.Replace('\\', '/').Split('/')[^1])] = tree;
            }
        }
    }

    private void ReadFile(SourceFile file)
    {
        if (TreeReader.Read(file.Name, file.Content.Span, _bag) is not { } tree || Fields.Of(tree, "a file of tests", _bag) is not { } fields)
        {
            return;
        }

        var ruleset = fields.Word("tests_of", "a ruleset", _rulesets, required: true);
        var beginning = fields.Word("begin_with", "a case to begin with", _beginnings.Keys, required: true);
        var common = Changes(fields.Node("with"));
        var tests = fields.List("tests");
        var gaps = fields.List("cannot_be");
        fields.Done();
        foreach (var gap in gaps)
        {
            ReadGap(gap);
        }

        if (ruleset is not null && beginning is not null)
        {
            var start = _edits.Apply(_beginnings[beginning], common);
            foreach (var test in tests)
            {
                ReadTest(test, ruleset, start);
            }
        }
    }

    private void ReadGap(Node node)
    {
        if (Fields.Of(node, "a gap that cannot be closed", _bag) is { } fields)
        {
            var criterion = fields.Word("criterion", "a criterion", _criteria.Keys, required: true);
            var what = fields.RequiredText("what");
            var because = fields.RequiredText("because");
            fields.Done();
            _gaps.Add(new AcceptedGap(criterion ?? "", what, because, node.Span));
        }
    }

    private void ReadTest(Node node, string ruleset, MapNode start)
    {
        if (Fields.Of(node, "a test", _bag) is not { } fields)
        {
            return;
        }

        var name = fields.Text("name") ?? "";
        var tree = _edits.Apply(start, Changes(fields.Node("with")));
        if (fields.Node("expect") is { } expect)
        {
            fields.Done();
            var all = (Fields.Of(expect, "`expect`", _bag)?.Map.Entries ?? []).Select(entry => Expected(entry.Key, entry.KeySpan, entry.Value, null)).OfType<Expectation>();
            Add(ruleset, name, tree, [.. all], node.Span);
            return;
        }

        var criterion = fields.RequiredScalar("criterion");
        var vary = fields.Scalar("vary");
        var question = fields.Text("question");
        var word = vary is null ? fields.RequiredNode("is") : null;
        var rows = vary is null ? null : fields.RequiredNode("rows");
        fields.Done();
        if (criterion is null)
        {
            return;
        }

        if (vary is null)
        {
            Add(ruleset, name, tree, word is null ? [] : [.. One(Expected(criterion.Text, criterion.Span, word, question))], node.Span);
            return;
        }

        foreach (var row in rows is null ? [] : Fields.Of(rows, "`rows`", _bag)?.Map.Entries ?? [])
        {
            var value = new ScalarNode(row.Key, Quoted: false, row.KeySpan);
            var varied = _edits.Apply(tree, [new MapEntry(vary.Text, vary.Span, value)]);
            Add(ruleset, $"{name}{(name.Length > 0 ? ", " : "")}{vary.Text} {row.Key}", varied, [.. One(Expected(criterion.Text, criterion.Span, row.Value, question))], row.KeySpan);
        }
    }

    private static IEnumerable<Expectation> One(Expectation? expectation) => expectation is null ? [] : [expectation];

    private void Add(string ruleset, string name, MapNode tree, ImmutableArray<Expectation> expectations, SourceSpan span)
    {
        var bag = new DiagnosticBag();
        var made = new CaseBuilder(_vocabulary, bag).Build(tree);
        foreach (var problem in bag.Ordered().Where(problem => problem.Severity == Severity.Error))
        {
            _bag.Add(problem);
        }

        if (made is not null && expectations.IsEmpty)
        {
            _bag.Add(ReadingDiagnostics.MissingKey("is", "a test", span with { EndLine = span.Line, EndColumn = span.Column }));
        }
        else if (made is not null && !bag.HasErrors)
        {
            _tests.Add(new BoundTest(ruleset, name, made, expectations));
        }
    }

    private Expectation? Expected(string id, SourceSpan span, Node node, string? question)
    {
        if (!_criteria.TryGetValue(id, out var criterion))
        {
            _bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(id), "a criterion", NearestName.Of(id, _criteria.Keys), [], span));
            return null;
        }

        var words = Words(criterion);
        if (node is ScalarNode word && words.Contains(word.Text))
        {
            return new Expectation(id, word.Text, question, word.Span);
        }

        var text = (node as ScalarNode)?.Text ?? "";
        _bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(text), $"an outcome of `{id}`", NearestName.Of(text, words), words, node.Span));
        return null;
    }

    private static string[] Words(Criterion criterion) =>
    [
        .. Enum.GetValues<Standing>().Select(standing => standing.Words()),
        .. criterion.Body switch
        {
            GradeBody grade => grade.Bands.Select(band => band.Grade),
            ScoreBody score => score.Classes.Select(one => one.Name),
            _ => [],
        },
    ];

    private IReadOnlyList<MapEntry> Changes(Node? node) => node is null ? [] : Fields.Of(node, "`with`", _bag)?.Map.Entries ?? [];
}

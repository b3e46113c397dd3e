using System.Text;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Rulesets;

/// <summary>Whatever the bytes: loading never throws, says why there is no library, and what loads can be used.</summary>
public sealed class RulesetLibraryFuzzTests
{
    private const string Ruleset = """
        ruleset: r
        title: R
        heading: R
        order: 1
        function: clinical
        version: 1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none, day_count: start is day 1 }
        review_by: 2027-06-30
        settings:
          exactly_40: { is: low, allowed: [low, high], why: W., cites: [s-1] }
        criteria:
          - id: g
            title: G
            grade:
              of: neck
              bands: [{ grade: low, below: 40 cm }, { grade: high, from: 40 cm }]
              boundaries: [{ at: 40 cm, goes_to: exactly_40 }]
            cites: [s-1 "2.1" (memory)]
          - id: n
            title: N
            score:
              items: [{ points: 1, when: stroke, label: Stroke }, { points: 2, when: bmi > 35 kg/m2 }]
              classes: [{ class: low, from: 0, to: 1 }, { class: high, from: 2, to: 3 }]
            cites: [s-1]
          - id: c
            title: C
            index: { index: REI, rule: 4 %, per: monitoring time }
            applies_when: { any: [rei_4 >= 15 /h, { not: hypertension }] }
            when:
              all:
                - g is at least low
                - n >= 2 points
                - { at_least: 1, of: [sex is male, visit_date within day 31 to day 91 after therapy.start] }
                - { document: visit note, signed: yes, dated: on or before night.date }
            silent: [{ id: q, when: insomnia, question: Which?, readings: [One., Other.] }]
            read_first: The neck is {neck}.
            cautions: [{ when: neck is not recorded, say: Measure it. }, Mind it.]
            owner: clinician
            ask: A question.
            rests_on: [A-01, A-03]
            cites: [s-2]
          - id: o
            title: O
            option: { offer: A test, for: [{ when: c, say: For. }], against: [], strength: strong, certainty: low }
            cites: [s-1]

        """;

    private const string Overlay = """
        overlay: mine
        extends: r
        version: 1
        changes:
          - { set: exactly_40, to: high, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }
          - { answer: q, of: c, as: not met, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }
          - { add: { id: d, title: D, when: c, cites: [s-1] }, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }
          - { replace: o, with: { id: o, title: O, when: g, cites: [s-1] }, reason: R., approved_by: A. Person, approved_on: 2026-01-10 }

        """;

    private const string Facts = """
        published_facts:
          - { id: A-01, says: a fact, verified: read, in_part: memory, sources: [s-1, s-2] }
          - { id: A-02, says: another, verified: derived, carried_by: [A-01] }
          - { id: A-03, says: a third, verified: memory, used_by: { vocabulary: [neck], measure: [sum of] } }
          - { id: A-04, says: a fourth, verified: restated, not_a_criterion: says nothing }

        """;

    private static readonly (string Name, string Text)[] Whole =
    [
        ("r.yaml", Ruleset), ("local/o.yaml", Overlay), ("sources.yaml", Rules.Sources), ("published-facts.yaml", Facts), ("vocabulary/tiny.yaml", Tiny.VocabularyText),
    ];

    public static TheoryData<string> Names => [.. Whole.Select(file => file.Name)];

    [Fact]
    public void Load_OfTheUndamagedFiles_HasNoProblem()
    {
        var loading = RulesetLibrary.Load(Whole.Select(file => Texts.File(file.Name, file.Text)));

        loading.Problems.ShouldSay();
        loading.Library!.Rulesets.Single().Differences.Length.ShouldBe(4);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Load_OfEveryBeginning_NeverThrows(string name) => ShouldHold(name, Damage.Beginnings(ContentOf(name), 60));

    [Theory]
    [MemberData(nameof(Names))]
    public void Load_OfADamagedFile_NeverThrows(string name) => ShouldHold(name, Damage.Mutations(ContentOf(name), 120, seed: 21));

    [Theory]
    [MemberData(nameof(Names))]
    public void Load_OfNoise_NeverThrows(string name) => ShouldHold(name, Damage.Noise(25, seed: 22));

    [Theory]
    [MemberData(nameof(Names))]
    public void Load_WithAWrongKindOfValueAnywhere_NeverThrows(string name)
    {
        var text = Whole.Single(file => file.Name == name).Text;
        string[] wrong = ["[]", "{}", "''", "[[1]]", "{ a: 1 }", "stroke", "-1 cm"];
        var random = new Random(23);
        var places = Trees.Tree(text, name).Scalars().Where(scalar => scalar.Span.Line == scalar.Span.EndLine).ToArray();
        var texts = Enumerable.Range(0, 120).Select(_ => Replaced(text, places[random.Next(places.Length)].Span, wrong[random.Next(wrong.Length)]));

        ShouldHold(name, texts.Select(Encoding.UTF8.GetBytes));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Load_WithALineLeftOut_NeverThrows(string name)
    {
        var lines = Whole.Single(file => file.Name == name).Text.Split('\n');

        ShouldHold(name, lines.Select((_, place) => Encoding.UTF8.GetBytes(string.Join('\n', lines.Where((_, other) => other != place)))));
    }

    // The shipped files, one of them damaged: a few only, since each loads all.
    [Fact]
    public void Load_OfTheShippedRulesWithOneFileDamaged_NeverThrows()
    {
        var shipped = ShippedRules.Files();
        var random = new Random(24);
        for (var i = 0; i < 25; i++)
        {
            var place = random.Next(shipped.Length);
            var damaged = Damage.Mutations(shipped[place].Content.ToArray(), 1, seed: 100 + i).Single();

            ShouldHold(shipped.SetItem(place, shipped[place] with { Content = damaged }));
        }
    }

    [Fact]
    public void Load_OfConditionsNestedDeeply_SaysSo()
    {
        const int Levels = 10_000;
        var text = Ruleset.Replace("when: insomnia", "when: " + string.Concat(Enumerable.Repeat("{ not: ", Levels)) + "insomnia" + string.Concat(Enumerable.Repeat(" }", Levels)), StringComparison.Ordinal);

        var loading = RulesetLibrary.Load(Rules.Files(text));

        loading.Library.ShouldBeNull();
        loading.Problems.Select(problem => problem.Code).ShouldContain("CD0002");
    }

    private static byte[] ContentOf(string name) => Encoding.UTF8.GetBytes(Whole.Single(file => file.Name == name).Text);

    private static string Replaced(string text, SourceSpan span, string word)
    {
        var lines = text.Split('\n');
        lines[span.Line - 1] = lines[span.Line - 1][..(span.Column - 1)] + word + lines[span.Line - 1][(span.EndColumn - 1)..];
        return string.Join('\n', lines);
    }

    private static void ShouldHold(string name, IEnumerable<byte[]> contents)
    {
        foreach (var content in contents)
        {
            ShouldHold([.. Whole.Select(file => file.Name == name ? new SourceFile(name, content) : Texts.File(file.Name, file.Text))]);
        }
    }

    private static void ShouldHold(IReadOnlyCollection<SourceFile> files)
    {
        var loading = Should.NotThrow(() => RulesetLibrary.Load(files));

        (loading.Library is null).ShouldBe(loading.Problems.Any(problem => problem.Severity == Severity.Error));
        loading.Problems.ShouldBeWellWorded();
        if (loading.Library is { } library)
        {
            Should.NotThrow(() => Use(library), Encoding.UTF8.GetString(files.First().Content.Span));
        }
    }

    // What loads is bound, and evaluated over facts of which none is known.
    private static void Use(RulesetLibrary library)
    {
        var rules = library.InForce(new DateOnly(2026, 7, 1), "medicare", "pap");
        var view = rules.Conclude(FactSet.Of(library.Vocabulary, []));
        foreach (var criterion in rules.Criteria)
        {
            criterion.Body.Explain(view);
            criterion.Body.Residual(view);
            criterion.ReadFirst?.Fill(view);
        }
    }
}

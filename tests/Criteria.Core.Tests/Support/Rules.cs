using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Core.Tests.Support;

/// <summary>Loads small rulesets over the small vocabulary.</summary>
internal static class Rules
{
    public const string Sources = """
        sources:
          - { id: s-1, issuer: A society, title: A guideline, verified: read }
          - { id: s-2, issuer: A payer, title: A policy, number: P-2, version: R3, verified: memory }
        """;

    // It stands below the criteria, so that their lines count from the top of the example.
    private const string Header = """

        ruleset: r
        title: R
        heading: R
        order: 1
        function: clinical
        version: 1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none, day_count: start is day 1 }
        """;

    private const string FileMark = "# file: ";

    /// <summary>Loads a text of criteria, or several files parted by lines <c># file: NAME</c>.</summary>
    public static LibraryLoading Load(string text) => RulesetLibrary.Load(Files(text));

    public static ImmutableArray<SourceFile> Files(string text)
    {
        var files = text.StartsWith(FileMark, StringComparison.Ordinal)
            ? ("\n" + text).Split("\n" + FileMark).Skip(1).Select(part => part.Split('\n', 2)).Select(part => (Name: part[0], Text: part[1])).ToArray()
            : [(Name: "r.yaml", Text: text)];
        return
        [
            .. files.Select(file => Texts.File(file.Name, IsWhole(file.Text) ? file.Text : file.Text.TrimEnd('\n') + Header)),
            .. files.Any(file => file.Name == "sources.yaml") ? [] : new[] { Texts.File("sources.yaml", Sources) },
            .. files.Any(file => file.Name.StartsWith("vocabulary/", StringComparison.Ordinal)) ? [] : new[] { Tiny.VocabularyFile },
        ];
    }

    /// <summary>The library, which must load without a problem.</summary>
    public static RulesetLibrary Library(string text)
    {
        var loading = Load(text);
        loading.Problems.ShouldSay();
        return loading.Library!;
    }

    /// <summary>The rules in force on a day long after 2024.</summary>
    public static RulesInForce InForce(string text) => Library(text).InForce(new DateOnly(2026, 7, 1), "medicare", "pap");

    /// <summary>Rules of one criterion, <c>c</c>, and conventions of one's choice.</summary>
    public static RulesInForce One(string body, string conventions = "rounding: none, day_count: start is day 1") => InForce(
        ("criteria:\n  - id: c\n    title: C\n    index: { index: REI, rule: 4 %, per: monitoring time }\n    cites: [s-1]\n    "
        + body.ReplaceLineEndings("\n    ") + Header).Replace("rounding: none, day_count: start is day 1", conventions, StringComparison.Ordinal));

    /// <summary>What rules conclude about the facts of a case in their vocabulary, in the order of evaluation.</summary>
    public static View Conclude(this RulesInForce rules, FactSet facts)
    {
        var view = new View(facts, rules.Criteria.Length);
        foreach (var index in rules.EvaluationOrder)
        {
            view[index] = rules.Criteria[index].Conclude(view);
        }

        return view;
    }

    /// <summary>What rules conclude about a case.</summary>
    public static View Conclude(this RulesInForce rules, string sections) => rules.Conclude(Tiny.Case($"case: T-1\n{sections}\n", rules.Vocabulary).Facts);

    /// <summary>What the body of the first criterion comes to for a case.</summary>
    public static BodyOutcome Evaluate(this RulesInForce rules, string sections)
    {
        var read = Tiny.Case($"case: T-1\n{sections}\n", rules.Vocabulary);
        return rules.Criteria[0].Body.Evaluate(new View(read.Nights.IsEmpty ? read.Facts : read.Nights[0].Facts, rules.Criteria.Length));
    }

    private static bool IsWhole(string text) => text.Split('\n').Any(line => line.StartsWith("ruleset:", StringComparison.Ordinal)
        || line.StartsWith("overlay:", StringComparison.Ordinal) || line.StartsWith("sources:", StringComparison.Ordinal)
        || line.StartsWith("published_facts:", StringComparison.Ordinal)
        || line.StartsWith("facts:", StringComparison.Ordinal) || line.StartsWith("whole:", StringComparison.Ordinal));
}

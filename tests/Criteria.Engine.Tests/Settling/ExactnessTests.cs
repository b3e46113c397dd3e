using System.Text;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Settling;

/// <summary>Over facts that have cells, a finding is open if and only if two completions of the case disagree on it.</summary>
public sealed class ExactnessTests
{
    private const int Criteria = 14;

    // A value on, between and beyond the two limits that the conditions compare the neck with.
    private static readonly (string Fact, string[] Values)[] Facts =
    [
        ("hypertension", ["yes", "no"]),
        ("habitual_snoring", ["yes", "no"]),
        ("witnessed_apneas", ["yes", "no"]),
        ("sex", ["male", "female"]),
        ("neck", ["39 cm", "40 cm", "41 cm", "42 cm", "43 cm"]),
    ];

    [Fact]
    public void Assess_OfRandomFindingsOverFindings_IsOpenOnlyWhereTwoCompletionsDisagree() => Gen.Select(Gen.Int[0, 99_999].Array[40 * Criteria], Gen.Int[0, 99_999].Array[Facts.Length].Array[3]).Sample(
        (codes, cases) =>
        {
            var text = new Writer(codes).Ruleset();
            var library = Rules.Load([.. RandomRules.Vocabulary, Rules.File("random.yaml", text)]);
            var rules = library.InForce(Rules.Date, null, null);
            var assessor = new Assessor(library);
            foreach (var places in cases)
            {
                // Two of three are unknown, so that there is something to settle.
                var known = Facts.Select((fact, place) => places[place] % 3 == 0 ? fact.Values[places[place] / 3 % fact.Values.Length] : null).ToArray();
                var findings = assessor.Assess(Read(known, library), Rules.Date).Findings;
                var completed = Completions(known).Select(values => Weighed(rules, Read(values, library))).ToArray();
                foreach (var finding in findings)
                {
                    var said = completed.Select(verdicts => Said(verdicts[finding.Criterion.Index])).Distinct(StringComparer.Ordinal).ToArray();
                    Said(finding.Conclusion.Verdict).ShouldBe(said.Length == 1 ? said[0] : "open", $"{finding.Id} of {string.Join(", ", known.Select(value => value ?? "?"))}\n{text}");
                }
            }
        },
        iter: Samples.Of(60));

    private static IEnumerable<string?[]> Completions(string?[] known) => known.Select((value, place) => value is null ? Facts[place].Values : [value])
        .Aggregate(new[] { Array.Empty<string?>() }.AsEnumerable(), (rows, values) => rows.SelectMany(row => values.Select(value => row.Append(value).ToArray())));

    private static string Said(Verdict verdict) => verdict.Standing == Standing.Undetermined ? "open" : $"{verdict.Standing} {(verdict.Standing == Standing.Met ? verdict.LowestBand : -1)}";

    private static Verdict[] Weighed(RulesInForce rules, Case subject)
    {
        var view = new View(subject.Facts, rules.Criteria.Length);
        foreach (var criterion in rules.EvaluationOrder.Select(index => rules.Criteria[index]))
        {
            view.Put(criterion.Index, criterion.Weigh(view));
        }

        return [.. rules.Criteria.Select(criterion => view.VerdictOf(criterion.Index))];
    }

    private static Case Read(string?[] values, RulesetLibrary library) => Rules.Read($$"""
        case: HT-RANDOM
        assessed_on: 2026-06-18
        patient: { sex: {{values[3] ?? "unknown"}} }
        intake:
          neck: {{values[4] ?? "unknown"}}
          symptoms: { habitual_snoring: {{values[1] ?? "unknown"}}, witnessed_apneas: {{values[2] ?? "unknown"}} }
          conditions: { hypertension: {{values[0] ?? "unknown"}} }
        """, library);

    // Conditions, grades and scores over those facts and over each other.
    private sealed class Writer(int[] codes)
    {
        private readonly List<(string Id, string Kind)> _written = [];
        private int _next;

        public string Ruleset()
        {
            var text = new StringBuilder();
            for (var number = 0; number < Criteria; number++)
            {
                var (id, kind) = ($"random.c{number}", Pick("when", "when", "when", "when", "grade", "score"));
                text.AppendLine($"  - id: {id}").AppendLine($"    title: Criterion {id}");
                text.AppendLine(kind switch
                {
                    "grade" => "    grade: { of: neck, bands: [{ grade: low, below: 40 cm }, { grade: middle, from: 40 cm, up_to: 42 cm }, { grade: high, above: 42 cm }] }",
                    "score" => $"    score: {{ items: [{string.Join(", ", new[] { 1, 1, 2 }.Select(points => $"{{ points: {points}, when: {Condition(1)}, label: An item }}"))}], "
                        + "classes: [{ class: low, from: 0, to: 1 }, { class: middle, from: 2, to: 2 }, { class: high, from: 3, to: 4 }] }",
                    _ => $"    when: {Condition(2)}",
                });
                if (kind == "when" && Next(3) == 0)
                {
                    text.AppendLine($"    applies_when: {Condition(1)}");
                }

                text.AppendLine("    cites: [bbp-osa \"criteria\"]");
                _written.Add((id, kind));
            }

            return Rules.Ruleset("random", text.ToString());
        }

        private string Condition(int depth) => (depth == 0 ? 9 : Next(9)) switch
        {
            0 or 1 => $"{{ all: [{Condition(depth - 1)}, {Condition(depth - 1)}] }}",
            2 or 3 => $"{{ any: [{Condition(depth - 1)}, {Condition(depth - 1)}] }}",
            4 => $"{{ not: {Condition(depth - 1)} }}",
            5 => $"{{ at_least: 2, of: [{Condition(depth - 1)}, {Condition(depth - 1)}, {Condition(depth - 1)}] }}",
            _ => Leaf(),
        };

        private string Leaf() => Next(8) switch
        {
            0 or 1 => Pick("hypertension", "habitual_snoring = no", "witnessed_apneas", "hypertension = no"),
            2 => Pick("sex is male", "sex is female", "sex is not male"),
            3 => $"neck {Pick(">=", ">", "<=", "<", "=", "!=")} {Pick("40 cm", "42 cm")}",
            _ when _written.Count == 0 => "habitual_snoring",
            _ => Finding(),
        };

        private string Finding()
        {
            var (id, kind) = _written[Next(_written.Count)];
            return kind switch
            {
                "grade" => $"{id} is {Pick("low", "at least middle", "at most middle", "not high", "middle")}",
                "score" => Pick($"{id} is {Pick("low", "at least middle", "not high", "middle")}", $"{id} {Pick(">=", ">", "<=", "<", "=", "!=")} {Next(5)} points"),
                _ => $"{id} is {Pick("met", "not met", "not applicable")}",
            };
        }

        private string Pick(params string[] words) => words[Next(words.Length)];

        private int Next(int below) => codes[_next++ % codes.Length] % below;
    }
}

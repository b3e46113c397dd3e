using System.Text;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using CsCheck;

namespace Criteria.Engine.Tests.Support;

/// <summary>Random rulesets in the words of the shipped vocabulary: every kind of condition, grades, scores, open questions, and findings that read findings.</summary>
internal static class RandomRules
{
    private const int Codes = 100_000;
    private const int Criteria = 24;

    private static readonly string[] Bands = ["low", "middle", "high", "top"];

    private static readonly Lazy<SourceFile[]> Words = new(() =>
        [.. ShippedRules.Files().Where(file => file.Name.Contains("vocabulary/", StringComparison.Ordinal) || file.Name.EndsWith("sources.yaml", StringComparison.Ordinal))]);

    /// <summary>The shipped vocabulary and sources, without a ruleset.</summary>
    public static IReadOnlyCollection<SourceFile> Vocabulary => Words.Value;

    /// <summary>Rules in force, with their text.</summary>
    public static Gen<(RulesInForce Rules, string Text)> Any { get; } = Gen.Int[0, Codes].Array[40 * Criteria].Select(codes =>
    {
        var text = new Writer(codes).Ruleset();
        var loading = RulesetLibrary.Load([.. Words.Value, Rules.File("random.yaml", text)]);
        var library = loading.Library ?? throw new InvalidOperationException(string.Join('\n', loading.Problems) + '\n' + text);
        return (library.InForce(Rules.Date, null, null), text);
    });

    // What a criterion is, as far as others may ask: its grade has bands, its score points.
    private enum Kind
    {
        Condition = 0,
        Grade,
        Score,
    }

    private sealed class Writer(int[] codes)
    {
        private readonly List<(string Id, Kind Kind)> _written = [];
        private int _next;
        private bool _mayAskForGaps = true;

        public string Ruleset()
        {
            var rounding = Pick("none", "as printed", "to whole numbers");
            var text = new StringBuilder();
            for (var number = 0; number < Criteria; number++)
            {
                Add(text, $"random.c{number}");
            }

            return Rules.Ruleset("random", text.ToString(), rounding);
        }

        private void Add(StringBuilder text, string id)
        {
            var kind = (Kind)Math.Max(0, Next(6) - 3);
            text.AppendLine($"  - id: {id}").AppendLine($"    title: Criterion {id}").AppendLine("    index: { index: REI, rule: 4 %, per: monitoring time }");
            text.AppendLine(kind switch
            {
                Kind.Condition => $"    when: {Condition(3)}",
                Kind.Grade => $"    grade: {Grade()}",
                _ => $"    score: {Score()}",
            });
            if (Next(3) == 0)
            {
                text.AppendLine($"    applies_when: {Condition(1)}");
            }

            if (Next(4) == 0)
            {
                text.AppendLine($"    silent: [{{ id: open-question, when: {Condition(1)}, question: What then?, readings: [One., Another.] }}]");
            }

            text.AppendLine("    cites: [bbp-osa \"criteria\"]");
            _written.Add((id, kind));
        }

        private string Condition(int depth) => (depth == 0 ? 9 : Next(9)) switch
        {
            0 or 1 => $"{{ all: [{Parts(depth)}] }}",
            2 or 3 => $"{{ any: [{Parts(depth)}] }}",
            4 => Opposite(depth - 1),
            5 => $"{{ at_least: {1 + Next(3)}, of: [{string.Join(", ", Enumerable.Range(0, 3).Select(_ => Condition(depth - 1)))}] }}",
            _ => Leaf(),
        };

        // No conclusion may rest on a gap, so nothing asks under `not` whether a fact is recorded.
        private string Opposite(int depth)
        {
            var outside = _mayAskForGaps;
            _mayAskForGaps = false;
            var text = $"{{ not: {Condition(depth)} }}";
            _mayAskForGaps = outside;
            return text;
        }

        private string Parts(int depth) => string.Join(", ", Enumerable.Range(0, 1 + Next(4)).Select(_ => Condition(depth - 1)));

        private string Leaf() => Next(10) switch
        {
            0 or 1 => Pick("hypertension", "habitual_snoring = no", "witnessed_apneas", "daytime_sleepiness = no"),
            2 => Pick("sex is male", "sex is not female", "recorder is type III or PAT set", "recorder is not type II or type III"),
            3 when _mayAskForGaps && Next(2) == 0 => Pick("neck is recorded", "weight is recorded"),
            3 => Pick("spo2_lowest <= spo2_mean", "rei_4.printed agrees with rei_4.counted"),
            4 => Pick("{ document: clinical evaluation, in_person: yes }", "{ document: order, dated: before 2026-05-23 }", "{ therapy: PAP }"),
            5 or 6 when _written.Count > 0 => Finding(),
            _ => Comparison(Pick("bmi", "neck", "age", "epworth_total", "spo2_lowest", "spo2_mean", "rei_4", "weight")),
        };

        private string Comparison(string fact) => $"{fact} {Pick(">=", ">", "<=", "<", "=", "!=")} " + fact switch
        {
            "bmi" => Pick("22 kg/m2", "30 kg/m2", "35 kg/m2", "35.05 kg/m2"),
            "neck" => Pick("40 cm", "40.5 cm", "16 in"),
            "age" => Pick("18 years", "50 years", "51 years"),
            "epworth_total" => Pick("5", "10", "11"),
            "rei_4" => Pick("5 /h", "15 /h", "30 /h", "14.95 /h"),
            "weight" => Pick("100 kg", "310 lb"),
            _ => Pick("80 %", "92 %", "94 %", "90.5 %"),
        };

        private string Finding()
        {
            var (id, kind) = _written[Next(_written.Count)];
            var graded = _written.Where(other => other.Kind == Kind.Grade).ToArray();
            return (kind, Next(3)) switch
            {
                (Kind.Grade, 0) => $"{id} is {Pick("low", "at least middle", "at most middle", "not high", "middle or high")}",
                (Kind.Grade, 1) => $"{id} differs from {graded[Next(graded.Length)].Id}",
                (Kind.Score, 0) => $"{id} is {Pick("low", "at least middle", "not high")}",
                (Kind.Score, 1) => $"{id} {Pick(">=", ">", "<=", "<", "=", "!=")} {Next(5)} points",
                _ => $"{id} is {Pick("met", "not met", "not applicable")}",
            };
        }

        private string Grade()
        {
            var (fact, ends) = Next(3) switch
            {
                0 => ("rei_4", new[] { "5 /h", "15 /h", "30 /h" }),
                1 => ("bmi", ["22 kg/m2", "35 kg/m2", "36 kg/m2"]),
                _ => ("spo2_lowest", ["80 %", "92 %", "95 %"]),
            };
            var included = Enumerable.Range(0, 3).Select(_ => Next(2) == 0).ToArray();
            var bands = Bands.Select((band, i) =>
            {
                var from = i == 0 ? "" : $", {(included[i - 1] ? "from" : "above")}: {ends[i - 1]}";
                var to = i == 3 ? "" : $", {(included[i] ? "below" : "up_to")}: {ends[i]}";
                return $"{{ grade: {band}{from}{to} }}";
            });
            return $"{{ of: {fact}, bands: [{string.Join(", ", bands)}] }}";
        }

        private string Score() =>
            $"{{ items: [{string.Join(", ", new[] { 1, 1, 2 }.Select(points => $"{{ points: {points}, when: {Condition(1)}, label: An item }}"))}], "
            + "classes: [{ class: low, from: 0, to: 1 }, { class: middle, from: 2, to: 2 }, { class: high, from: 3, to: 4 }] }";

        private string Pick(params string[] words) => words[Next(words.Length)];

        private int Next(int below) => codes[_next++ % codes.Length] % below;
    }
}

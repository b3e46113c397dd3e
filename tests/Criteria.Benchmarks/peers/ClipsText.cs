using System.Globalization;
using System.Text;

namespace Criteria.Benchmarks.Peers;

/// <summary>The workload for CLIPS: a fact with a slot for each fact of the case, and a rule for each criterion.</summary>
/// <remarks>
/// A complete case is told in the usual way, conditions on the left and the finding asserted on the right. A case with unknowns has the
/// symbol <c>unknown</c> in its slots, and each rule asserts whether its criterion is certainly and whether it is possibly met: CLIPS has
/// no third truth value, but a rule may carry two.
/// </remarks>
internal static class ClipsText
{
    private static readonly string[] Facts = [.. Workload.Numbers.Select(fact => fact.Name), .. Workload.Answers, .. Workload.Choices.Select(fact => fact.Name)];

    /// <summary>The rules.</summary>
    public static string Rules(bool complete)
    {
        var text = new StringBuilder($"(deftemplate case {string.Concat(Facts.Select(fact => $"(slot {fact}) "))})\n(deftemplate found (slot id) (slot certain) (slot possible))\n");
        for (var i = 0; i < Workload.Criteria.Length; i++)
        {
            text.Append(complete ? CompleteRule(i) : RuleWithUnknowns(i));
        }

        return text.ToString();
    }

    /// <summary>The cases, one function each, and the run that checks and times them.</summary>
    public static string Cases(MadeUpCase[] cases, bool complete, int repeats, int passes)
    {
        var text = new StringBuilder();
        for (var i = 0; i < cases.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"(deffunction case-{i} () (assert (case {string.Concat(cases[i].Facts.Select(fact => $"({fact.Key} {Value(fact.Value)})"))})))\n");
        }

        var all = string.Concat(Enumerable.Range(0, cases.Length).Select(i => string.Create(CultureInfo.InvariantCulture, $"(reset) (case-{i}) (run)\n")));
        var answer = complete
            ? "(if (any-factp ((?f found)) (eq ?f:id ?i)) then M else N)"
            : "(do-for-fact ((?f found)) (eq ?f:id ?i) (if ?f:certain then M else (if ?f:possible then U else N)))";
        text.Append("(deffunction answers () (printout t \"answers \") (loop-for-count (?i 0 ").Append(Workload.Criteria.Length - 1).Append(") (printout t ").Append(answer).Append(")) (printout t crlf))\n");
        text.Append("(deffunction one-pass ()\n").Append(all).Append(")\n");
        text.Append("(deffunction check ()\n");
        for (var i = 0; i < cases.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"(reset) (case-{i}) (run) (answers)\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"""
            )
            (deffunction passes () (loop-for-count {passes} (one-pass)))
            (deffunction timed () (bind ?start (time)) (passes) (format t "time %.1f%n" (/ (* 1e9 (- (time) ?start)) {passes * cases.Length})))
            (deffunction all-repeats () (check) (passes) (loop-for-count {repeats} (timed)))
            (all-repeats)

            """);
        return text.ToString();
    }

    private static string CompleteRule(int criterion)
    {
        var condition = TwoValued.Of(Workload.Criteria[criterion], Way.Complete);
        var body = ReadsFindings(condition) ? Element(condition) : $"(test {Test(condition)})";
        return string.Create(CultureInfo.InvariantCulture, $"(defrule c{criterion} (declare (salience {-criterion})) {Slots(condition)} {body} => (assert (found (id {criterion}))))\n");
    }

    private static string RuleWithUnknowns(int criterion)
    {
        var certain = TwoValued.Of(Workload.Criteria[criterion], Way.Certain);
        var possible = TwoValued.Of(Workload.Criteria[criterion], Way.Possible);
        var findings = string.Concat(Findings(certain).Distinct().Order().Select(read => $"(found (id {read}) (certain ?c{read}) (possible ?p{read})) "));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"(defrule c{criterion} {Slots(certain)} {findings}=> (assert (found (id {criterion}) (certain {Test(certain)}) (possible {Test(possible)}))))\n");
    }

    private static string Slots(TwoValued condition) => Names(condition).ToHashSet() is { Count: > 0 } names
        ? $"(case {string.Concat(names.Order(StringComparer.Ordinal).Select(fact => $"({fact} ?{fact}) "))})" : "(case)";

    // Conditions on findings are patterns, so what holds them together are patterns too.
    private static string Element(TwoValued condition) => condition switch
    {
        TwoValued.Finding finding => finding.Negated ? $"(not {Found(finding)})" : Found(finding),
        _ when !ReadsFindings(condition) => $"(test {Test(condition)})",
        TwoValued.Some some when some.Need == some.Parts.Length => $"(and {string.Concat(some.Parts.Select(Element))})",
        TwoValued.Some some => $"(or {string.Concat(some.Combinations().Select(parts => $"(and {string.Concat(parts.Select(Element))})"))})",
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private static string Found(TwoValued.Finding finding) => string.Create(CultureInfo.InvariantCulture, $"(found (id {finding.Criterion}))");

    private static string Test(TwoValued condition) => condition switch
    {
        TwoValued.Some { Parts: [var only] } => Test(only),
        TwoValued.Some some when some.Need == some.Parts.Length => $"(and {string.Join(' ', some.Parts.Select(Test))})",
        TwoValued.Some { Need: 1 } some => $"(or {string.Join(' ', some.Parts.Select(Test))})",
        TwoValued.Some some => string.Create(CultureInfo.InvariantCulture, $"(>= (+ {string.Join(' ', some.Parts.Select(part => $"(if {Test(part)} then 1 else 0)"))}) {some.Need})"),
        TwoValued.Number number => OrUnknown(number.Fact, number.OrUnknown, $"({number.Sign} ?{number.Fact} {Expressions.Text(number.Bound)})"),
        TwoValued.Answer answer => answer.OrUnknown ? $"(neq ?{answer.Fact} {(answer.Yes ? "no" : "yes")})" : $"(eq ?{answer.Fact} {(answer.Yes ? "yes" : "no")})",
        TwoValued.Word { Negated: false } word => OneOf(word, "eq", word.OrUnknown),
        TwoValued.Word word => $"(and {string.Join(' ', word.Words.Select(each => $"(neq ?{word.Fact} {Symbol(each)})"))} {(word.OrUnknown ? "TRUE" : $"(neq ?{word.Fact} unknown)")})",
        TwoValued.Finding finding => string.Create(CultureInfo.InvariantCulture, $"{(finding.Negated ? "(not " : "")}?{(finding.Possible ? 'p' : 'c')}{finding.Criterion}{(finding.Negated ? ")" : "")}"),
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private static string OneOf(TwoValued.Word word, string equal, bool orUnknown) =>
        $"(or {string.Join(' ', word.Words.Select(each => $"({equal} ?{word.Fact} {Symbol(each)})"))} {(orUnknown ? $"(eq ?{word.Fact} unknown)" : "FALSE")})";

    // A comparison with a symbol would be an error, so what is unknown is asked first.
    private static string OrUnknown(string fact, bool orUnknown, string test) =>
        orUnknown ? $"(or (eq ?{fact} unknown) {test})" : $"(and (neq ?{fact} unknown) {test})";

    private static string Value(object? value) => value switch
    {
        null => "unknown",
        bool yes => yes ? "yes" : "no",
        string word => Symbol(word),
        var number => ((int)number).ToString(CultureInfo.InvariantCulture),
    };

    private static string Symbol(string word) => word.Replace(' ', '-');

    private static bool ReadsFindings(TwoValued condition) => Findings(condition).Any();

    private static IEnumerable<int> Findings(TwoValued condition) => condition switch
    {
        TwoValued.Finding finding => [finding.Criterion],
        TwoValued.Some some => some.Parts.SelectMany(Findings),
        _ => [],
    };

    private static IEnumerable<string> Names(TwoValued condition) => condition switch
    {
        TwoValued.Some some => some.Parts.SelectMany(Names),
        TwoValued.Number number => [number.Fact],
        TwoValued.Answer answer => [answer.Fact],
        TwoValued.Word word => [word.Fact],
        _ => [],
    };
}

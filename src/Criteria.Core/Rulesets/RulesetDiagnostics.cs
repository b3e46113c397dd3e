using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>The messages about rulesets, sources and overlays.</summary>
internal static class RulesetDiagnostics
{
    public static Diagnostic NotARuleset(SourceSpan span) => new(
        "CR0100", Severity.Error, "neither a ruleset nor an overlay", span, "a ruleset starts with `ruleset: NAME`, an overlay with `overlay: NAME`");

    public static Diagnostic UnknownName(string name, string? nearest, SourceSpan span) => new(
        "CR0101", Severity.Error, $"unknown name `{Wording.Quote(name)}`", span,
        nearest is null ? "no fact, criterion or setting has this name" : $"did you mean `{nearest}`?");

    public static Diagnostic LeafSyntax(string found, string expected, SourceSpan span) => new(
        "CR0102", Severity.Error, $"found {found}", span, $"expected {expected}");

    public static Diagnostic BadQuantity(string text, string why, SourceSpan span) => new(
        "CR0103", Severity.Error, $"`{Wording.Quote(text)}` is not a quantity: {why}", span, "write a number with its unit, as in `15 /h`, `35 kg/m2`, `4 h`");

    public static Diagnostic WrongDimension(string text, FactDefinition fact, IEnumerable<string> units, SourceSpan span) => new(
        "CR0104", Severity.Error, $"`{Wording.Quote(text)}` cannot be compared with `{fact.Id}`", span,
        fact.Unit.Symbol.Length == 0 ? "write a bare number" : $"units of its kind: {Wording.List(units)}");

    public static Diagnostic WrongKind(string name, string isA, string use, SourceSpan span) => new(
        "CR0105", Severity.Error, $"`{name}` is {isA}", span, use);

    public static Diagnostic UnknownWord(string word, string name, string? nearest, IEnumerable<string> allowed, SourceSpan span) => new(
        "CR0106", Severity.Error, $"`{Wording.Quote(word)}` is not a value of `{name}`", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"allowed: {Wording.List(allowed)}");

    public static Diagnostic UndeterminedAsked(string asked, SourceSpan span) => new(
        "CR0107", Severity.Error, $"`{asked}`", span, "a conclusion may not rest on a gap: what is unknown today may be known tomorrow");

    public static Diagnostic DayCountMissing(SourceSpan span) => new(
        "CR0108", Severity.Error, "numbered days without a declared count", span, "add `day_count: start is day 0` or `start is day 1` to `conventions`");

    public static Diagnostic IndexNotDeclared(FactDefinition fact, SourceSpan span) => new(
        "CR0110", Severity.Error, $"`{fact.Id}` is an index and the criterion declares none", span,
        $"add `index: {{ index: {fact.Index!.Index}, rule: {fact.Index.Rule}, per: {fact.Index.Per} }}`");

    public static Diagnostic WrongIndex(FactDefinition fact, IEnumerable<IndexType> declared, SourceSpan span) => new(
        "CR0111", Severity.Error, $"`{fact.Id}` is another index than the criterion declares: {fact.Index}", span,
        $"declared: {string.Join("; ", declared)}");

    public static Diagnostic UnknownIndexType(string text, IEnumerable<string> known, SourceSpan span) => new(
        "CR0112", Severity.Error, $"no index of the vocabulary is {text}", span, $"known: {string.Join("; ", known)}");

    public static Diagnostic NoCitation(string id, SourceSpan span) => new(
        "CR0120", Severity.Error, $"`{id}` cites no source", span, "add `cites: [SOURCE \"section\"]`");

    public static Diagnostic BadCitation(string text, SourceSpan span) => new(
        "CR0121", Severity.Error, $"`{Wording.Quote(text)}` is not a citation", span, "write `SOURCE \"section\"`, with `(memory)`, `(restated)` or `(read)` after it where the section differs");

    public static Diagnostic UnknownSource(string id, string? nearest, SourceSpan span) => new(
        "CR0122", Severity.Error, $"no source `{Wording.Quote(id)}` in the register", span,
        nearest is null ? "add it to `sources.yaml`" : $"did you mean `{nearest}`?");

    public static Diagnostic UnknownPublishedFact(string id, string? nearest, SourceSpan span) => new(
        "CR0123", Severity.Error, $"no published fact `{Wording.Quote(id)}` in the register", span,
        nearest is null ? "add it to `published-facts.yaml`" : $"did you mean `{nearest}`?");

    public static Diagnostic BadPublishedFactId(string id, SourceSpan span) => new(
        "CR0124", Severity.Error, $"`{Wording.Quote(id)}` cannot be the name of a published fact", span, "capital letters, digits and `-`, starting with a letter");

    public static Diagnostic OneUseOfFact(string id, SourceSpan span) => new(
        "CR0125", Severity.Error, $"the published fact `{Wording.Quote(id)}` says more than one of `used_by`, `carried_by` and `not_a_criterion`", span, "keep one; a row that criteria rest on needs none");

    public static Diagnostic BadId(string id, SourceSpan span) => new(
        "CR0130", Severity.Error, $"`{Wording.Quote(id)}` cannot be a name", span, "lower case letters, digits, `.`, `-` and `_`, starting with a letter");

    public static Diagnostic Twice(string what, string name, SourceSpan span) => new(
        "CR0131", Severity.Error, $"the {what} `{name}` is defined twice", span);

    public static Diagnostic OneBody(string id, SourceSpan span) => new(
        "CR0132", Severity.Error, $"`{id}` needs exactly one of `when`, `grade`, `score` and `option`", span, "an option may have a `when` beside it");

    public static Diagnostic EmptyGroup(string key, SourceSpan span) => new(
        "CR0133", Severity.Error, $"`{key}` has no parts", span);

    public static Diagnostic BadCount(string text, int parts, SourceSpan span) => new(
        "CR0134", Severity.Error, $"`at_least: {Wording.Quote(text)}` of {parts} parts", span, $"a whole number from 1 to {parts}");

    public static Diagnostic NotACondition(string found, SourceSpan span) => new(
        "CR0135", Severity.Error, $"found {found}", span, "expected a condition: one comparison, or one of `all`, `any`, `not`, `at_least`, `document`, `therapy`");

    public static Diagnostic BandGap(string below, string above, SourceSpan span) => new(
        "CR0140", Severity.Error, $"a gap between the bands `{below}` and `{above}`", span, "a band starts where the one before it ends, and one of the two includes that value");

    public static Diagnostic BandOverlap(string below, string above, SourceSpan span) => new(
        "CR0141", Severity.Error, $"the bands `{below}` and `{above}` overlap", span, "a band starts where the one before it ends, and only one of the two includes that value");

    public static Diagnostic BandEnd(string grade, string why, SourceSpan span) => new(
        "CR0142", Severity.Error, $"the band `{grade}` {why}", span);

    public static Diagnostic BoundaryUnknown(string text, SourceSpan span) => new(
        "CR0143", Severity.Error, $"no two bands meet at `{Wording.Quote(text)}`", span);

    public static Diagnostic BoundarySetting(string setting, string below, string above, SourceSpan span) => new(
        "CR0144", Severity.Error, $"the setting `{setting}` must name `{below}` or `{above}`", span);

    public static Diagnostic Classes(string why, SourceSpan span) => new(
        "CR0145", Severity.Error, $"the classes of the score {why}", span, "classes cover every total from 0 to the highest, each once");

    public static Diagnostic BadPoints(string text, SourceSpan span) => new(
        "CR0146", Severity.Error, $"`{Wording.Quote(text)}` is not a number of points", span, "a whole number from 0 to 1000");

    public static Diagnostic DifferentBands(string left, string right, SourceSpan span) => new(
        "CR0147", Severity.Error, $"`{left}` and `{right}` have different grades and cannot be compared", span);

    public static Diagnostic Cycle(IEnumerable<string> loop, SourceSpan span) => new(
        "CR0150", Severity.Error, $"criteria refer to each other in a loop: {string.Join(" -> ", loop)}", span);

    public static Diagnostic ClinicalReadsCoverage(string clinical, string coverage, SourceSpan span) => new(
        "CR0151", Severity.Error, $"the clinical ruleset `{clinical}` reads the coverage finding `{coverage}`", span, "a clinical conclusion never depends on a payer's rule");

    public static Diagnostic OtherPayer(string id, string other, SourceSpan span) => new(
        "CR0152", Severity.Error, $"`{id}` reads `{other}`, which belongs to another payer or item", span);

    public static Diagnostic PayerMissing(string ruleset, SourceSpan span) => new(
        "CR0160", Severity.Error, $"the coverage ruleset `{ruleset}` needs `payer` and `item`", span);

    public static Diagnostic PayerOnClinical(string ruleset, SourceSpan span) => new(
        "CR0161", Severity.Error, $"the clinical ruleset `{ruleset}` names a payer or an item", span);

    public static Diagnostic EffectiveOrder(SourceSpan span) => new(
        "CR0162", Severity.Error, "`until` is not after `from`", span);

    public static Diagnostic EffectiveOverlap(string ruleset, SourceSpan span) => new(
        "CR0163", Severity.Error, $"two active versions of `{ruleset}` are in force on one day", span, "end the older one with `until`");

    public static Diagnostic SettingNotAllowed(string value, string setting, IEnumerable<string> allowed, SourceSpan span) => new(
        "CR0164", Severity.Error, $"`{Wording.Quote(value)}` is not allowed for the setting `{setting}`", span, $"allowed: {Wording.List(allowed)}");

    public static Diagnostic OverlayBase(string id, string? nearest, SourceSpan span) => new(
        "CR0170", Severity.Error, $"no ruleset `{Wording.Quote(id)}` to extend", span, nearest is null ? null : $"did you mean `{nearest}`?");

    public static Diagnostic OverlayChange(SourceSpan span) => new(
        "CR0171", Severity.Error, "a change that does nothing", span, "one of `set`, `answer`, `replace`, `add`");

    public static Diagnostic OverlayTarget(string what, string name, string? nearest, SourceSpan span) => new(
        "CR0172", Severity.Error, $"the base has no {what} `{Wording.Quote(name)}`", span, nearest is null ? null : $"did you mean `{nearest}`?");

    public static Diagnostic AnsweredTwice(string question, string criterion, SourceSpan span) => new(
        "CR0173", Severity.Error, $"the question `{Wording.Quote(question)}` of `{Wording.Quote(criterion)}` is answered twice", span,
        "two local decisions on one question would make the order of the files decide; keep one");

    public static Diagnostic ChangedTwice(string what, string name, SourceSpan span) => new(
        "CR0174", Severity.Error, $"the {what} `{Wording.Quote(name)}` is changed twice", span,
        "two local changes of one thing would make the order of the files decide; keep one");

    public static Diagnostic NoVocabulary() => new(
        "CR0180", Severity.Error, "no vocabulary", SourceSpan.StartOf("vocabulary"), "the folder needs `vocabulary/*.yaml`");

    public static Diagnostic NoSources() => new(
        "CR0181", Severity.Error, "no register of sources", SourceSpan.StartOf("sources.yaml"), "the folder needs `sources.yaml`");

    public static Diagnostic NoRulesets() => new(
        "CR0182", Severity.Error, "no rulesets", SourceSpan.StartOf("rulesets"), "the folder needs at least one file that starts with `ruleset:`");

    public static Diagnostic NameTaken(string name, string by, SourceSpan span) => new(
        "CR0183", Severity.Error, $"the name `{name}` is already that of {by}", span);

    public static Diagnostic WindowOfNothing(string criterion, string ruleset, string? nearest, SourceSpan span) => new(
        "CR0190", Severity.Error, $"the ruleset `{ruleset}` has no criterion `{Wording.Quote(criterion)}` for a window", span, nearest is null ? null : $"did you mean `{nearest}`?");

    public static Diagnostic WindowWithoutDate(string window, SourceSpan span) => new(
        "CR0191", Severity.Error, $"the window `{window}` needs one of `from` and `planned`", span, "`from` names the date that its days are counted from, `planned` the date for which its criterion is tried");

    public static Diagnostic WindowNotCounted(string window, string date, string criterion, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CR0192", Severity.Error, $"the window `{window}` names `{Wording.Quote(date)}`, and no date of `{criterion}` is set against it", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + (known.Any() ? $"possible: {Wording.List(known)}" : "it compares no dates"));

    public static Diagnostic WindowOfSeveral(string window, string date, string criterion, SourceSpan span) => new(
        "CR0193", Severity.Error, $"the window `{window}` is not one: `{criterion}` counts several from `{date}` that must hold together", span,
        "give each a criterion of its own");

    public static Diagnostic WindowReadsFindings(string window, string criterion, SourceSpan span) => new(
        "CR0194", Severity.Error, $"the window `{window}` tries other dates, and `{criterion}` rests on other findings", span, "choose a criterion that reads facts and documents only");
}

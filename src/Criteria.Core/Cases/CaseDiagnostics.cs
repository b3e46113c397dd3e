using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>The messages about case files.</summary>
internal static class CaseDiagnostics
{
    public static Diagnostic UnknownFact(string key, string where, string? nearest, IEnumerable<string> allowed, SourceSpan span) => new(
        "CC0101", Severity.Error, $"unknown fact `{Wording.Quote(key)}` in {where}", span,
        nearest is null ? $"allowed here: {Wording.List(allowed)}" : $"did you mean `{nearest}`?");

    public static Diagnostic UnknownFactElsewhere(string key, string where, string place, SourceSpan span) => new(
        "CC0101", Severity.Error, $"unknown fact `{Wording.Quote(key)}` in {where}", span, $"did you mean `{place}`?");

    public static Diagnostic PartedByComma(string key, string where, SourceSpan span) => new(
        "CC0101", Severity.Error, $"unknown fact `{Wording.Quote(key)}` in {where}", span, "a comma in braces parts values: write a decimal point, as in `178.5 cm`");

    public static Diagnostic Misplaced(string key, string where, string place, SourceSpan span) => new(
        "CC0102", Severity.Error, $"`{Wording.Quote(key)}` does not stand in {where}", span, $"it belongs at `{place}`");

    public static Diagnostic NoNumber(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0103", Severity.Error, $"`{Wording.Quote(text)}` is not a number for `{fact.Id}`", span, HowToWrite(fact));

    public static Diagnostic DecimalComma(string part, SourceSpan span) => new(
        "CC0104", Severity.Error, $"decimal comma in `{Wording.Quote(part)}`", span,
        $"write a decimal point: `{Wording.Quote(part.Replace(',', '.'))}`; if the comma parts thousands, leave it out: `{Wording.Quote(part.Replace(",", "", StringComparison.Ordinal))}`");

    public static Diagnostic NumberForm(string part, SourceSpan span) => new(
        "CC0105", Severity.Error, $"`{Wording.Quote(part)}` is not a plain number", span, "digits with at most one decimal point, no sign, no exponent, no thousands separator");

    public static Diagnostic TooManyDigits(string part, SourceSpan span) => new(
        "CC0106", Severity.Error, $"`{Wording.Quote(part)}` has more than {Ratio.MostDigits} digits", span, "no measurement of this job has so many");

    public static Diagnostic UnknownUnit(FactDefinition fact, string symbol, string? nearest, SourceSpan span) => new(
        "CC0107", Severity.Error, $"unknown unit `{Wording.Quote(symbol)}` for `{fact.Id}`", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + HowToWrite(fact));

    public static Diagnostic WrongUnit(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0108", Severity.Error, $"`{Wording.Quote(text)}` has the wrong unit for `{fact.Id}`", span, HowToWrite(fact));

    public static Diagnostic UnitMissing(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0109", Severity.Error, $"`{Wording.Quote(text)}` has no unit, and `{fact.Id}` needs one", span, HowToWrite(fact));

    public static Diagnostic MixedUnits(string part, SourceSpan span) => new(
        "CC0110", Severity.Error, $"the parts around `{Wording.Quote(part)}` do not belong together", span, "larger unit first, as in `5 ft 10 in` or `7 h 12 min`");

    public static Diagnostic Negative(string part, SourceSpan span) => new(
        "CC0111", Severity.Error, $"`{Wording.Quote(part)}` is below zero", span, "no fact of this vocabulary is");

    public static Diagnostic NotWhole(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0112", Severity.Error, $"`{Wording.Quote(text)}` is not a whole number, and `{fact.Id}` is a count", span);

    public static Diagnostic Impossible(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0113", Severity.Error, $"`{Wording.Quote(text)}` is impossible for `{fact.Id}`", span, $"possible: {RangeText(fact, fact.Range!.Value)}");

    public static Diagnostic Implausible(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0114", Severity.Warning, $"`{Wording.Quote(text)}` is implausible for `{fact.Id}`", span,
        $"usual: {RangeText(fact, fact.Plausible!.Value)}; check the entry and its unit");

    public static Diagnostic NotYesNo(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0115", Severity.Error, $"`{Wording.Quote(text)}` is not an answer for `{fact.Id}`", span, "allowed: `yes`, `no`, `unknown`, `not applicable`");

    public static Diagnostic NotAChoice(FactDefinition fact, string text, string? nearest, SourceSpan span) => new(
        "CC0116", Severity.Error, $"`{Wording.Quote(text)}` is not a value of `{fact.Id}`", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"allowed: {Wording.List(fact.Choices)}");

    public static Diagnostic Computed(FactDefinition fact, SourceSpan span) => new(
        "CC0117", Severity.Error, $"`{fact.Id}` is computed and cannot be written", span, $"it comes from {Wording.List(fact.Computed!.From)}");

    public static Diagnostic NotACode(FactDefinition fact, string text, SourceSpan span) => new(
        "CC0118", Severity.Error, $"`{Wording.Quote(text)}` is not a code for `{fact.Id}`", span,
        $"a code of {fact.System}: capital letters and digits, with dots or hyphens between them");

    public static Diagnostic CodeWithoutDot(FactDefinition fact, string text, string meant, SourceSpan span) => new(
        "CC0119", Severity.Warning, $"the code `{Wording.Quote(text)}` of `{fact.Id}` is in no code set", span, $"did you mean `{meant}`?");

    public static Diagnostic ReviewerMissing(string group, SourceSpan span) => new(
        "CC0120", Severity.Error, $"`others: no` closes {group} and nobody is named", span, "add `reviewed_by:` with who went through the list");

    public static Diagnostic OthersNotNo(string text, SourceSpan span) => new(
        "CC0121", Severity.Error, $"`others: {Wording.Quote(text)}`", span, "`others: no` closes the list; leave it out otherwise");

    public static Diagnostic ReviewerWithoutOthers(SourceSpan span) => new(
        "CC0122", Severity.Warning, "`reviewed_by` closes nothing without `others: no`", span, "add `others: no` if everything left out is a no");

    public static Diagnostic NotClosable(string where, SourceSpan span) => new(
        "CC0123", Severity.Error, $"{where} cannot be closed with `others: no`", span, "only groups of yes/no facts, `documents` and `therapy` can");

    public static Diagnostic DeclarationUnsigned(SourceSpan span) => new(
        "CC0124", Severity.Error, $"`{NightsPlaces.Section}` declares how the nights are read and nobody is named", span, "add `declared_by:` with who decided it and when");

    public static Diagnostic IndexUnknown(string index, string? nearest, IEnumerable<string> known, SourceSpan span) => new(
        "CC0130", Severity.Error, $"unknown index `{Wording.Quote(index)}`", span,
        (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"known: {Wording.List(known)}");

    public static Diagnostic RdiAmbiguous(SourceSpan span) => new(
        "CC0131", Severity.Error, "`RDI` names two different quantities", span,
        "write `RDI with arousals` (apneas, hypopneas and arousal-related events per hour of sleep) or `payer RDI` (apneas and hypopneas per hour of recording)");

    public static Diagnostic IndexRuleMissing(string index, string key, IEnumerable<string> rules, SourceSpan span) => new(
        "CC0132", Severity.Error, $"the {index} has no `{key}`", span, $"an index without its rule cannot be graded; known: {Wording.List(rules)}");

    public static Diagnostic IndexRuleUnknown(string index, string rule, IEnumerable<string> rules, SourceSpan span) => new(
        "CC0133", Severity.Error, $"the {index} is not known with the rule `{Wording.Quote(rule)}`", span, $"known: {Wording.List(rules)}");

    public static Diagnostic IndexTwice(string index, SourceSpan span) => new(
        "CC0134", Severity.Error, $"the {index} stands twice for this night", span);

    public static Diagnostic RateDisagrees(string index, string printed, string computed, SourceSpan span) => new(
        "CC0135", Severity.Warning, $"the {index} is printed as {printed} but its count and time give {computed}", span,
        "both are kept: no threshold between them is decided");

    public static Diagnostic ComputedDisagrees(string label, string written, string computed, SourceSpan span) => new(
        "CC0136", Severity.Warning, $"the {label} is written as {written} but what it is computed from gives {computed}", span,
        "both are kept: no threshold between them is decided");

    public static Diagnostic IndexRuleTwice(string index, SourceSpan span) => new(
        "CC0137", Severity.Error, $"the {index} has both `hypopnea` and `desaturation`", span, "an ODI has a desaturation, every other index a hypopnea rule");

    public static Diagnostic RecordIdMissing(string what, SourceSpan span) => new(
        "CC0140", Severity.Error, $"a {what} without `id`", span, "a short name of your choice, so that values can point to it");

    public static Diagnostic RecordIdTwice(string id, SourceSpan span) => new(
        "CC0141", Severity.Error, $"the id `{Wording.Quote(id)}` stands twice", span);

    public static Diagnostic NoSuchDocument(string id, string nearest, SourceSpan span) => new(
        "CC0142", Severity.Warning, $"no document `{Wording.Quote(id)}` in this case", span, $"did you mean `{nearest}`?");

    public static Diagnostic PageOutside(string id, decimal page, decimal pages, SourceSpan span) => new(
        "CC0143", Severity.Warning, $"page {page:0} of `{id}`, which has {pages:0}", span);

    public static Diagnostic KeyLooksLikeName(string key, SourceSpan span) => new(
        "CC0151", Severity.Warning, $"the case key `{Wording.Quote(key)}` looks like a person's name", span, "use a key that names nobody");

    public static Diagnostic SameNightTwice(string date, SourceSpan span) => new(
        "CC0152", Severity.Error, $"two nights of {date}", span);

    private static string RangeText(FactDefinition fact, Interval range) =>
        $"{QuantityText.Of(range.Low, fact.Unit)} to {QuantityText.Of(range.High, fact.Unit)}";

    private static string HowToWrite(FactDefinition fact) => fact.Unit.Dimension switch
    {
        Dimension.None => "write a bare number",
        Dimension.Duration => "write hours and minutes: `7 h 12 min`",
        Dimension.Length => "write centimetres or inches: `178 cm`, `5 ft 10 in`",
        Dimension.Mass => "write kilograms or pounds: `104 kg`, `229 lb`",
        Dimension.Share => "write percent or fraction: `88 %`, `0.88 fraction`",
        var dimension => $"write the unit: {Wording.List(Units.Of(dimension))}",
    };
}

using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Standing = Criteria.Core.Logic.Standing;

namespace Criteria.Cli.Report;

/// <summary>The report that a clinician and the billing staff read: what to read first, the result, the clinical draft, the coverage check, whom to ask.</summary>
internal sealed partial class TextReport
{
    private const int Indent = 16;

    private readonly Assessment _assessment;
    private readonly Outlook? _outlook;
    private readonly PlainText _text;
    private readonly ShownFindings _shown;

    private TextReport(Assessment assessment, Outlook? outlook, TextWriter writer) =>
        (_assessment, _outlook, _text, _shown) = (assessment, outlook, new PlainText(writer), new ShownFindings(assessment));

    private bool SeveralNights => _assessment.Nights.Length > 1;

    public static void Write(Assessment assessment, Outlook? outlook, TextWriter writer) => new TextReport(assessment, outlook, writer).Write();

    private void Write()
    {
        Head();
        if (_assessment.Refusal is { } refusal)
        {
            Refused(refusal);
        }
        else
        {
            ReadFirst();
            Results();
            Clinical();
            Coverage();
            WhatWouldChangeIt();
            WorthAsking();
        }

        Sources();
        Foot();
    }

    private void Head()
    {
        _text.Spread($"CASE {_assessment.Case}", _assessment.Refusal is null ? "DRAFT, not signed" : "NOT ASSESSED");
        var nights = _assessment.Nights.IsEmpty ? "No night in the case" : Words.Capital(Words.List(_assessment.Nights.Select(Words.Night)));
        _text.Hanging("", $"{nights}. Rules in force on {Words.Date(_assessment.AsOf)}.", 0);
        _text.Line("For a licensed clinician to review. Options, not orders. Not for urgent use.");
    }

    private void Refused(Finding refusal)
    {
        _text.Part("OUTSIDE THE SCOPE OF THESE RULES");
        _text.Hanging("  *", Words.Sentence(refusal.ReadFirst ?? refusal.Criterion.Title), 4);
        _text.Hanging("  *", $"{Words.Sentence(Words.Why(refusal))} [{refusal.Id}]", 4);
        foreach (var line in refusal.Cautions.Concat(EntryWarnings()))
        {
            _text.Hanging("  *", line, 4);
        }
    }

    private void ReadFirst()
    {
        // Of one ruleset, what its sources say comes first and how near a boundary is last: a disagreement of the scoring rules leads.
        var lines = _assessment.Findings.GroupBy(finding => finding.Criterion.Ruleset.Id)
            .SelectMany(findings => findings.SelectMany(FirstSentences).Concat(NightsThatDiffer(findings.Key)).Concat(findings.SelectMany(FirstLines)))
            .Concat(EntryWarnings())
            .Concat(NightsApartFromPolicy())
            .Concat(_assessment.Rulesets.SelectMany(ruleset => ruleset.Differences).Select(difference =>
                $"Local rule {difference.Overlay}: {difference.What}. {Words.Sentence(difference.Reason)} Approved by {difference.ApprovedBy} on {Words.Date(difference.ApprovedOn)}."))
            .Distinct(StringComparer.Ordinal).ToArray();
        if (lines.Length == 0)
        {
            return;
        }

        _text.Part("READ FIRST");
        foreach (var line in lines)
        {
            _text.Hanging("  *", line, 4);
        }
    }

    private string NightLead(Finding finding) => finding.Night is { } night && SeveralNights ? $"{Words.Capital(Words.Night(night))}: " : "";

    private IEnumerable<string> NightsThatDiffer(string ruleset) =>
        _assessment.NightsTogether.Where(together => together.Differ && together.Criterion.Ruleset.Id == ruleset).Select(NightsText.Differ);

    // Like a local rule, what one case decides apart from the policy is said at the top, and once for all its indices.
    private IEnumerable<string> NightsApartFromPolicy() => _assessment.NightsTogether.FirstOrDefault(together => together.DiffersFromPolicy) is { } together
        ? [Words.Sentence($"Several nights are read by the rule `{together.Rule.ToString().ToLowerInvariant()}`{NightsText.Declared(together)}") + " The nights keep their own grades."]
        : [];

    private IEnumerable<string> FirstSentences(Finding finding) => finding.ReadFirst is { } sentence ? [NightLead(finding) + sentence] : [];

    private IEnumerable<string> FirstLines(Finding finding)
    {
        var lead = NightLead(finding);
        if (finding.Criterion.Refuses && finding.Standing == Standing.Undetermined)
        {
            yield return $"Not known: {Words.List(finding.Missing.Select(fact => Words.Small(fact.Label)))}. These rules are for adults only.";
        }

        if (finding is { Closeness: { IsNear: true } closeness, Criterion.Shown: Shown.AtTheTop })
        {
            yield return $"{lead}Near a boundary. {finding.Criterion.Title}: {CountingText.Nearest(closeness)}";
        }

        foreach (var question in finding.Silent)
        {
            yield return $"{lead}Open, and not decided here: {question.Question} [{finding.Id}]";
        }
    }

    private IEnumerable<string> EntryWarnings() => _assessment.Problems.Where(problem => problem.Severity == Severity.Warning)
        .Select(problem => $"Check: {problem.Message}{(problem.Help is null ? "" : $"; {problem.Help}")} ({problem.Span.File}, line {problem.Span.Line}).");

    private void Results()
    {
        _text.Part("RESULT");
        if (_assessment.Rulesets.All(ruleset => ruleset.Function != RulesetFunction.Clinical))
        {
            _text.Hanging("  ", "No clinical rules are in force on this date: no grade, and no check of the age, was made.", 2);
        }

        // Grades come first: they are what a reader looks for. The rest stays in its order.
        foreach (var finding in _assessment.Findings.Where(finding => finding.Criterion.Shown == Shown.AtTheTop && finding.Standing != Standing.NotApplicable
            && !_shown.MayNotConcernTheClaim(finding)).OrderBy(finding => finding.Value is null))
        {
            var part = finding.Criterion.Ruleset.Function == RulesetFunction.Coverage ? $"{finding.Criterion.Ruleset.Heading}: " : "";
            var night = finding.Night is { } label && SeveralNights ? $", {Words.Night(label)}" : "";
            _text.Hanging($"  {Words.Lead(finding)}", $"{part}{Words.Title(finding)}{night}", Indent);
            var why = finding.Standing == Standing.NotMet ? Words.Why(finding)
                : finding.Standing == Standing.Undetermined && Words.WaitsFor(finding) is { Length: > 0 } open ? $"open: {open}"
                : "";
            if (why.Length > 0)
            {
                _text.Hanging("", Words.Sentence(why), Indent);
            }
        }

        NightsTogether();
    }

    // Never in place of a night: below all of them, and with its method.
    private void NightsTogether()
    {
        foreach (var together in _assessment.NightsTogether.Where(together => together.Rule != NightRule.Each))
        {
            _text.Hanging("  Together", $"{together.Criterion.Title}: {NightsText.Together(together)}", Indent);
            _text.Hanging("", Words.Sentence($"Read so{NightsText.Declared(together)}"), Indent);
            if (NightsText.LeftOut(together) is { Length: > 0 } leftOut)
            {
                _text.Hanging("", leftOut, Indent);
            }
        }
    }

    private void Clinical()
    {
        _text.Part("CLINICAL DRAFT");
        foreach (var ruleset in _assessment.Rulesets.Where(ruleset => ruleset.Function == RulesetFunction.Clinical))
        {
            Section(ruleset, ruleset.Heading);
        }

        Rest(RulesetFunction.Clinical);
    }

    private void Coverage()
    {
        if (_assessment.Payer is null || _assessment.Item is null)
        {
            _text.Part("COVERAGE CHECK");
            _text.Hanging("  ", (_assessment.Payer, _assessment.Item) switch
            {
                (null, null) => "Not asked: the case names no payer and item.",
                (null, _) => "Not checked: the case names an item and no payer.",
                _ => "Not checked: the case names a payer and no item.",
            }, 2);
            return;
        }

        var rulesets = _assessment.Rulesets.Where(ruleset => ruleset.Function == RulesetFunction.Coverage).ToArray();
        var heading = rulesets.Length > 0 ? rulesets[0].Heading : $"{_assessment.Payer}, {_assessment.Item}";
        var service = _assessment.ServiceDate is { } date ? $", service on {Words.Date(date)}" : "";
        _text.Part($"COVERAGE CHECK: {heading}{service}");
        _text.Hanging("  ", "Compares the file with a policy text. It says nothing of medical need, and the payer's current text decides.", 2);
        if (rulesets.Length == 0)
        {
            _text.Hanging("  ", "Not checked: there are no rules for this payer and item on this date.", 2);
        }

        foreach (var ruleset in rulesets)
        {
            Section(ruleset, null);
        }

        Rest(RulesetFunction.Coverage);
    }

    private void Sources()
    {
        // Those behind the lines that are printed; `explain` has those of every finding.
        var printed = _assessment.Refusal is { } refusal ? [refusal] : _assessment.Findings.Where(_shown.IsInFull);
        var cited = printed.SelectMany(finding => finding.Criterion.Cites).Distinct()
            .GroupBy(citation => citation.Source.Id).OrderBy(group => group.Key, StringComparer.Ordinal);
        _text.Part("SOURCES");
        foreach (var source in cited)
        {
            var levels = source.GroupBy(citation => citation.Verified).OrderByDescending(group => group.Key).Select(level =>
                $"{Words.Capital(level.Key.Sentence())}: {string.Join("; ", level.Select(citation => citation.Section).Where(section => section.Length > 0).Distinct(StringComparer.Ordinal))}.");
            _text.Hanging("  *", $"{source.First().Source.ShortName}. {string.Join(" ", levels)}{Words.Overdue(source.First().Source, _assessment.AsOf)}", 4);
        }
    }

    private void Foot()
    {
        _text.Part("RULES");
        var rules = _assessment.Rulesets.Length > 0 ? string.Join(", ", _assessment.Rulesets.Select(ruleset => $"{ruleset.Id} {ruleset.Version}")) : "None in force on this date";
        _text.Hanging("  ", $"{rules}. Program {ProgramVersion.Text}.", 2);
        _text.Hanging("  ", "The whole trace of a finding: criteria explain FILE FINDING", 2);
    }
}

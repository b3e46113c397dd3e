using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Findings;
using Humanizer;

namespace Criteria.Cli.Report;

/// <summary>The report that a clinician and the billing staff read: what to read first, the clinical draft, the coverage check, whom to ask.</summary>
internal sealed class TextReport
{
    private const int Indent = 16;

    private readonly Assessment _assessment;
    private readonly PlainText _text;
    private readonly HashSet<string> _cautions = new(StringComparer.Ordinal);

    private TextReport(Assessment assessment, TextWriter writer) => (_assessment, _text) = (assessment, new PlainText(writer));

    public static void Write(Assessment assessment, TextWriter writer) => new TextReport(assessment, writer).Write();

    private void Write()
    {
        Head();
        if (_assessment.Refusal is { } refusal)
        {
            Refused(refusal);
            return;
        }

        Results();
        ReadFirst();
        Clinical();
        Coverage();
        WhomToAsk();
        Sources();
        Foot();
    }

    private void Head()
    {
        _text.Spread($"CASE {_assessment.Case}", _assessment.Refusal is null ? "DRAFT, not signed" : "NOT ASSESSED");
        var nights = _assessment.Nights.IsEmpty ? "No night in the case" : Words.Capital(_assessment.Nights.Select(Words.Night).Humanize());
        _text.Hanging("", $"{nights}. Rules in force on {Words.Date(_assessment.AsOf)}.", 0);
        _text.Line("For a licensed clinician to review. Options, not orders. Not for urgent use.");
    }

    private void Refused(Finding refusal)
    {
        _text.Part("OUTSIDE THE SCOPE OF THESE RULES");
        _text.Hanging("  ", refusal.ReadFirst ?? refusal.Criterion.Title, 2);
        _text.Hanging("  ", $"{Words.Capital(Words.Why(refusal))}. [{refusal.Id}]", 2);
        foreach (var caution in refusal.Cautions)
        {
            _text.Hanging("  ", caution, 2);
        }

        _text.Line();
        SourceLines([refusal]);
        Foot();
    }

    private void Results()
    {
        _text.Part("RESULT");
        foreach (var finding in _assessment.Findings.Where(finding => finding.Criterion.Shown == Shown.AtTheTop && finding.Standing != Standing.NotApplicable))
        {
            var part = finding.Criterion.Ruleset.Function == RulesetFunction.Coverage ? $"{finding.Criterion.Ruleset.Heading}: " : "";
            _text.Hanging($"  {Words.Lead(finding)}", $"{part}{Words.Title(finding)}{NightSuffix(finding)}", Indent);
        }
    }

    private void ReadFirst()
    {
        var lines = new List<string>();
        foreach (var finding in _assessment.Findings)
        {
            if (finding.ReadFirst is { } sentence)
            {
                lines.Add($"{sentence}{NightSuffix(finding)}");
            }

            if (finding.Criterion.Refuses && finding.Standing == Standing.Undetermined)
            {
                lines.Add($"Not known: {finding.Missing.Select(fact => fact.Label.ToLowerInvariant()).Humanize()}. These rules are for adults only.");
            }

            lines.AddRange(finding.Silent.Select(question => $"Open, and not decided here: {question.Question} [{finding.Id}]"));
        }

        lines.AddRange(_assessment.Problems.Where(problem => problem.Severity == Severity.Warning)
            .Select(problem => $"Check the entry: {problem.Message}{(problem.Help is null ? "" : $"; {problem.Help}")}. ({problem.Span.File}:{problem.Span.Line})"));
        lines.AddRange(_assessment.Rulesets.SelectMany(ruleset => ruleset.Differences)
            .Select(difference => $"Local rule {difference.Overlay}: {difference.What}. {difference.Reason} Approved by {difference.ApprovedBy} on {Words.Date(difference.ApprovedOn)}."));
        if (lines.Count == 0)
        {
            return;
        }

        _text.Part("READ FIRST");
        foreach (var line in lines.Distinct(StringComparer.Ordinal))
        {
            _text.Hanging("  *", line, 4);
        }
    }

    private void Clinical()
    {
        _text.Part("CLINICAL DRAFT");
        Rulesets(RulesetFunction.Clinical);
    }

    private void Coverage()
    {
        if (_assessment.Payer is null || _assessment.Item is null)
        {
            _text.Part("COVERAGE CHECK");
            _text.Hanging("  ", "Not asked: the case names no payer and item.", 2);
            return;
        }

        var service = _assessment.ServiceDate is { } date ? $", service on {Words.Date(date)}" : "";
        var heading = _assessment.Rulesets.FirstOrDefault(ruleset => ruleset.Function == RulesetFunction.Coverage)?.Heading ?? $"{_assessment.Payer}, {_assessment.Item}";
        _text.Part($"COVERAGE CHECK: {heading}{service}");
        _text.Hanging("  ", "Compares the file with a policy text. It says nothing of medical need, and the payer's current text decides.", 2);
        if (_assessment.Rulesets.Any(ruleset => ruleset.Function == RulesetFunction.Coverage))
        {
            Rulesets(RulesetFunction.Coverage);
        }
        else
        {
            _text.Hanging("  ", "Not checked: there are no rules for this payer and item on this date.", 2);
        }
    }

    private void Rulesets(RulesetFunction function)
    {
        foreach (var ruleset in _assessment.Rulesets.Where(ruleset => ruleset.Function == function))
        {
            var findings = _assessment.Findings.Where(finding => finding.Criterion.Ruleset.Id == ruleset.Id && finding.Criterion.Shown != Shown.InTheTrace).ToArray();
            var full = findings.Where(IsShownInFull).ToArray();
            var absent = Titles(findings, finding => !IsShownInFull(finding) && finding.Standing == Standing.NotMet);
            var open = Titles(findings, finding => !IsShownInFull(finding) && finding.Standing == Standing.Undetermined);
            var inapplicable = Titles(findings, finding => finding.Standing == Standing.NotApplicable);
            if (full.Length + open.Length == 0 && findings.All(finding => finding.Criterion.Refuses || finding.Standing == Standing.NotApplicable))
            {
                continue;
            }

            _text.Line();
            if (function == RulesetFunction.Clinical)
            {
                _text.Line(ruleset.Heading);
            }

            foreach (var finding in full)
            {
                Show(finding);
            }

            Compressed("Checked, not so", absent);
            Compressed("Cannot tell yet", open);
            Compressed("Not applicable", inapplicable);
        }
    }

    private static bool IsShownInFull(Finding finding) => finding.Standing != Standing.NotApplicable
        && (finding.Criterion.Shown is Shown.Always or Shown.AtTheTop || finding.Standing == Standing.Met || !finding.Silent.IsEmpty);

    private string[] Titles(IEnumerable<Finding> findings, Func<Finding, bool> which) =>
        [.. findings.Where(which).Select(finding => $"{finding.Criterion.Title}{NightSuffix(finding)}").Distinct(StringComparer.Ordinal)];

    private void Compressed(string lead, string[] titles)
    {
        if (titles.Length > 0)
        {
            _text.Hanging($"  {lead}", $"{string.Join("; ", titles)}.", Indent + 4);
        }
    }

    private void Show(Finding finding)
    {
        _text.Hanging($"  {Words.Lead(finding)}", $"{Words.Title(finding)}{NightSuffix(finding)} [{finding.Id}]", Indent);
        if (finding.Option is { } option)
        {
            ShowOption(finding, option);
        }
        else if (Words.Why(finding) is { Length: > 0 } why)
        {
            _text.Hanging("", Words.Sentence(why), Indent);
        }

        if (!finding.Missing.IsEmpty)
        {
            _text.Hanging("", $"Missing: {string.Join("; ", finding.Missing.Select(fact => fact.Label))}.", Indent);
        }

        foreach (var question in finding.Silent)
        {
            foreach (var (reading, index) in question.Readings.Select((reading, index) => (reading, index)))
            {
                _text.Hanging("", $"Reading {index + 1}: {reading}", Indent);
            }
        }

        foreach (var question in finding.DecidedLocally)
        {
            _text.Hanging("", $"Decided locally as {question.Answer!.As.Words()} by {question.Answer.By}: {question.Question}", Indent);
        }

        // A caution that several findings carry is read once.
        foreach (var caution in finding.Cautions.Where(_cautions.Add))
        {
            _text.Hanging("", $"Caution: {caution}", Indent);
        }

        if (finding.Criterion.Cites.All(citation => citation.Verified == Verification.Memory))
        {
            _text.Hanging("", "The source is from memory and was not checked.", Indent);
        }
    }

    private void ShowOption(Finding finding, OptionView option)
    {
        foreach (var (lead, points) in new[] { ("For: ", option.For), ("Against: ", option.Against), ("Not known, ", option.Unknown) })
        {
            foreach (var point in points)
            {
                _text.Hanging("", lead + point, Indent);
            }
        }

        if (option.For.IsEmpty && option.Against.IsEmpty && option.Unknown.IsEmpty)
        {
            _text.Hanging("", Words.Sentence(Words.Why(finding)), Indent);
        }

        _text.Hanging("", $"Strength: {option.Strength}. Certainty: {option.Certainty}.", Indent);
    }

    private string NightSuffix(Finding finding) => finding.Night is { } night && _assessment.Nights.Length > 1 ? $", {Words.Night(night)}" : "";

    private void WhomToAsk()
    {
        var asked = _assessment.Findings.Where(finding => finding.Criterion.Shown != Shown.InTheTrace && finding.Standing == Standing.Undetermined)
            .SelectMany(finding => finding.Missing.Select(fact => (Fact: fact, finding.Id)))
            .Where(pair => pair.Fact.Ask.Length > 0)
            .GroupBy(pair => pair.Fact.Ask).ToArray();
        if (asked.Length == 0)
        {
            return;
        }

        _text.Part("WHOM TO ASK");
        foreach (var owner in asked.GroupBy(group => group.First().Fact.Owner))
        {
            _text.Line($"  {(owner.Key.Length == 0 ? "To be found out" : Words.Capital(owner.Key))}");
            foreach (var question in owner)
            {
                var waiting = question.Select(pair => pair.Id).Distinct(StringComparer.Ordinal);
                _text.Hanging("    *", $"{question.Key} [{string.Join(", ", waiting)}]", 6);
            }
        }
    }

    private void Sources()
    {
        _text.Part("SOURCES");
        SourceLines(_assessment.Findings.Where(finding => finding.Criterion.Shown != Shown.InTheTrace && finding.Standing != Standing.NotApplicable));
    }

    private void SourceLines(IEnumerable<Finding> findings)
    {
        var cited = findings.SelectMany(finding => finding.Criterion.Cites).Distinct().GroupBy(citation => citation.Source.Id).OrderBy(group => group.Key, StringComparer.Ordinal);
        foreach (var source in cited)
        {
            var levels = source.GroupBy(citation => citation.Verified).OrderByDescending(group => group.Key).Select(level =>
                $"{Words.Capital(level.Key.Sentence())}: {string.Join("; ", level.Select(citation => citation.Section).Where(section => section.Length > 0).Distinct(StringComparer.Ordinal))}.");
            _text.Hanging("  *", $"{source.First().Source.ShortName}. {string.Join(" ", levels)}", 4);
        }
    }

    private void Foot()
    {
        _text.Part("RULES");
        _text.Hanging("  ", $"{string.Join(", ", _assessment.Rulesets.Select(ruleset => $"{ruleset.Id} {ruleset.Version}"))}. Program {ProgramVersion.Text}.", 2);
        _text.Hanging("  ", "The whole trace of a finding: criteria explain FILE FINDING", 2);
    }
}

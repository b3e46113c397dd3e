using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Cli.Report;

/// <summary>The findings of one ruleset.</summary>
internal sealed partial class TextReport
{
    private const int FewFindings = 2;

    private readonly HashSet<string> _cautions = new(StringComparer.Ordinal);
    private readonly List<Finding> _absent = [];
    private readonly List<Finding> _open = [];
    private readonly HashSet<string> _missing = new(StringComparer.Ordinal);

    private void Section(Ruleset ruleset, string? heading)
    {
        var findings = _assessment.Findings.Where(finding => finding.Criterion.Ruleset.Id == ruleset.Id
            && finding.Criterion.Shown != Shown.InTheTrace && finding.Standing != Standing.NotApplicable && !ShownFindings.IsEmptyOption(finding)
            && !ShownFindings.IsFlagThatMayNotApply(finding)).ToArray();

        if (findings.Length == 0)
        {
            return;
        }

        // A section of flags of which none is up needs no heading of its own.
        if (ruleset.Function == RulesetFunction.Clinical && !findings.Any(_shown.IsInFull))
        {
            _absent.AddRange(findings.Where(finding => finding.Standing == Standing.NotMet && !finding.Criterion.Refuses));
            _open.AddRange(findings.Where(finding => finding.Standing == Standing.Undetermined));
            return;
        }

        _text.Line();
        if (heading is not null)
        {
            _text.Line(heading);
        }

        if (!SeveralNights)
        {
            Block(findings);
            return;
        }

        Block([.. findings.Where(finding => finding.Night is null)]);
        foreach (var night in _assessment.Nights)
        {
            var own = findings.Where(finding => finding.Night == night).ToArray();
            if (own.Length > 0)
            {
                _text.Line($"  {Words.Capital(Words.Night(night))}");
                Block(own);
            }
        }
    }

    private void Block(Finding[] findings)
    {
        foreach (var finding in findings.Where(_shown.IsInFull))
        {
            Show(finding);
        }

        Named("Checked, not so", findings.Where(finding => !_shown.IsInFull(finding) && finding.Standing == Standing.NotMet));
        Named("Cannot tell yet", findings.Where(finding => !_shown.IsInFull(finding) && finding.Standing == Standing.Undetermined && !_shown.MayNotConcernTheClaim(finding)));
        Named("If it applies", findings.Where(_shown.MayNotConcernTheClaim));
    }

    private void Named(string lead, IEnumerable<Finding> findings)
    {
        var titles = findings.Select(finding => finding.Criterion.Title).Distinct(StringComparer.Ordinal).ToArray();
        if (titles.Length > 0)
        {
            _text.Hanging($"  {lead}", $"{string.Join("; ", titles)}.", Indent + 4);
        }
    }

    private void Rest(RulesetFunction function)
    {
        var findings = _assessment.Findings.Where(finding => finding.Standing == Standing.NotApplicable
            && finding.Criterion.Ruleset.Function == function && finding.Criterion.Shown is Shown.Always or Shown.AtTheTop && !_shown.IsOfAnotherClaim(finding)).ToArray();
        if (findings.Length + _absent.Count + _open.Count > 0)
        {
            _text.Line();
            Named("Checked, not so", _absent);
            Named("Cannot tell yet", _open);
            Named("Not applicable", findings);
            _absent.Clear();
            _open.Clear();
        }
    }

    private void Show(Finding finding)
    {
        var memory = Words.FromMemory(finding.Criterion, alsoInPart: finding.Option is not null) is { Length: > 0 } note ? $"; {note}" : "";
        _text.Hanging($"  {Words.Lead(finding)}", $"{Words.Title(finding)} [{finding.Id}{memory}]", Indent);
        if (finding.Option is { } option)
        {
            ShowOption(option);
        }
        else if (Words.Why(finding) is { Length: > 0 } why)
        {
            _text.Hanging("", Words.Sentence(why), Indent);
        }

        if (finding.Closeness is { } closeness)
        {
            _text.Hanging("", CountingText.Nearest(closeness), Indent);
            _text.Hanging("", CountingText.Interval(closeness), Indent);
        }

        // The first says most of this grade; `explain` and JSON have all, with their sources.
        if (finding.NightToNight.FirstOrDefault() is { } nights)
        {
            _text.Hanging("", CountingText.Nights(nights), Indent);
        }

        ShowMissing(finding);
        foreach (var question in finding.Silent)
        {
            for (var i = 0; i < question.Readings.Length; i++)
            {
                _text.Hanging("", $"Reading {i + 1}: {question.Readings[i]}", Indent);
            }
        }

        foreach (var question in finding.DecidedLocally)
        {
            _text.Hanging("", $"Decided locally as {question.Answer!.As.Words()} by {question.Answer.By}: {question.Question}", Indent);
        }

        // A caution that several findings carry is read once.
        foreach (var caution in (finding.Closeness is null ? [] : new[] { CountingText.Floor }).Concat(finding.Cautions).Where(_cautions.Add))
        {
            _text.Hanging("", $"Caution: {caution}", Indent);
        }
    }

    // A finding that only sums up others does not list their gaps a second time.
    private void ShowMissing(Finding finding)
    {
        if (finding.Missing.IsEmpty)
        {
            return;
        }

        var repeated = finding.Missing.Length > FewFindings && finding.Missing.All(fact => _missing.Contains(fact.Fact));
        _text.Hanging("", repeated ? "Missing: as listed above." : $"Missing: {string.Join("; ", finding.Missing.Select(fact => fact.Label))}.", Indent);
        _missing.UnionWith(finding.Missing.Select(fact => fact.Fact));
    }

    private void ShowOption(OptionView option)
    {
        foreach (var (lead, points) in new[] { ("For: ", option.For), ("Against: ", option.Against), ("Not known, ", option.Unknown) })
        {
            foreach (var point in points)
            {
                _text.Hanging("", lead + point, Indent);
            }
        }

        if (!option.For.IsEmpty)
        {
            _text.Hanging("", $"Recommendation in the source: {option.Strength}. Certainty: {option.Certainty}.", Indent);
        }
    }
}

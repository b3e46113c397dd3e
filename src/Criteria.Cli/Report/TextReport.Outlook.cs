using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Standing = Criteria.Core.Logic.Standing;

namespace Criteria.Cli.Report;

/// <summary>What would change the results, and what is worth asking.</summary>
internal sealed partial class TextReport
{
    private const int ChangesShown = 2;

    // What would leave nothing to decide (another recorder, an inadequate night) is in the trace.
    private void WhatWouldChangeIt()
    {
        if (_outlook is null)
        {
            return;
        }

        var results = _assessment.Findings.Where(finding => finding.Criterion.Shown == Shown.AtTheTop && finding.Standing is Standing.Met or Standing.NotMet)
            .Select(finding => (Finding: finding, Outcomes: ChangeText.Of(_outlook, finding.Id, finding.Night, ChangesShown, SeveralNights ? Words.Night : null)
                .Where(outcome => outcome.To != Core.Logic.Standings.Words(Standing.NotApplicable)).ToArray()))
            .Where(pair => pair.Outcomes.Length > 0).ToArray();
        if (results.Length == 0)
        {
            return;
        }

        _text.Part("WHAT WOULD CHANGE IT");
        _text.Hanging("  ", ChangeText.Caution, 2);
        foreach (var (finding, outcomes) in results)
        {
            _text.Hanging("  ", $"{Words.Title(finding)}{(finding.Night is { } night && SeveralNights ? $", {Words.Night(night)}" : "")}, now {Now(finding)} [{finding.Id}]", 2);
            foreach (var (to, changes, more) in outcomes)
            {
                var rest = more > 0 ? $"; {more} more" : "";
                _text.Hanging($"    {to}", $"{string.Join("; ", changes)}{rest}.", Indent + 4);
            }
        }
    }

    private static string Now(Finding finding) => finding.Value is { Band.Length: > 0 } value ? value.Band : Core.Logic.Standings.Words(finding.Standing);

    private void WorthAsking()
    {
        var asked = _assessment.Findings.Where(_shown.IsInFull).SelectMany(Questions).GroupBy(question => question.Ask)
            .Select(group => (Ask: group.Key, group.First().Owner, Rank: RankOf(group.Key), Findings: group.Select(question => question.Finding).Distinct(StringComparer.Ordinal).ToArray()))
            .ToArray();
        if (asked.Length > 0)
        {
            _text.Part("WORTH ASKING, AND WHOM");
            foreach (var owner in asked.GroupBy(question => question.Owner).OrderBy(group => group.Min(question => question.Rank)).ThenByDescending(group => group.Max(question => question.Findings.Length)))
            {
                _text.Line($"  {(owner.Key.Length == 0 ? "To be found out" : Words.Capital(owner.Key))}");
                foreach (var (ask, _, _, findings) in owner.OrderBy(question => question.Rank).ThenByDescending(question => question.Findings.Length))
                {
                    var waiting = findings.Length > FewFindings ? $"for {findings.Length} findings" : string.Join(", ", findings);
                    _text.Hanging("    *", $"{ask} [{(Alone(ask) is { Length: > 0 } alone ? alone : waiting)}]", 6);
                }
            }
        }

        if (_outlook is { CannotChange.IsEmpty: false })
        {
            _text.Line();
            _text.Hanging("  ", $"Cannot change anything here: {string.Join("; ", _outlook.CannotChange)}.", 2);
        }
    }

    // The place of the best of the questions that are put with this sentence; last, where none settles anything by itself.
    private int RankOf(string ask)
    {
        var place = _outlook is null ? -1 : Array.FindIndex([.. _outlook.Questions], question => question.Ask == ask && SettlesShown(question).Any());
        return place < 0 ? int.MaxValue : place;
    }

    private string Alone(string ask)
    {
        var settled = _outlook is null ? [] : _outlook.Questions.Where(question => question.Ask == ask).SelectMany(SettlesShown)
            .GroupBy(settles => settles.Criterion.Id).OrderByDescending(group => group.First().Criterion.Shown == Shown.AtTheTop).Select(group => (Id: group.Key, Always: group.Any(settles => settles.Always))).ToArray();
        if (settled.Length == 0)
        {
            return "";
        }

        var named = settled.Take(FewFindings).Select(one => one.Id);
        var more = settled.Length > FewFindings ? $" and {settled.Length - FewFindings} more" : "";
        return $"alone {(settled.Any(one => one.Always) ? "settles" : "may settle")} {string.Join(", ", named)}{more}";
    }

    private IEnumerable<Settles> SettlesShown(Question question) =>
        question.Settles.Where(settles => _assessment.Findings.Any(finding => finding.Criterion.Index == settles.Criterion.Index && finding.Night == settles.Night && _shown.IsInFull(finding)));

    // What is missing; and what would mend a documentation item that is not met.
    private static IEnumerable<(string Ask, string Owner, string Finding)> Questions(Finding finding) => ShownFindings.Questions(finding)
        .Select(question => (question.Ask, question.Owner, finding.Standing == Standing.NotMet ? $"{finding.Id}, not met" : finding.Id));
}

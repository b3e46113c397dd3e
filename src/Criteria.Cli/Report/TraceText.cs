using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;

namespace Criteria.Cli.Report;

/// <summary>The whole trace of one finding as a tree in plain text.</summary>
internal sealed class TraceText
{
    private const int Deepest = 40;
    private const int MostPairs = 12;

    private readonly Assessment _assessment;
    private readonly Outlook _outlook;
    private readonly IReadOnlyList<ChangePair>? _pairs;
    private readonly PlainText _text;
    private readonly HashSet<string> _shown = new(StringComparer.Ordinal);
    private string? _night;

    private TraceText(Assessment assessment, Outlook outlook, IReadOnlyList<ChangePair>? pairs, TextWriter writer) =>
        (_assessment, _outlook, _pairs, _text) = (assessment, outlook, pairs, new PlainText(writer));

    /// <summary>Writes the trace of one finding.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="outlook">What would change it.</param>
    /// <param name="pairs">Which two changes together would, or null where that is not asked.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="writer">Receives the text.</param>
    public static void Write(Assessment assessment, Outlook outlook, IReadOnlyList<ChangePair>? pairs, Finding finding, TextWriter writer) =>
        new TraceText(assessment, outlook, pairs, writer).Write(finding);

    private void Write(Finding finding)
    {
        _text.Spread($"CASE {_assessment.Case}", finding.Criterion.Ruleset.Function == RulesetFunction.Coverage ? "COVERAGE CHECK, not signed" : "CLINICAL DRAFT, not signed");
        _text.Hanging("", $"{finding.Criterion.Title} [{finding.Id}]{(finding.Night is { } night ? $", {Words.Night(night)}" : "")}", 0);
        var value = finding.Value is { Text.Length: > 0 } found ? $": {found.Text}" : "";
        var whatever = finding.WhateverText is { Length: > 0 } text ? $", {text}" : "";
        _text.Hanging("", Words.Sentence($"{finding.Standing.Words()}{value}{whatever}"), 0);

        _night = finding.Night;
        _text.Part("BECAUSE");
        _shown.Add(finding.Id);
        Parts(finding.Because, 0);
        if (finding.Residual is { } residual)
        {
            _text.Part("WHAT REMAINS");
            Tree(residual, 0);
        }

        if (finding.Closeness is { } closeness)
        {
            _text.Part("HOW NEAR, HOW SURE");
            foreach (var line in CountingText.Boundaries(closeness).Append(CountingText.Interval(closeness)).Append(CountingText.Shares(closeness)).Append(CountingText.Floor))
            {
                _text.Hanging("  *", line, 4);
            }
        }

        WhatWouldChangeIt(finding);
        WhatTwoWould(finding);
        NightsTogether(finding);
        NightToNight(finding);
        Missing(finding);
        Questions(finding);
        if (!finding.Cautions.IsEmpty)
        {
            _text.Part("CAUTIONS");
            foreach (var caution in finding.Cautions)
            {
                _text.Hanging("  *", caution, 4);
            }
        }

        LocalRules(finding);
        Citations(finding);
    }

    private void NightsTogether(Finding finding)
    {
        if (_assessment.NightsTogether.FirstOrDefault(together => together.Criterion.Id == finding.Id) is not { } together)
        {
            return;
        }

        _text.Part("OVER THE NIGHTS");
        _text.Hanging("  *", NightsText.NightByNight(together), 4);
        _text.Hanging("  *", together.Rule == NightRule.Each
            ? $"Not combined: {NightsText.NotCombined(together)}."
            : Words.Sentence($"{Words.Capital(NightsText.Together(together))}. Read so{NightsText.Declared(together)}"), 4);
        if (NightsText.LeftOut(together) is { Length: > 0 } leftOut)
        {
            _text.Hanging("  *", leftOut, 4);
        }
    }

    private void NightToNight(Finding finding)
    {
        if (finding.NightToNight.Any())
        {
            _text.Part("NIGHT TO NIGHT, PUBLISHED");
            foreach (var figure in finding.NightToNight)
            {
                _text.Hanging("  *", $"{Words.Sentence(CountingText.Share(figure))} {string.Join("; ", figure.Cites.Select(citation => $"{citation} ({citation.Verified.Sentence()})"))}.", 4);
            }

            _text.Hanging("  ", "Other people's nights, and no part of the counting interval. They change no grade.", 2);
        }
    }

    // The head of a trace repeats the finding; what it is made of says why.
    private void Parts(TraceNode trace, int depth)
    {
        foreach (var part in trace.Kind == "criterion" ? trace.Parts : [trace])
        {
            Tree(part, depth);
        }
    }

    private void Tree(TraceNode node, int depth)
    {
        var lead = new string(' ', (depth * 2) + 2) + node.Truth.Words().PadRight(8);
        _text.Hanging(lead, Line(node), Math.Min(lead.Length + 1, PlainText.Width / 2));

        // A question of the source that does not arise needs no proof on the page; JSON has it.
        if (depth >= Deepest || node is { Kind: "silent", Truth: Truth.NotMet })
        {
            return;
        }

        foreach (var part in node.Parts)
        {
            Tree(part, depth + 1);
        }

        if (node.Kind == "finding")
        {
            foreach (var id in (node.From ?? "").Split(", ").Where(_shown.Add))
            {
                foreach (var upstream in _assessment.Of(id).Where(upstream => upstream.Night is null || upstream.Night == _night))
                {
                    Parts(upstream.Because, depth + 1);
                }
            }
        }
    }

    private string Line(TraceNode node) => node.Kind switch
    {
        "applies-when" => "It applies",
        "silent" when node.Truth == Truth.NotMet => $"Does not arise: {node.Text}",
        "silent" => $"Arises: {node.Text}{(node.Value is null ? "" : $" ({node.Value})")}",
        "all" => Group(node, "All of these"),
        "any" => Group(node, "Any of these"),
        "at-least" => Group(node, node.Text.Split(':')[0]),
        "not" => "Not so, that",
        "finding" => $"{node.Text}: {node.Value} [{node.From}]{(_shown.Contains(node.From ?? "") ? ", see above" : "")}",
        "score" => $"{node.Text}{(node.Value is null ? "" : $": {node.Value}")}",
        "documents" => $"{node.Text}. {Words.Sentence(node.Value ?? "")}",
        "fact" => Words.Capital(node.Text.EndsWith(" = no", StringComparison.Ordinal) ? $"{node.Text[..^5]}: {node.Value}{From(node)}" : $"{node.Text}: {node.Value}{From(node)}"),
        _ => Words.Capital(node.Value is null ? node.Text : $"{node.Text}: {node.Value}{From(node)}"),
    };

    private static string From(TraceNode node) => node.From is null ? "" : $" ({node.From})";

    private static string Group(TraceNode node, string standard) =>
        node.Text.Contains(" and ", StringComparison.Ordinal) || node.Text.Contains(" or ", StringComparison.Ordinal) ? standard : $"{node.Text} ({standard.ToLowerInvariant()})";

    private void WhatWouldChangeIt(Finding finding)
    {
        var outcomes = ChangeText.Of(_outlook, finding.Id, finding.Night, int.MaxValue, Words.Night).ToArray();
        if (outcomes.Length == 0)
        {
            return;
        }

        _text.Part("WHAT WOULD CHANGE IT");
        _text.Hanging("  ", ChangeText.Caution, 2);
        foreach (var (to, changes, _) in outcomes)
        {
            _text.Line($"  {Words.Capital(to)}");
            foreach (var change in changes)
            {
                _text.Hanging("    *", Words.Sentence(change), 6);
            }
        }
    }

    private void WhatTwoWould(Finding finding)
    {
        if (_pairs is null)
        {
            return;
        }

        _text.Part("WHAT TWO CHANGES TOGETHER WOULD CHANGE");
        if (finding.Standing == Standing.Undetermined)
        {
            _text.Hanging("  ", "The finding is open. Two changes are looked for where it is met or not met.", 2);
            return;
        }

        _text.Hanging("  ", ChangeText.CautionOfPairs, 2);
        if (_pairs.Count == 0)
        {
            _text.Line("  There are none.");
        }

        foreach (var (to, changes, more) in ChangeText.Of(_pairs, finding.Night, MostPairs))
        {
            _text.Line($"  {Words.Capital(to)}");
            foreach (var change in changes)
            {
                _text.Hanging("    *", Words.Sentence(change), 6);
            }

            if (more > 0)
            {
                _text.Line($"    {more} more, larger ones; --format json has all.");
            }
        }
    }

    private string Settles(Finding finding, MissingFact fact)
    {
        var answers = _outlook.Questions.Where(question => question.Fact == fact.Fact && question.Label == fact.Label).SelectMany(question => question.Settles)
            .Where(settles => settles.Criterion.Id == finding.Id && settles.Night == finding.Night).SelectMany(settles => settles.Answers).ToArray();
        return answers.Length == 0 ? " Decides only together with others." : $" By itself: {string.Join("; ", answers)}.";
    }

    private void Missing(Finding finding)
    {
        if (finding.Missing.IsEmpty)
        {
            return;
        }

        _text.Part("MISSING, AND WHOM TO ASK");
        foreach (var fact in finding.Missing)
        {
            _text.Hanging("  *", $"{fact.Label}{(fact.Owner.Length > 0 ? $". {Words.Capital(fact.Owner)}" : "")}{(fact.Ask.Length > 0 ? $": {fact.Ask}" : ".")}{Settles(finding, fact)}", 4);
        }
    }

    private void Questions(Finding finding)
    {
        if (finding.Silent.IsEmpty && finding.DecidedLocally.IsEmpty)
        {
            return;
        }

        _text.Part("WHAT THE SOURCE DOES NOT SAY");
        foreach (var question in finding.Silent.Concat(finding.DecidedLocally))
        {
            _text.Hanging("  *", $"{question.Question} [{question.Id}]", 4);
            foreach (var reading in question.Readings)
            {
                _text.Hanging("    -", reading, 6);
            }

            _text.Hanging("    ", question.Answer is { } answer ? $"Decided locally as {answer.As.Words()} by {answer.By}." : "Decide locally, with a reason, or ask the payer.", 4);
        }
    }

    // Of the whole ruleset: a finding may rest on another one that was changed.
    private void LocalRules(Finding finding)
    {
        if (finding.Criterion.Ruleset.Differences.IsEmpty)
        {
            return;
        }

        _text.Part("LOCAL CHANGES TO THIS RULESET");
        foreach (var difference in finding.Criterion.Ruleset.Differences)
        {
            _text.Hanging(
                "  *",
                $"{difference.Overlay}: {difference.What}. {Words.Sentence(difference.Reason)} Approved by {difference.ApprovedBy} on {Words.Date(difference.ApprovedOn)}.",
                4);
        }
    }

    private void Citations(Finding finding)
    {
        _text.Part("SOURCES");
        foreach (var citation in finding.Criterion.Cites)
        {
            _text.Hanging("  *", $"{citation} ({citation.Verified.Sentence()}){(citation.Source.IsReviewOverdue(_assessment.AsOf) ? "." : "")}{Words.Overdue(citation.Source, _assessment.AsOf)}", 4);
            if (citation.Source.Address is { } address)
            {
                _text.Line($"    {address}");
            }
        }

        if (finding.Criterion.Why is { } why)
        {
            _text.Hanging("  ", $"Why it matters: {why}", 2);
        }

        _text.Hanging("  ", $"Ruleset {finding.Criterion.Ruleset.Id} {finding.Criterion.Ruleset.Version}, rules in force on {Words.Date(_assessment.AsOf)}.", 2);
    }
}

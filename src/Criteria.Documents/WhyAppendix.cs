using System.Globalization;
using System.Text;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Model;
using Criteria.Documents.Templating;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents;

/// <summary>The reasons at the end of a document: for each mark the criterion, the facts with their origins, the sources and how far each was verified.</summary>
internal sealed class WhyAppendix(Assessment assessment)
{
    private readonly StringBuilder _text = new();

    /// <summary>The heading; the notes follow it as footnotes.</summary>
    public const string Heading = "## Why: the reasons behind the marks";

    /// <summary>The text; empty when no sentence carries a mark.</summary>
    public string Text(TraceNotes notes)
    {
        if (notes.Notes.Count == 0)
        {
            return "";
        }

        _text.Append(CultureInfo.InvariantCulture, $"\n{Heading}\n");
        for (var i = 0; i < notes.Notes.Count; i++)
        {
            _text.Append(CultureInfo.InvariantCulture, $"\n[^{i + 1}]: ");
            switch (notes.Notes[i])
            {
                case FindingModel finding:
                    Write(finding.Finding, finding.Override);
                    break;
                case FactModel fact:
                    Write(fact);
                    break;
                case FactGroupModel group:
                    Write(group);
                    break;
            }
        }

        return _text.ToString();
    }

    private void Write(Finding finding, OverrideModel? differs)
    {
        var night = finding.Night is { } label ? $", {Words.Night(label)}" : "";
        var value = finding.Value is { Text.Length: > 0 } found ? $": {found.Text}" : "";
        var whatever = finding.WhateverText is { Length: > 0 } text ? $", {text}" : "";
        _text.Append(CultureInfo.InvariantCulture, $"**{Safe(finding.Criterion.Title)}** ({Safe(finding.Id)}{Safe(night)}). {Safe(Words.Sentence($"{finding.Standing.Words()}{value}{whatever}"))}\n\n");
        if (TraceWords.Facts(finding.Because) is { Count: > 0 } facts)
        {
            Item($"Facts: {Words.Sentence(Words.Small(string.Join("; ", facts.Select(fact => fact.TrimEnd('.')))))}");
        }

        if (!finding.Missing.IsEmpty)
        {
            Item($"Still missing: {Words.List(finding.Missing.Select(fact => Words.Small(fact.Label)))}.");
        }

        foreach (var question in finding.Silent.Concat(finding.DecidedLocally))
        {
            Item($"The source does not say: {question.Question}{(question.Answer is { } answer ? $" Decided locally as {answer.As.Words()} by {answer.By}." : "")}");
        }

        if (differs is not null)
        {
            Item($"{differs.Sentence} The finding above is what the rules make of the facts.");
        }

        Item($"Sources: {string.Join(" ", finding.Criterion.Cites.GroupBy(citation => (citation.Source, citation.Verified)).Select(Source))} Rules: {finding.Criterion.Ruleset.Id} {finding.Criterion.Ruleset.Version}.");
    }

    private string Source(IGrouping<(Source Source, Verification Verified), Citation> cited)
    {
        var sections = string.Join("; ", cited.Select(citation => citation.Section).Where(section => section.Length > 0).Distinct(StringComparer.Ordinal));
        return $"{cited.Key.Source.ShortName}{(sections.Length > 0 ? $", {sections}" : "")} ({cited.Key.Verified.Sentence()}).{Words.Overdue(cited.Key.Source, assessment.AsOf)}";
    }

    private void Write(FactModel fact)
    {
        var night = fact.NightLabel is { } label ? $", {Words.Night(label)}" : "";
        var from = fact.From.Length > 0 ? Words.Sentence(fact.From) : "As entered in the case.";
        _text.Append(CultureInfo.InvariantCulture, $"**{Safe(fact.Label)}** ({Safe(fact.Id)}{Safe(night)}): {Safe(Words.Sentence(fact.Text))} {Safe(from)}\n");
    }

    private void Write(FactGroupModel group)
    {
        _text.Append(CultureInfo.InvariantCulture, $"**Facts given together** ({Safe(string.Join("; ", group.Facts.Select(fact => fact.Id)))}).\n\n");
        Item($"{string.Join("; ", group.Facts.Select(fact => $"{fact.Label}: {fact.Text}{(fact.From.Length > 0 ? $" ({fact.From})" : "")}"))}.");
    }

    private void Item(string text) => _text.Append(CultureInfo.InvariantCulture, $"    - {Safe(text)}\n");

    private static string Safe(string text) => MarkdownEncoder.Instance.Encode(text);
}

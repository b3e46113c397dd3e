using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Documents.Model;
using Criteria.Documents.Sharing;
using Criteria.Documents.Templating;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Documents;

/// <summary>A document that was written, or why not.</summary>
/// <param name="Page">The document, ready to be set; null when a problem is an error.</param>
/// <param name="TextDigest">The digest of its text, which a sign-off puts into the case; empty without a page.</param>
/// <param name="Problems">What was found.</param>
public sealed record WrittenDocument(DocumentPage? Page, string TextDigest, ImmutableArray<Diagnostic> Problems);

/// <summary>What a document is asked for.</summary>
/// <param name="Name">The document's name.</param>
/// <param name="Recipient">The id of the recipient in the case; null when there is one only, or none is needed.</param>
/// <param name="Paper">The paper.</param>
/// <param name="File">The name of the case file, for messages.</param>
/// <param name="YearsOnly">Whether every date is printed as its year, for a de-identified case.</param>
public sealed record DocumentOrder(string Name, string? Recipient = null, Paper Paper = Paper.Letter, string File = "case", bool YearsOnly = false);

/// <summary>Writes documents of one case: template, Markdown, state.</summary>
public sealed class DocumentWriter
{
    private readonly DocumentTemplates _templates;
    private readonly Case _case;
    private readonly Assessment _assessment;
    private readonly ImmutableArray<DocumentFigure> _figures;
    private readonly CaseModelBuilder _builder;

    /// <summary>A writer of the documents of a case.</summary>
    /// <param name="templates">The templates.</param>
    /// <param name="subject">The case.</param>
    /// <param name="assessment">Its assessment.</param>
    /// <param name="figures">The figures that documents may show.</param>
    public DocumentWriter(DocumentTemplates templates, Case subject, Assessment assessment, params ImmutableArray<DocumentFigure> figures)
    {
        ArgumentNullException.ThrowIfNull(templates);
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(assessment);
        (_templates, _case, _assessment, _figures) = (templates, subject, assessment, figures);
        _builder = new CaseModelBuilder(subject, assessment);
    }

    /// <summary>Writes one document.</summary>
    /// <exception cref="ArgumentException">There is no such document.</exception>
    public WrittenDocument Write(DocumentOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var template = _templates.Find(order.Name) ?? throw new ArgumentException($"no document `{order.Name}`", nameof(order));
        var problems = new List<Diagnostic>(Overrides(order.File));
        var signOff = SignOff.Of(_case, order.Name, template.Head.Release);
        if (template.Head.Release && !signOff.IsReleased)
        {
            problems.Add(DocumentDiagnostics.NotReleased(order.Name, order.File));
        }

        var recipient = Recipient(order, template.Head, problems);
        if (template.Head.Part == DocumentPart.Coverage && !_assessment.Rulesets.Any(ruleset => ruleset.Function == Core.Rulesets.RulesetFunction.Coverage))
        {
            problems.Add(DocumentDiagnostics.NoCoverage(order.Name, order.File));
        }

        if (problems.Count > 0)
        {
            return new WrittenDocument(null, "", [.. problems]);
        }

        var notes = new TraceNotes(template.Head.PlainOverrides);
        var model = _builder.Build(template.Head.Carries, recipient, _figures);
        var prose = new Prose(_case);
        var body = prose.Of(template.Render(model, notes));
        var why = template.Head.Why ? prose.Of(new WhyAppendix(_assessment).Text(notes)) : "";
        var digest = SignOff.DigestOf(body + why);
        if (signOff.IsFinal && signOff.Digest != digest)
        {
            return new WrittenDocument(null, "", [DocumentDiagnostics.TextChanged(order.Name, signOff.Digest, digest, order.File)]);
        }

        // The reasons are footnotes and stand last in every format.
        var markdown = (template.Head.Why ? body : Unmarked(body)) + signOff.Block() + why;
        var page = Page(order, template.Head, signOff, markdown, notes);
        return new WrittenDocument(order.YearsOnly ? ForSharing(page) : page, digest, []);
    }

    private DocumentPage Page(DocumentOrder order, TemplateHead head, SignOff signOff, string markdown, TraceNotes notes)
    {
        // Those that the text rests on; all that were in force stand in the assessment.
        var behind = notes.Notes.OfType<FindingModel>().Select(model => model.Finding.Criterion.Ruleset.Id).ToHashSet(StringComparer.Ordinal);
        var rulesets = _assessment.Rulesets.Where(ruleset => behind.Contains(ruleset.Id)).Select(ruleset => $"{ruleset.Id} {ruleset.Version}").ToImmutableArray();
        var content = string.Join('\n', [order.Name, head.Title, _assessment.Case, signOff.Words, .. rulesets, markdown]);
        return new DocumentPage
        {
            Name = order.Name,
            Title = head.Title,
            CaseKey = _assessment.Case,
            Study = CaseModelBuilder.Study(_assessment),
            Rulesets = rulesets,
            State = signOff.State,
            StateWords = signOff.Words,
            Paper = order.Paper,
            Markdown = markdown,
            Figures = [.. _figures.Where(figure => markdown.Contains($"(figure:{figure.Name})", StringComparison.Ordinal))],
            Date = _assessment.AsOf,
            Id = SignOff.DigestOf(content)[..32],
            Program = $"Criteria {ProgramVersion.Text}",
        };
    }

    // The id is made anew: that of the whole text could be tried out against a list of dates.
    private static DocumentPage ForSharing(DocumentPage page)
    {
        var markdown = $"*De-identified for sharing: names, numbers, free text and days are taken out. What is left may still be known to somebody who knows the patient.*\n\n{Years.Only(page.Markdown)}";
        return page with
        {
            Study = Years.Only(page.Study),
            Markdown = markdown,
            Figures = [.. page.Figures.Select(figure => figure with { Svg = Years.Only(figure.Svg), Png = [], Alternative = Years.Only(figure.Alternative) })],
            Date = new DateOnly(page.Date.Year, 1, 1),
            Id = SignOff.DigestOf(markdown)[..32],
        };
    }

    private RecipientModel? Recipient(DocumentOrder order, TemplateHead head, List<Diagnostic> problems)
    {
        if (head.To.IsEmpty)
        {
            return null;
        }

        var possible = _builder.Recipients.Where(recipient => head.To.Contains(recipient.Kind)).ToArray();
        if (order.Recipient is { } id)
        {
            var chosen = possible.FirstOrDefault(recipient => recipient.Id == id);
            if (chosen is null)
            {
                problems.Add(DocumentDiagnostics.UnknownRecipient(id, order.Name, NearestName.Of(id, possible.Select(recipient => recipient.Id)), order.File));
            }

            return chosen;
        }

        if (possible.Length == 0)
        {
            problems.Add(DocumentDiagnostics.NoRecipient(order.Name, head.To, order.File));
        }
        else if (possible.Length > 1)
        {
            problems.Add(DocumentDiagnostics.WhichRecipient(order.Name, possible.Select(recipient => recipient.Id), order.File));
        }

        return possible.Length == 1 ? possible[0] : null;
    }

    private IEnumerable<Diagnostic> Overrides(string file) => _builder.UnusableOverrides().Select(unusable => unusable.Lacking.Length > 0
        ? DocumentDiagnostics.OverrideLacks(unusable.Record, unusable.Lacking, file)
        : DocumentDiagnostics.OverrideOfNothing(
            unusable.Record, unusable.Of, NearestName.Of(unusable.Of, _assessment.Findings.Select(finding => finding.Id).Distinct(StringComparer.Ordinal)), file));

    // Marks without notes would point at nothing.
    private static string Unmarked(string body) => Marks.Replace(body, "");

    private static readonly System.Text.RegularExpressions.Regex Marks = new(@"\[\^\d+\]", System.Text.RegularExpressions.RegexOptions.CultureInvariant);
}

using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine;

namespace Criteria.Documents.PolicyBook;

/// <summary>The policy book: every rule that counts, with its version, its settings and local changes, its sources, and what its tests gave.</summary>
/// <remarks>It is made from the rules alone and holds nothing of any patient. The same rules and tests give the same book.</remarks>
public sealed class PolicyBookWriter
{
    private const string NotHeld = "not held in the file";
    private const int IdLength = 32;
    private const string DigestPrefix = "sha256:";

    private readonly BookOrder _order;
    private readonly BookTests _tests;
    private readonly BookCriterion _criteria;
    private readonly BookMarkdown _text = new();

    private PolicyBookWriter(BookOrder order)
    {
        (_order, _tests) = (order, new BookTests(order));
        _criteria = new BookCriterion(order, _tests, _text);
    }

    /// <summary>The book, ready to be set in any format.</summary>
    public static DocumentPage Write(BookOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return new PolicyBookWriter(order).Write();
    }

    private DocumentPage Write()
    {
        Front();
        Overview();
        foreach (var ruleset in _order.Rules.Rulesets)
        {
            Ruleset(ruleset);
        }

        NotShown();
        return new DocumentPage
        {
            Name = "policy-book",
            Title = "Policy book",
            KeyWord = "Rules",
            CaseKey = _order.Scope,
            Study = "",
            Rulesets = [$"digest {_order.Digest}"],
            State = DocumentState.Draft,
            StateWords = "Policy book",
            Paper = _order.Paper,
            Markdown = _text.ToString(),
            Date = _order.Date,
            Id = _order.Digest[DigestPrefix.Length..][..IdLength],
            Program = $"Criteria {ProgramVersion.Text}",
        };
    }

    private void Front()
    {
        _text.Paragraph("Digest of this set:", _order.Digest);
        _text.Paragraph(
            "The digest is that of the vocabulary and of each ruleset with its local changes. An assessment in JSON (rules_digest) and the list of the rules print the same digest when "
            + "they use the same rules. This book shows the rules as they are loaded. That they are right for a practice, and who approved them there, the practice has to say.");
        var failures = BookTests.Failures(_order).ToArray();
        _text.Paragraph("Tests beside the rules:", Words.Sentence(_tests.Of(_order.Rules.Criteria)) + (failures.Length == 0 ? "" : " Those that are not as expected:"));
        _text.List(failures.Select(failure => (0, failure)));
    }

    private void Overview()
    {
        _text.Heading(2, "Rulesets of this set");
        _text.Table(
            ["Ruleset", "Version", "Kind", "From", "Criteria", "Tested", "Wrong"],
            _order.Rules.Rulesets.Select(ruleset => (string[])[
                ruleset.Id, ruleset.Version, Kind(ruleset), ruleset.EffectiveFrom?.ToIso() ?? "any date", Number(Criteria(ruleset).Length),
                Number(_tests.Compared(Criteria(ruleset))), Number(_tests.Wrong(Criteria(ruleset)))]));
        var differences = _order.Rules.Rulesets.SelectMany(ruleset => ruleset.Differences.Select(difference => (0, $"{ruleset.Id}: {Difference(difference)}"))).ToArray();
        _text.Paragraph("Local changes:", differences.Length == 0 ? "none." : "");
        _text.List(differences);
    }

    private void Ruleset(Ruleset ruleset)
    {
        _text.Heading(2, $"{ruleset.Title} ({ruleset.Id} {ruleset.Version})");
        _text.Table(
            ["What", "Value"],
            [
                ["Kind", Kind(ruleset)],
                ["Status", ruleset.Status.ToString().ToLowerInvariant()],
                ["Effective", Effective(ruleset)],
                ["Review by", ruleset.ReviewBy is { } review ? Words.Date(review) : NotHeld],
                ["Reviewed and approved by", $"{NotHeld}{(ruleset.Differences.IsEmpty ? "" : "; local changes name who approved them")}"],
                ["Tests", _tests.Of(Criteria(ruleset))],
                ["Digest", ruleset.Digest],
            ]);
        if (!ruleset.Settings.IsEmpty)
        {
            _text.Heading(3, "Settings");
            _text.Table(["Setting", "Is", "May be", "Why there is a choice"], ruleset.Settings.Select(setting => (string[])[setting.Name, setting.Is, string.Join(", ", setting.Allowed), setting.Why]));
        }

        if (!ruleset.Differences.IsEmpty)
        {
            _text.Heading(3, "Local changes");
            _text.List(ruleset.Differences.Select(difference => (0, Difference(difference))));
        }

        foreach (var criterion in Criteria(ruleset))
        {
            _criteria.Write(criterion);
        }
    }

    private void NotShown()
    {
        var others = _order.Library.Rulesets.Where(ruleset => !_order.Rules.Rulesets.Any(shown => shown.Id == ruleset.Id && shown.Version == ruleset.Version)).ToArray();
        if (others.Length == 0)
        {
            return;
        }

        _text.Heading(2, "Loaded and not in this set");
        _text.Table(["Ruleset", "Version", "Kind", "Status", "Effective"], others.Select(ruleset => (string[])[
            ruleset.Id, ruleset.Version, Kind(ruleset), ruleset.Status.ToString().ToLowerInvariant(), Effective(ruleset)]));
    }

    private Criterion[] Criteria(Ruleset ruleset) => [.. _order.Rules.Criteria.Where(criterion => criterion.Ruleset.Id == ruleset.Id)];

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Kind(Ruleset ruleset) => ruleset.Payer is null ? "clinical" : $"coverage: {ruleset.Payer}, {ruleset.Item}";

    private static string Effective(Ruleset ruleset) =>
        (ruleset.EffectiveFrom is { } from ? $"from {Words.Date(from)}" : "from any date") + (ruleset.EffectiveUntil is { } until ? $" until {Words.Date(until)}" : "");

    private static string Difference(LocalDifference difference) =>
        $"{difference.What} ({difference.Overlay}). Reason: {Words.Sentence(difference.Reason)} Approved by {difference.ApprovedBy.Trim()} on {Words.Date(difference.ApprovedOn)}.";
}

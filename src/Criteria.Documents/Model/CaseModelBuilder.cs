using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Model;

/// <summary>Makes what a template may name from a case and its assessment.</summary>
internal sealed class CaseModelBuilder
{
    private const string DocumentList = "documents";
    private const string TherapyList = "therapy";
    private const string OverrideList = "overrides";

    private readonly Case _case;
    private readonly Assessment _assessment;
    private readonly ShownFindings _shown;
    private readonly OverrideModel[] _overrides;
    private readonly Dictionary<Finding, FindingModel> _models = new(ReferenceEqualityComparer.Instance);

    public CaseModelBuilder(Case subject, Assessment assessment)
    {
        (_case, _assessment, _shown) = (subject, assessment, new ShownFindings(assessment));
        _overrides = [.. Records(OverrideList, (record, list) => new OverrideModel(record, list)).Where(differs => differs.Lacking.Length == 0)];
    }

    /// <summary>The model for one document.</summary>
    /// <param name="carries">The names of identity that the document declares; nothing else of them reaches the model.</param>
    /// <param name="recipient">Who is written to, or null.</param>
    /// <param name="figures">The figures.</param>
    public CaseModel Build(IReadOnlyCollection<string> carries, RecipientModel? recipient, IEnumerable<DocumentFigure> figures)
    {
        var nights = _case.Nights.Select(Night).ToArray();
        var coverage = Coverage();
        var met = coverage?.Lines.Select(line => line.Finding).Where(finding => finding.IsMet).ToArray();
        var documents = Records(DocumentList, (record, list) => new RecordModel(record, list, met))
            .OrderBy(document => document.When ?? DateOnly.MaxValue).ThenBy(document => document.Order).ThenBy(document => document.Id, StringComparer.Ordinal).ToArray();
        return new CaseModel
        {
            CaseKey = _assessment.Case,
            RulesOn = Words.Date(_assessment.AsOf),
            Study = Study(_assessment),
            Nights = nights,
            Findings = new FindingTable(_assessment.Findings.Select(Model)),
            Facts = nights.Length > 0 ? nights[^1].Facts : new FactTable(Facts(_case.Facts, null)),
            FactsAt = Sections(_case.Facts, null),
            SeveralNights = [.. _assessment.NightsTogether.Select(together => new SeveralNightsModel(together, [.. together.Graded.Select(Model)]))],
            ReadFirst = [.. _assessment.Findings.Where(finding => finding.ReadFirst is not null).Select(Model)],
            OpenQuestions = [.. _assessment.Findings.Where(finding => !finding.Silent.IsEmpty && _shown.IsInFull(finding)).Select(Model)],
            Options = [.. _assessment.Findings.Where(finding => finding.Option is not null && _shown.IsInFull(finding)).Select(Model).Where(model => model.Option!.IsOpenToChoice)
                .GroupBy(model => model.Option!.Text, StringComparer.Ordinal).Select(Alike)],
            Clinical = [.. Rulesets(RulesetFunction.Clinical).Select(Section).Where(section => section.Findings.Count > 0)],
            Coverage = coverage,
            ClinicalAsks = Asks(RulesetFunction.Clinical),
            CoverageAsks = Asks(RulesetFunction.Coverage),
            Documents = documents,
            Therapy = [.. Records(TherapyList, (record, list) => new RecordModel(record, list))],
            ByDate = [.. Events(documents)],
            EntryWarnings = [.. _assessment.Problems.Where(problem => problem.Severity == Severity.Warning).Select(problem => Words.Sentence(problem.Message))],
            LocalRules = [.. _assessment.Rulesets.SelectMany(ruleset => ruleset.Differences).Select(difference =>
                $"{difference.Overlay}: {difference.What}. {Words.Sentence(difference.Reason)} Approved by {difference.ApprovedBy} on {Words.Date(difference.ApprovedOn)}.").Distinct(StringComparer.Ordinal)],
            Refusal = _assessment.Refusal is { } refusal ? Model(refusal) : null,
            Identity = Identity(carries),
            Recipient = recipient,
            Figures = [.. figures.Select(figure => new FigureModel(figure))],
        };
    }

    /// <summary>The nights in words; empty when the case has none.</summary>
    public static string Study(Assessment assessment) => Words.List(assessment.Nights.Select(Words.Night));

    /// <summary>Who may be written to.</summary>
    public IReadOnlyList<RecipientModel> Recipients => Records(Vocabulary.RecipientPlace, (record, list) => new RecipientModel(record, list));

    /// <summary>The overrides that cannot be shown: each says what it lacks, or that it names no finding.</summary>
    public IEnumerable<(string Record, string Of, string Lacking)> UnusableOverrides()
    {
        if (_case.Facts.Vocabulary.Record(OverrideList) is not { } list)
        {
            yield break;
        }

        foreach (var record in _case.Facts.RecordsOf(list).Items)
        {
            var differs = new OverrideModel(record, list);
            if (differs.Lacking.Length > 0 || !_assessment.Findings.Any(finding => IsAbout(differs, finding)))
            {
                yield return (record.Id, differs.Of, differs.Lacking);
            }
        }
    }

    private FindingModel Model(Finding finding)
    {
        if (!_models.TryGetValue(finding, out var model))
        {
            model = new FindingModel(finding, _overrides.FirstOrDefault(differs => IsAbout(differs, finding)));
            _models.Add(finding, model);
        }

        return model;
    }

    // What several nights offer alike stands once, and says by which of them.
    private FindingModel Alike(IGrouping<string, FindingModel> options)
    {
        var last = options.Last();
        if (last.Finding.Night is null || _assessment.Nights.Length < 2)
        {
            return last;
        }

        var nights = options.Select(option => option.Night).Distinct(StringComparer.Ordinal).ToArray();
        return new FindingModel(last.Finding, last.Override)
        {
            ByNights = nights.Length == _assessment.Nights.Length ? "by each of the nights"
                : nights.Length == 1 ? $"by the {nights[0]} alone"
                : $"by the {Words.List(nights)}",
        };
    }

    private static bool IsAbout(OverrideModel differs, Finding finding) => differs.Of == finding.Id && (differs.Night is null || differs.Night == finding.Night);

    private NightModel Night(Night night)
    {
        var findings = _assessment.Findings.Where(finding => finding.Night is null || finding.Night == night.Label).ToArray();
        var grades = findings.Where(finding => finding is { Night: not null, Criterion: { Body: GradeBody, Shown: Shown.AtTheTop } }).ToArray();
        return new NightModel(
            Words.Night(night.Label), new FindingTable(findings.Select(Model)), new FactTable(Facts(night.Facts, night.Label)), Sections(night.Facts, night.Label),
            [.. grades.Where(finding => finding.Standing == Standing.Met).Select(Model)],
            [.. grades.Where(finding => finding is { Standing: Standing.Undetermined, Value.NumberText.Length: > 0 }).Select(Model)]);
    }

    private static IEnumerable<FactModel> Facts(FactSet facts, string? night) => facts.Vocabulary.Facts
        .Where(definition => !IsIdentity(definition))
        .Select(definition => new FactModel(facts[definition], definition.Scope == FactScope.Night ? night : null));

    private static FactSections Sections(FactSet facts, string? night) => new(facts.Vocabulary.Facts
        .Where(definition => definition.At is not null && !IsIdentity(definition))
        .Select(definition => (definition.At!, new FactModel(facts[definition], definition.Scope == FactScope.Night ? night : null))));

    private static bool IsIdentity(FactDefinition definition) => definition.At?.StartsWith(IdentityTable.Place + ".", StringComparison.Ordinal) == true;

    private IdentityTable Identity(IReadOnlyCollection<string> carries) => new(_case.Facts.Vocabulary.Facts
        .Where(IsIdentity).Select(definition => (Name: definition.At![(IdentityTable.Place.Length + 1)..], Fact: new FactModel(_case.Facts[definition], null)))
        .Where(pair => carries.Contains(pair.Name) && pair.Fact.IsKnown).ToDictionary(pair => pair.Name, pair => pair.Fact.Text, StringComparer.Ordinal));

    private IEnumerable<Ruleset> Rulesets(RulesetFunction function) => _assessment.Rulesets.Where(ruleset => ruleset.Function == function);

    private SectionModel Section(Ruleset ruleset) => new(
        ruleset.Heading,
        [.. _assessment.Findings.Where(finding => finding.Criterion.Ruleset.Id == ruleset.Id && finding.Option is null && _shown.IsInFull(finding)).Select(Model)]);

    private CoverageModel? Coverage()
    {
        var rulesets = Rulesets(RulesetFunction.Coverage).Select(ruleset => ruleset.Id).ToArray();
        if (rulesets.Length == 0)
        {
            return null;
        }

        var shown = _assessment.Findings.Where(finding => rulesets.Contains(finding.Criterion.Ruleset.Id) && _shown.IsInFull(finding)).ToArray();
        CheckModel[] Lines(Shown kind) => [.. shown.Where(finding => finding.Criterion.Shown == kind && finding.Option is null).Select(finding => new CheckModel(Model(finding)))];
        var results = Lines(Shown.AtTheTop);
        var verdict = results.Length == 0 || results.Any(line => line.Status == CheckModel.CannotTell) && !results.Any(line => line.Status == CheckModel.NotReady) ? CheckModel.CannotTell
            : results.Any(line => line.Status == CheckModel.NotReady) ? CheckModel.NotReady
            : CheckModel.Ready;
        return new CoverageModel(
            Rulesets(RulesetFunction.Coverage).First().Heading, _assessment.ServiceDate is { } date ? Words.Date(date) : "", verdict, results, Lines(Shown.Always),
            [.. shown.Where(finding => finding.Criterion.Shown == Shown.WhenMet).Select(Model)]);
    }

    // A line of a checklist that is open asks for its document as well, not only for what the case does not say of it.
    private static IEnumerable<(string Ask, string Owner, Finding Finding)> Questions(Finding finding) =>
        finding is { Standing: Standing.Undetermined, Criterion: { Ask: { } ask, Shown: Shown.Always, Ruleset.Function: RulesetFunction.Coverage } criterion }
            ? ShownFindings.Questions(finding).Append((ask, criterion.Owner ?? "", finding))
            : ShownFindings.Questions(finding);

    private AskModel[] Asks(RulesetFunction function) =>
    [
        .. _assessment.Findings.Where(finding => finding.Criterion.Ruleset.Function == function && _shown.IsInFull(finding)).SelectMany(Questions).GroupBy(question => question.Ask)
            .Select(group => (group.First().Owner, Question: new QuestionToAskModel(
                group.Key, group.Select(question => question.Finding.Criterion.Why ?? "").FirstOrDefault(why => why.Length > 0) ?? "",
                [.. group.Select(question => Model(question.Finding)).Distinct()])))
            .GroupBy(pair => pair.Owner).OrderByDescending(owner => owner.Max(pair => pair.Question.Findings.Count))
            .Select(owner => new AskModel(
                owner.Key.Length == 0 ? "to be found out" : owner.Key,
                [.. owner.Select(pair => pair.Question).OrderByDescending(question => question.Findings.Count)])),
    ];

    // A night comes before what is written about it on the same day.
    private IEnumerable<EventModel> Events(RecordModel[] documents) => _assessment.Nights
        .Select(night => (When: DateOnly.TryParseExact(night, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out var date) ? date : default(DateOnly?),
            Rank: -1, What: "home night", Document: ""))
        .Concat(documents.Select(document => (document.When, Rank: document.Order, What: document.Kind, Document: document.Id)))
        .OrderBy(entry => entry.When ?? DateOnly.MaxValue).ThenBy(entry => entry.Rank)
        .Select(entry => new EventModel(entry.When is { } when ? Words.Date(when) : "no date in the case", entry.What, entry.Document, entry.When is not null));

    private T[] Records<T>(string at, Func<CaseRecord, RecordDefinition, T> make) =>
        _case.Facts.Vocabulary.Record(at) is { } list ? [.. _case.Facts.RecordsOf(list).Items.Select(record => make(record, list))] : [];
}

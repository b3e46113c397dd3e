namespace Criteria.Documents.Model;

/// <summary>Everything that a template may name. <c>docs/templates.md</c> lists it.</summary>
internal sealed class CaseModel
{
    /// <summary>The case key.</summary>
    [Untraced]
    public required string CaseKey { get; init; }

    /// <summary>The date whose rules were used, in words.</summary>
    [Untraced]
    public required string RulesOn { get; init; }

    /// <summary>The nights, in words; empty when the case has none.</summary>
    [Untraced]
    public required string Study { get; init; }

    /// <summary>The nights, in order.</summary>
    public required IReadOnlyList<NightModel> Nights { get; init; }

    /// <summary>The findings by name; of one that is about a night, that of the last night.</summary>
    public required FindingTable Findings { get; init; }

    /// <summary>The facts by name; of a fact of a night, that of the last night.</summary>
    public required FactTable Facts { get; init; }

    /// <summary>The known facts of a section of the case file: <c>facts_at["intake.symptoms"]</c>.</summary>
    public required FactSections FactsAt { get; init; }

    /// <summary>What several nights of one index come to; empty for a single night.</summary>
    public required IReadOnlyList<SeveralNightsModel> SeveralNights { get; init; }

    /// <summary>The sentences for the top of a document, each with its finding.</summary>
    public required IReadOnlyList<FindingModel> ReadFirst { get; init; }

    /// <summary>The findings with a question that their source leaves open.</summary>
    public required IReadOnlyList<FindingModel> OpenQuestions { get; init; }

    /// <summary>The options of the pathway for which something speaks, or may; what several nights offer alike stands once, with the last of them.</summary>
    public required IReadOnlyList<FindingModel> Options { get; init; }

    /// <summary>The options that have words for the patient.</summary>
    public IReadOnlyList<ChoiceModel> Choices =>
        [.. Options.Where(option => option.PlainTitle.Length > 0).GroupBy(option => option.PlainTitle, StringComparer.Ordinal).Select(group => new ChoiceModel(group.Key, [.. group]))];

    /// <summary>The options that have none.</summary>
    public IReadOnlyList<FindingModel> UnexplainedChoices => [.. Options.Where(option => option.PlainTitle.Length == 0)];

    /// <summary>The clinical findings, one section for each ruleset.</summary>
    public required IReadOnlyList<SectionModel> Clinical { get; init; }

    /// <summary>The coverage check, or null when the case asks for none or there are no rules for it.</summary>
    public required CoverageModel? Coverage { get; init; }

    /// <summary>What to ask for the clinical draft, and whom.</summary>
    public required IReadOnlyList<AskModel> ClinicalAsks { get; init; }

    /// <summary>What to ask for the coverage check, and whom.</summary>
    public required IReadOnlyList<AskModel> CoverageAsks { get; init; }

    /// <summary>The documents, by their dates.</summary>
    public required IReadOnlyList<RecordModel> Documents { get; init; }

    /// <summary>The therapy trials.</summary>
    public required IReadOnlyList<RecordModel> Therapy { get; init; }

    /// <summary>Documents and nights in the order of their dates; those without a date last.</summary>
    public required IReadOnlyList<EventModel> ByDate { get; init; }

    /// <summary>Warnings about what was entered.</summary>
    [Untraced]
    public required IReadOnlyList<string> EntryWarnings { get; init; }

    /// <summary>What local overlays change in the rules, one sentence each.</summary>
    [Untraced]
    public required IReadOnlyList<string> LocalRules { get; init; }

    /// <summary>Whether the rules are for this case at all.</summary>
    [Untraced]
    public bool InScope => Refusal is null;

    /// <summary>The finding that puts the case outside the scope of the rules, or null.</summary>
    public required FindingModel? Refusal { get; init; }

    /// <summary>Who the case is about and who writes, as far as the document declares it.</summary>
    [Untraced]
    public required IdentityTable Identity { get; init; }

    /// <summary>Who is written to, or null.</summary>
    [Untraced]
    public required RecipientModel? Recipient { get; init; }

    /// <summary>The figures of the document.</summary>
    [Untraced]
    public required IReadOnlyList<FigureModel> Figures { get; init; }
}

/// <summary>A figure, for <c>![{{ figure.alternative }}](figure:{{ figure.name }})</c>.</summary>
internal sealed class FigureModel(DocumentFigure figure)
{
    /// <summary>Its name.</summary>
    [Untraced]
    public string Name => figure.Name;

    /// <summary>What it shows.</summary>
    [Untraced]
    public string Alternative => figure.Alternative;
}

namespace Criteria.Documents.Model;

/// <summary>One night.</summary>
internal sealed class NightModel(string label, FindingTable findings, FactTable facts, FactSections sections, IReadOnlyList<FindingModel> grades, IReadOnlyList<FindingModel> openGrades)
{
    /// <summary>The night in words: <c>night of 3 June 2026</c>.</summary>
    [Untraced]
    public string Label { get; } = label;

    /// <summary>Its findings, and those of the case, by name.</summary>
    public FindingTable Findings { get; } = findings;

    /// <summary>Its facts, and those of the case, by name.</summary>
    public FactTable Facts { get; } = facts;

    /// <summary>The known facts of a section of the night: <c>night.facts_at["nights.channels"]</c>.</summary>
    public FactSections FactsAt { get; } = sections;

    /// <summary>Every grade of the night that is decided, one for each index and scoring rule.</summary>
    public IReadOnlyList<FindingModel> Grades { get; } = grades;

    /// <summary>Every grade that is still open although its index is known.</summary>
    public IReadOnlyList<FindingModel> OpenGrades { get; } = openGrades;

    /// <summary>The cautions of those grades, each once with the grades that carry it.</summary>
    public IReadOnlyList<CautionModel> Cautions { get; } =
    [
        .. grades.SelectMany(grade => grade.Cautions.Select(caution => (Text: caution, Grade: grade))).GroupBy(pair => pair.Text, StringComparer.Ordinal)
            .Select(group => new CautionModel(group.Key, [.. group.Select(pair => pair.Grade)])),
    ];
}

/// <summary>A caution with the findings that carry it.</summary>
internal sealed class CautionModel(string text, IReadOnlyList<FindingModel> findings)
{
    /// <summary>The caution.</summary>
    public string Text { get; } = text;

    /// <summary>The findings.</summary>
    public IReadOnlyList<FindingModel> Findings { get; } = findings;
}

namespace Criteria.Documents.Model;

/// <summary>A choice in words for the patient; options that are told in the same words stand together.</summary>
internal sealed class ChoiceModel(string text, IReadOnlyList<FindingModel> findings)
{
    /// <summary>The words.</summary>
    public string Text { get; } = text;

    /// <summary>The options behind it.</summary>
    public IReadOnlyList<FindingModel> Findings { get; } = findings;
}

using Criteria.Core.Logic;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Tests.Support;

/// <summary>The findings of one assessment by id, with the assertions that tests need.</summary>
internal sealed class FindingTable(Assessment assessment)
{
    public Assessment Assessment { get; } = assessment;

    /// <summary>The only finding of a criterion.</summary>
    public Finding this[string id] => Assessment.Of(id).ToArray() switch
    {
        [var only] => only,
        [] => throw new InvalidOperationException($"no finding of `{id}`"),
        _ => throw new InvalidOperationException($"several findings of `{id}`"),
    };

    /// <summary>The standing of a criterion.</summary>
    public Standing Of(string id) => this[id].Standing;

    /// <summary>The grade or class of a criterion; empty while it is open.</summary>
    public string Band(string id) => this[id].Value?.Band ?? "";

    /// <summary>The points of a score, as <c>3</c> or <c>3 to 5</c>.</summary>
    public string Points(string id) => this[id].Conclusion.Points!.Value.ToString();

    /// <summary>The ids of the facts that could still decide a criterion.</summary>
    public string[] Missing(string id) => [.. this[id].Missing.Select(fact => fact.Fact)];

    /// <summary>The ids of the questions of the source that hold a criterion open.</summary>
    public string[] Questions(string id) => [.. this[id].Silent.Select(question => question.Id)];
}

/// <summary>What tests ask of findings.</summary>
internal static class FindingQuestions
{
    /// <summary>Whether all that is missing is a detail of a document on file, such as the form of its signature.</summary>
    public static bool OnlyAsksAboutDocuments(this Finding finding) =>
        !finding.Missing.IsEmpty && finding.Missing.All(fact => fact.Fact.Contains(": document.", StringComparison.Ordinal));
}

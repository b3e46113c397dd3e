using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Model;

/// <summary>Several nights of one index.</summary>
internal sealed class SeveralNightsModel(NightsTogether together, IReadOnlyList<FindingModel> findings)
{
    /// <summary>That the nights have different grades, night by night; empty when they agree.</summary>
    public string Differ => together.Differ ? NightsText.Differ(together) : "";

    /// <summary>What they are together by the rule that is declared, with the method and who declared it; empty when none is.</summary>
    public string Together => together.Rule == NightRule.Each
        ? ""
        : $"{together.Criterion.Title}: {Words.Sentence(NightsText.Together(together))} {Words.Sentence($"Read so{NightsText.Declared(together)}")} {NightsText.LeftOut(together)}".TrimEnd();

    /// <summary>The grades of the nights.</summary>
    public IReadOnlyList<FindingModel> Findings { get; } = findings;
}

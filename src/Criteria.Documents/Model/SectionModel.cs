namespace Criteria.Documents.Model;

/// <summary>The findings of one ruleset that a reader sees.</summary>
internal sealed class SectionModel(string heading, IReadOnlyList<FindingModel> findings)
{
    /// <summary>The heading.</summary>
    [Untraced]
    public string Heading { get; } = heading;

    /// <summary>The findings, in report order.</summary>
    public IReadOnlyList<FindingModel> Findings { get; } = findings;
}

/// <summary>The questions for one who can answer them.</summary>
internal sealed class AskModel(string owner, IReadOnlyList<QuestionToAskModel> questions) : ITraced
{
    /// <summary>Who: ordering clinician, scorer, billing staff.</summary>
    [Untraced]
    public string Owner { get; } = owner;

    /// <summary>What to ask, that on which most findings wait first.</summary>
    public IReadOnlyList<QuestionToAskModel> Questions { get; } = questions;

    bool ITraced.Stands => true;

    bool ITraced.IsOpen => false;

    bool ITraced.NamesItself => true;

    string ITraced.Key => $"asks:{Owner}";
}

/// <summary>One question, with what waits for its answer.</summary>
internal sealed class QuestionToAskModel(string ask, string why, IReadOnlyList<FindingModel> findings)
{
    /// <summary>The question, in one or two sentences.</summary>
    public string Ask { get; } = ask;

    /// <summary>Why it is asked; empty when the rules do not say.</summary>
    public string Why { get; } = why;

    /// <summary>The findings that wait for it.</summary>
    public IReadOnlyList<FindingModel> Findings { get; } = findings;
}

/// <summary>What a payer asks for: the check of one payer and item.</summary>
internal sealed class CoverageModel(string heading, string serviceDate, string verdict, IReadOnlyList<CheckModel> results, IReadOnlyList<CheckModel> lines, IReadOnlyList<FindingModel> flags)
{
    /// <summary>Payer and item.</summary>
    [Untraced]
    public string Heading { get; } = heading;

    /// <summary>The date of service in words; empty when the case names none.</summary>
    [Untraced]
    public string ServiceDate { get; } = serviceDate;

    /// <summary><c>ready</c>, <c>not ready</c> or <c>cannot tell</c>: the worst of the results.</summary>
    public string Verdict { get; } = verdict;

    /// <summary>The conclusions of the policy.</summary>
    public IReadOnlyList<CheckModel> Results { get; } = results;

    /// <summary>The lines below them that apply.</summary>
    public IReadOnlyList<CheckModel> Lines { get; } = lines;

    /// <summary>Flags that are up.</summary>
    public IReadOnlyList<FindingModel> Flags { get; } = flags;
}

/// <summary>One line of a checklist.</summary>
internal sealed class CheckModel(FindingModel finding)
{
    /// <summary>The finding behind it.</summary>
    public FindingModel Finding { get; } = finding;

    /// <summary><c>ready</c>, <c>not ready</c> or <c>cannot tell</c>.</summary>
    public string Status => Finding.IsMet ? Ready : Finding.IsNotMet ? NotReady : CannotTell;

    /// <summary>Who can mend it; empty when it is ready.</summary>
    public string Owner => Finding.IsMet ? "" : Finding.Owner.Length > 0 ? Finding.Owner : Finding.Missing.FirstOrDefault(fact => fact.Owner.Length > 0)?.Owner ?? ToBeFoundOut;

    /// <summary>What to ask for, or why the line is open when the rules name no question; empty when it is ready.</summary>
    public string Ask => Finding.IsMet ? "" : Finding.Ask.Length > 0 ? Finding.Ask : Finding.Missing.FirstOrDefault(fact => fact.Ask.Length > 0)?.Ask ?? Finding.Why;

    private const string ToBeFoundOut = "to be found out";
    internal const string Ready = "ready";
    internal const string NotReady = "not ready";
    internal const string CannotTell = "cannot tell";
}

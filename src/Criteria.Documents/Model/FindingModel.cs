using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Model;

/// <summary>One finding, with the words for its parts.</summary>
internal sealed class FindingModel(Finding finding, OverrideModel? differs) : ITraced
{
    /// <summary>The engine's finding.</summary>
    internal Finding Finding { get; } = finding;

    /// <summary>Its name; not for running text.</summary>
    public string Id => Finding.Id;

    /// <summary>The title of its criterion.</summary>
    public string Title => Finding.Criterion.Title;

    /// <summary>The title with what is known of its value.</summary>
    public string TitleWithValue => Words.Title(Finding);

    /// <summary><c>met</c>, <c>not met</c>, <c>undetermined</c>, <c>not applicable</c>.</summary>
    public string Standing => Finding.Standing.Words();

    /// <summary>The grade or class, or else the standing, with a capital.</summary>
    public string Lead => Words.Lead(Finding);

    /// <summary>The grade or class in words; empty while it is open.</summary>
    public string Value => Finding.Value?.Band ?? "";

    /// <summary>The number that was graded, with its unit; the points of a score.</summary>
    public string Number => Finding.Value?.NumberText ?? "";

    /// <summary>The number as a lay reader wants it: without its unit, and without what a printed figure stands for.</summary>
    public string FigureAlone => Number.Split(' ', '/')[0];

    /// <summary>Of a grade: index, scoring rule and denominator.</summary>
    public string Rule => Finding.Criterion.Body is GradeBody { Of.Index: { } type } ? type.ToString() : "";

    /// <summary>Of a grade: count and time behind the number ("101 events in 6 h 55 min"); empty when not known.</summary>
    public string Counted => Reasons.Decisive(Finding.Because).FirstOrDefault(step => step is { Kind: "band", From: not null })?.From is { } from
        ? from.StartsWith(Computed, StringComparison.Ordinal) ? from[Computed.Length..] : from
        : "";

    /// <summary>Whether it is met; for a grade or score, decided.</summary>
    public bool IsMet => Finding.Standing == Core.Logic.Standing.Met;

    /// <summary>Whether it is not met.</summary>
    public bool IsNotMet => Finding.Standing == Core.Logic.Standing.NotMet;

    /// <summary>Whether it is undetermined.</summary>
    public bool IsOpen => Finding.Standing == Core.Logic.Standing.Undetermined;

    /// <summary>Whether it applies to the case.</summary>
    public bool Applies => Finding.Standing != Core.Logic.Standing.NotApplicable;

    /// <summary>Whether it is a flag: worth a line only when it is met.</summary>
    public bool IsFlag => Finding.Criterion.Shown == Shown.WhenMet;

    /// <summary>Why it is what it is, in one sentence; empty when the title says it all.</summary>
    public string Why => Words.Sentence(Words.Why(Finding));

    /// <summary>The same with every reason, however many there are: whoever checks a file wants all of them.</summary>
    public string WhyWhole => Words.Sentence(Words.Why(Finding, int.MaxValue));

    /// <summary>For a line that rests on an answer alone: that no document shows it, what to ask for, and whom.</summary>
    public string NoDocument => $"Entered in the case; no document is named for it.{(Ask.Length == 0 ? "" : Owner.Length == 0 ? $" To ask: {Ask}" : $" To ask of {Owner}: {Ask}")}";

    /// <summary>The sentence for the top of a document, when the finding is met; else empty.</summary>
    public string ReadFirst => Finding.ReadFirst ?? "";

    /// <summary>Whether a grade lies no further from a boundary than counting error alone reaches.</summary>
    public bool IsNear => Finding.Closeness is { IsNear: true };

    /// <summary>Of a grade whose count and time are known: what would reach the nearest boundary.</summary>
    public string Nearest => Finding.Closeness is { } closeness ? CountingText.Nearest(closeness) : "";

    /// <summary>Of such a grade: what counting error alone allows.</summary>
    public string Interval => Finding.Closeness is { } closeness ? CountingText.Interval(closeness) : "";

    /// <summary>Of a grade: what was published on how much nights differ, with its source; empty where nothing was.</summary>
    public string NightToNight => Finding.NightToNight.FirstOrDefault() is { } figure
        ? $"{CountingText.Nights(figure).TrimEnd('.')}; {string.Join("; ", figure.Cites.Select(cite => $"{cite}, {cite.Verified.Sentence()}"))}."
        : "";

    /// <summary>Of such a grade: the share of that in each band.</summary>
    public string Shares => Finding.Closeness is { } closeness ? CountingText.Shares(closeness) : "";

    /// <summary>Of such a grade: why counting error is too little.</summary>
    public string CountingFloor => Finding.Closeness is null ? "" : CountingText.Floor;

    /// <summary>The cautions that apply.</summary>
    public IReadOnlyList<string> Cautions => Finding.Cautions;

    /// <summary>The facts that would decide it.</summary>
    public IReadOnlyList<MissingModel> Missing => [.. Finding.Missing.Select(fact => new MissingModel(fact))];

    /// <summary>Those facts in words, what is not known of one document together; empty when nothing is missing.</summary>
    public string MissingWords => MissingText.Of(Finding.Missing);

    /// <summary>The questions that its source leaves open and that matter here.</summary>
    public IReadOnlyList<QuestionModel> Questions => [.. Finding.Silent.Select(question => new QuestionModel(question))];

    /// <summary>The local decisions that were used.</summary>
    public IReadOnlyList<QuestionModel> DecidedLocally => [.. Finding.DecidedLocally.Select(question => new QuestionModel(question))];

    /// <summary>Of a documentation item: who supplies it.</summary>
    public string Owner => Finding.Criterion.Owner ?? "";

    /// <summary>Of a documentation item: what to ask.</summary>
    public string Ask => Finding.Criterion.Ask ?? "";

    /// <summary>Why it is asked.</summary>
    public string WhyAsked => Finding.Criterion.Why ?? "";

    /// <summary>Of a grade: what it means, in words for the patient; of any other criterion: its own such words. Empty when there are none.</summary>
    public string Plain => Finding is { Criterion.Body: GradeBody, Value.Band: { } band }
        ? Finding.Criterion.Ruleset.PlainGrades.FirstOrDefault(words => words.Grades.Contains(band))?.Say ?? ""
        : PlainTitle;

    /// <summary>Its criterion in words for the patient, such as what a grade counts; empty when there are none.</summary>
    public string PlainTitle => Finding.Criterion.Plain ?? "";

    /// <summary>The documents, with pages, that its trace points to.</summary>
    public IReadOnlyList<string> Pointers => TraceWords.Pointers(Finding.Because);

    internal IReadOnlyList<string> PlacesIn(string document) => TraceWords.PlacesIn(document, Finding.Because);

    /// <summary>For an option: what is offered, and what speaks for and against.</summary>
    public OptionModel? Option => Finding is { Option: { } option, Criterion.Body: OptionBody body } ? new OptionModel(option, body) : null;

    /// <summary>The citations, in words.</summary>
    public IReadOnlyList<string> Sources => [.. Finding.Criterion.Cites.Select(citation => citation.ToString()).Distinct(StringComparer.Ordinal)];

    /// <summary>A reader's override, or null. It stands beside the finding, never in its place.</summary>
    public OverrideModel? Override { get; } = differs;

    /// <summary>The override in words for the patient; empty when there is none.</summary>
    internal string PlainOverride => Override?.PlainSentence(Finding.Criterion.Body is GradeBody grade ? grade.Bands.Select(band => band.Grade) : []) ?? "";

    /// <summary>Of an option: by which nights of several it is one; empty where the case has one night or none is meant.</summary>
    [Untraced]
    public string ByNights { get; init; } = "";

    /// <summary>That its sources, or some of them, were not checked; empty when all were.</summary>
    public string SourceNote => Words.FromMemory(Finding.Criterion, alsoInPart: true) is { Length: > 0 } note ? $"{Words.Capital(note)}, not checked." : "";

    /// <summary>The night it is about, in words; empty for the case.</summary>
    [Untraced]
    public string Night => Finding.Night is { } night ? Words.Night(night) : "";

    /// <summary>The heading of its ruleset.</summary>
    [Untraced]
    public string Heading => Finding.Criterion.Ruleset.Heading;

    bool ITraced.Stands => Finding.Standing is Core.Logic.Standing.Met or Core.Logic.Standing.NotMet;

    string ITraced.Key => Finding.Night is { } night ? $"{Id}@{night}" : Id;

    private const string Computed = "computed from ";
}

/// <summary>A fact that would decide a finding.</summary>
internal sealed class MissingModel(MissingFact fact)
{
    /// <summary>A few words for it.</summary>
    public string Label => fact.Label;

    /// <summary>The question to ask; empty when the finding itself says what to ask.</summary>
    public string Ask => fact.Ask;

    /// <summary>Who can supply it; empty when the finding itself says who.</summary>
    public string Owner => fact.Owner;
}

/// <summary>A question that a source leaves open.</summary>
internal sealed class QuestionModel(SilentQuestion question)
{
    /// <summary>The question.</summary>
    public string Text => question.Question;

    /// <summary>The readings that are possible.</summary>
    public IReadOnlyList<string> Readings => question.Readings;

    /// <summary>The local decision, in words; empty when there is none.</summary>
    public string Answer => question.Answer is { } answer ? $"decided locally as {answer.As.Words()} by {answer.By}" : "";
}

/// <summary>What is offered, and what speaks for and against it here.</summary>
internal sealed class OptionModel(OptionView option, OptionBody body)
{
    /// <summary>What is offered.</summary>
    public string Offer => option.Offer;

    /// <summary>Points for it that are met.</summary>
    public IReadOnlyList<string> For => option.For;

    /// <summary>Points against it that are met.</summary>
    public IReadOnlyList<string> Against => option.Against;

    /// <summary>Points that are open, each with its side.</summary>
    public IReadOnlyList<string> Unknown => [.. option.Unknown.Select(Worded)];

    // The first colon is the one behind the side; a point may have more of them.
    private static string Worded(string point)
    {
        var colon = point.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? point : $"would speak {point[..colon]} it{point[colon..]}";
    }

    /// <summary>The strength of the recommendation in its source.</summary>
    public string Strength => option.Strength;

    /// <summary>The certainty of the evidence in its source.</summary>
    public string Certainty => option.Certainty;

    /// <summary>Who would carry it out, in the words for kinds of recipient.</summary>
    public IReadOnlyList<string> CarriedOutBy => body.CarriedOutBy;

    /// <summary>The whole as one text, to see whether two nights offer the same.</summary>
    internal string Text => string.Join('|', [option.Offer, .. option.For, "/", .. option.Against, "/", .. option.Unknown]);

    /// <summary>Whether anything speaks for it, or may.</summary>
    public bool IsOpenToChoice => !option.For.IsEmpty || option.Unknown.Any(point => point.StartsWith("for: ", StringComparison.Ordinal));
}

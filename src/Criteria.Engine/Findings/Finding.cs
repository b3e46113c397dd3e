using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Counting;

namespace Criteria.Engine.Findings;

/// <summary>The value of a grade or a score.</summary>
/// <param name="Band">The grade or class, in words; empty while it is open.</param>
/// <param name="Number">The graded number or the points, as far as they are known, in the base unit.</param>
/// <param name="Unit">The unit in which the number is printed.</param>
/// <param name="Text">The whole value in words.</param>
/// <param name="NumberText">The number in words.</param>
public sealed record FindingValue(string Band, Interval? Number, Unit Unit, string Text, string NumberText);

/// <summary>What speaks for and against an option in this case.</summary>
/// <param name="Offer">What is offered.</param>
/// <param name="For">Points that are met.</param>
/// <param name="Against">Points that are met.</param>
/// <param name="Unknown">Points of either side that are open, with their side.</param>
/// <param name="Strength">The strength of the recommendation.</param>
/// <param name="Certainty">The certainty of the evidence.</param>
public sealed record OptionView(
    string Offer, ImmutableArray<string> For, ImmutableArray<string> Against, ImmutableArray<string> Unknown, string Strength, string Certainty);

/// <summary>What one criterion says of one case, or of one of its nights.</summary>
public sealed record Finding
{
    /// <summary>The criterion.</summary>
    public required Criterion Criterion { get; init; }

    /// <summary>The night it is about, or null when it is about the case.</summary>
    public string? Night { get; init; }

    /// <summary>The conclusion: standing, value and what is missing.</summary>
    public required Conclusion Conclusion { get; init; }

    /// <summary>The value of a grade or a score, or null.</summary>
    public FindingValue? Value { get; init; }

    /// <summary>How near a grade lies to its boundaries, when count and time are known; else null.</summary>
    public Closeness? Closeness { get; init; }

    /// <summary>Published figures on how much nights differ, for the grade that was found. They change nothing.</summary>
    public IEnumerable<NightFigure> NightToNight => Standing == Standing.Met && Criterion.Body is GradeBody && Value is { Band: var band }
        ? Criterion.Ruleset.NightToNight.Where(figure => figure.Grades.Contains(band))
        : [];

    /// <summary>The whole trace.</summary>
    public required TraceNode Because { get; init; }

    /// <summary>What remains to be known, or null when the finding is settled.</summary>
    public TraceNode? Residual { get; init; }

    /// <summary>The unknown facts that do not matter, where every value that they may have leads to this finding; without one of them the others would not tell.</summary>
    public ImmutableArray<string> Whatever { get; init; } = [];

    /// <summary>The unknown facts of which it was not tried whether they matter, because their values have too many combinations.</summary>
    public ImmutableArray<string> NotSearched { get; init; } = [];

    /// <summary>In words which unknown facts do not matter to a settled finding; empty where nothing unknown had to be tried.</summary>
    public string WhateverText => Whatever.IsEmpty || Standing == Standing.Undetermined ? "" : WhateverWords(Whatever);

    /// <summary>The open questions of the source that matter here.</summary>
    public ImmutableArray<SilentQuestion> Silent { get; init; } = [];

    /// <summary>The local decisions that were used here.</summary>
    public ImmutableArray<SilentQuestion> DecidedLocally { get; init; } = [];

    /// <summary>The cautions that apply.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>The sentence for the top of a report, when the finding is met.</summary>
    public string? ReadFirst { get; init; }

    /// <summary>What speaks for and against, for an option.</summary>
    public OptionView? Option { get; init; }

    /// <summary>The criterion's id.</summary>
    public string Id => Criterion.Id;

    /// <summary>The standing.</summary>
    public Standing Standing => Conclusion.Standing;

    /// <summary>The facts that could still decide it.</summary>
    public ImmutableArray<MissingFact> Missing => Conclusion.Missing;

    /// <summary>That facts do not matter, in words.</summary>
    internal static string WhateverWords(ImmutableArray<string> facts) => $"whatever {(facts.Length == 1 ? "this is" : "these are")}: {string.Join(", ", facts)}";
}

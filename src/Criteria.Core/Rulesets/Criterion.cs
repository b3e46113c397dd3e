using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>A question that the source leaves open.</summary>
/// <param name="Id">Its name.</param>
/// <param name="When">The cases in which it matters.</param>
/// <param name="Question">The question.</param>
/// <param name="Readings">The readings that are possible.</param>
/// <param name="Answer">A local decision, if there is one.</param>
public sealed record SilentQuestion(string Id, Predicate When, string Question, ImmutableArray<string> Readings, LocalAnswer? Answer);

/// <summary>A local decision on a silent question.</summary>
/// <param name="As">What the finding is where the question matters.</param>
/// <param name="By">Who decided, and when.</param>
public sealed record LocalAnswer(Truth As, string By);

/// <summary>A caution that is printed when its condition is met.</summary>
public sealed record Caution(Predicate When, string Say);

/// <summary>A sentence with places for values.</summary>
/// <param name="Template">The sentence with <c>{name}</c> places.</param>
/// <param name="Facts">The facts named.</param>
/// <param name="Criteria">The criteria named.</param>
public sealed partial record Sentence(
    string Template, ImmutableArray<(string Name, FactDefinition Fact)> Facts, ImmutableArray<(string Name, CriterionReference Criterion)> Criteria)
{
    /// <summary>The sentence with the values of a view.</summary>
    public string Fill(View view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, fact) in Facts)
        {
            values[name] = view.Facts[fact].BriefText;
        }

        foreach (var (name, criterion) in Criteria)
        {
            var conclusion = view[criterion.Index];
            values[name] = conclusion.Value.Length > 0 ? conclusion.Value : conclusion.Standing.Words();
        }

        // In one pass: a value that looks like a place is a value.
        return Place().Replace(Template, place => values.GetValueOrDefault(place.Groups[1].Value, place.Value));
    }

    /// <summary>A place for a value: the name of a fact or a criterion in braces.</summary>
    [GeneratedRegex(@"\{([a-z0-9_.\-]+)\}", RegexOptions.CultureInvariant)]
    internal static partial Regex Place();
}

/// <summary>When a report shows a finding on a line of its own. JSON and traces always hold all.</summary>
public enum Shown
{
    /// <summary>Always.</summary>
    Always = 0,

    /// <summary>Always, and once more among the results at the top.</summary>
    AtTheTop,

    /// <summary>A flag: when it is met; else it is only named among what was checked.</summary>
    WhenMet,

    /// <summary>A step towards other findings: in their traces only.</summary>
    InTheTrace,

    /// <summary>An answer to a question that few cases put: met or not met alike, once it is known that it applies.</summary>
    WhenItApplies,
}

/// <summary>A condition with what it concludes and at least one citation, ready to be evaluated.</summary>
public sealed class Criterion
{
    /// <summary>Its name, unique over all rulesets.</summary>
    public required string Id { get; init; }

    /// <summary>A few words; "met" makes sense after them.</summary>
    public required string Title { get; init; }

    /// <summary>Its ruleset.</summary>
    public required Ruleset Ruleset { get; init; }

    /// <summary>Its place among the criteria of the selection.</summary>
    public required int Index { get; init; }

    /// <summary>When it applies; always, if nothing is said.</summary>
    public required Predicate AppliesWhen { get; init; }

    /// <summary>The condition, grade, score or option.</summary>
    public required Body Body { get; init; }

    /// <summary>Questions that the source leaves open.</summary>
    public ImmutableArray<SilentQuestion> Silent { get; init; } = [];

    /// <summary>Cautions.</summary>
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>The sentence for the top of a report.</summary>
    public Sentence? ReadFirst { get; init; }

    /// <summary>Whether, when met, the case is outside the program's scope.</summary>
    public bool Refuses { get; init; }

    /// <summary>Whether, when met, figures of the case cannot all be right.</summary>
    public bool Impossible { get; init; }

    /// <summary>When a report shows it on a line of its own.</summary>
    public Shown Shown { get; init; }

    /// <summary>Who supplies it, for a documentation item.</summary>
    public string? Owner { get; init; }

    /// <summary>What to ask, for a documentation item.</summary>
    public string? Ask { get; init; }

    /// <summary>Why it is asked.</summary>
    public string? Why { get; init; }

    /// <summary>What it means in words for the patient; null when nobody has put it into such words.</summary>
    public string? Plain { get; init; }

    /// <summary>The rows of the register of published facts that it rests on.</summary>
    public ImmutableArray<string> RestsOn { get; init; } = [];

    /// <summary>The citations; at least one.</summary>
    public required ImmutableArray<Citation> Cites { get; init; }

    /// <summary>Whether it is evaluated for each night.</summary>
    public required bool PerNight { get; init; }

    /// <summary>The facts it may read, by slot.</summary>
    public required ImmutableArray<int> ReadsFacts { get; init; }

    /// <summary>The record lists it may read.</summary>
    public required ImmutableArray<RecordDefinition> ReadsRecords { get; init; }

    /// <summary>The fixed numbers that it compares facts with; a grade's ends of bands among them.</summary>
    public ImmutableArray<NumberBound> Bounds { get; init; } = [];

    /// <summary>Its comparisons of a fact with another.</summary>
    public ImmutableArray<FactBound> FactBounds { get; init; } = [];

    /// <summary>Its relations of dates.</summary>
    public ImmutableArray<DateBound> DateBounds { get; init; } = [];

    /// <summary>The documents and trials it looks for.</summary>
    public ImmutableArray<Sought> Sought { get; init; } = [];

    /// <summary>The windows of time that its dates make.</summary>
    public ImmutableArray<Window> Windows { get; init; } = [];

    /// <summary>The criteria it may read, by index.</summary>
    public required ImmutableArray<int> ReadsCriteria { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

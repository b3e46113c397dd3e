using System.Collections.Immutable;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Changes;

/// <summary>One finding that a change turns, from one answer to another.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Night">The night, or null for a finding about the case.</param>
/// <param name="Before">The answer on the case as it is.</param>
/// <param name="After">The answer on the changed case.</param>
public sealed record Turn(Criterion Criterion, string? Night, Verdict Before, Verdict After)
{
    /// <summary>The answer on the changed case in words: a standing, or a grade.</summary>
    public string AfterWords => Words(After);

    /// <summary>The answer on the case as it is, in words.</summary>
    public string BeforeWords => Words(Before);

    private string Words(Verdict verdict) => (verdict.Standing, Criterion.Body) switch
    {
        (Standing.Met, GradeBody grade) when verdict.LowestBand >= 0 => grade.Bands[verdict.LowestBand].Grade,
        (Standing.Met, ScoreBody { Classes.IsEmpty: false } score) when verdict.LowestBand >= 0 => score.Classes[verdict.LowestBand].Name,
        _ => verdict.Standing.Words(),
    };
}

/// <summary>A change of one fact and what it turns.</summary>
/// <param name="Place">What is changed: the label of a fact, or of a document's attribute.</param>
/// <param name="Fact">The fact's id, or the document's id and the attribute.</param>
/// <param name="Night">The night whose fact it is, or null.</param>
/// <param name="From">The value in the case.</param>
/// <param name="To">The value that turns the findings.</param>
/// <param name="Step">The change in a unit that a person acts on: <c>2 more</c>, <c>8 min less</c>; empty where there is none.</param>
/// <param name="Size">How large the change is against the value; 1 where it cannot be said.</param>
/// <param name="IsFixed">Whether nobody can change it.</param>
/// <param name="Turns">The findings that it turns, in report order.</param>
public sealed record Change(string Place, string Fact, string? Night, string From, string To, string Step, double Size, bool IsFixed, ImmutableArray<Turn> Turns);

/// <summary>Two changes that turn a finding together, though neither does so alone.</summary>
/// <param name="First">The one; it says of no turn of its own.</param>
/// <param name="Second">The other.</param>
/// <param name="Turn">What both turn.</param>
public sealed record ChangePair(Change First, Change Second, Turn Turn)
{
    /// <summary>How large both changes are against their values.</summary>
    public double Size => First.Size + Second.Size;

    /// <summary>Whether one of them is of what nobody can change.</summary>
    public bool IsFixed => First.IsFixed || Second.IsFixed;
}

/// <summary>An open finding that an answer settles.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Night">The night, or null for a finding about the case.</param>
/// <param name="Answers">What the finding comes to, with some of the answers that do it.</param>
/// <param name="Always">Whether every answer settles it.</param>
public sealed record Settles(Criterion Criterion, string? Night, ImmutableArray<string> Answers, bool Always);

/// <summary>A fact that is worth asking for.</summary>
/// <param name="Fact">Its id among the missing facts.</param>
/// <param name="Label">A few words.</param>
/// <param name="Ask">The sentence to ask.</param>
/// <param name="Owner">Whom to ask.</param>
/// <param name="Settles">The findings that an answer settles by itself, in report order.</param>
/// <param name="Helps">The findings that wait for it together with other facts, by id.</param>
public sealed record Question(string Fact, string Label, string Ask, string Owner, ImmutableArray<Settles> Settles, ImmutableArray<string> Helps);

/// <summary>What would change an assessment, and what is worth asking.</summary>
/// <param name="Changes">The smallest changes of one known fact that turn a finding, in the order of the vocabulary, documents last.</param>
/// <param name="Questions">The facts that are worth asking for, those first that decide most.</param>
/// <param name="CannotChange">The facts that the case says are unknown and that can change no finding, by label.</param>
public sealed record Outlook(ImmutableArray<Change> Changes, ImmutableArray<Question> Questions, ImmutableArray<string> CannotChange)
{
    /// <summary>The changes that turn a finding, the smallest first; what nobody can change last.</summary>
    public IEnumerable<(Change Change, Turn Turn)> Of(string criterion, string? night = null) => Changes
        .SelectMany(change => change.Turns.Where(turn => turn.Criterion.Id == criterion && turn.Night == night).Select(turn => (change, turn)))
        .OrderBy(pair => pair.change.IsFixed).ThenBy(pair => pair.change.Size);
}

using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Logic;

/// <summary>Groups of three yes/no parts, completely: every state of the parts and every completion of the unknown ones.</summary>
public sealed class GroupTests
{
    private static readonly FactDefinition[] Definitions = [.. new[] { "hypertension", "stroke", "insomnia" }.Select(id => Tiny.Vocabulary.Find(id)!)];

    private static readonly Predicate[] Parts = [.. Definitions.Select(fact => new YesNoLeaf(fact, expected: true, Tiny.Vocabulary))];

    private static readonly Dictionary<string, Predicate> Groups = new(StringComparer.Ordinal)
    {
        ["all"] = new All([.. Parts]),
        ["any"] = new Any([.. Parts]),
        ["not all"] = new Negation(new All([.. Parts])),
        ["at least 1"] = new AtLeast(1, [.. Parts]),
        ["at least 2"] = new AtLeast(2, [.. Parts]),
        ["at least 3"] = new AtLeast(3, [.. Parts]),
        ["at least 2, nested"] = new AtLeast(2, [Parts[0], new Any([Parts[1], Parts[2]]), new All([Parts[0], Parts[2]])]),
    };

    public static TheoryData<string> Names => [.. Groups.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Evaluate_InEveryState_IsWhatEveryCompletionAgreesOn(string name)
    {
        foreach (var state in States([null, true, false]))
        {
            var truth = Groups[name].Evaluate(View(state));

            var answers = Completions(state).Select(whole => Groups[name].Evaluate(View(whole))).Distinct().ToArray();
            answers.ShouldNotContain(Truth.Unknown);
            if (truth != Truth.Unknown)
            {
                answers.ShouldBe([truth], $"{name} of {Words(state)}");
            }
            else if (name != "at least 2, nested")
            {
                // Parts that share no fact leave nothing open that is settled.
                answers.Length.ShouldBe(2, $"{name} of {Words(state)}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Reduce_InEveryState_IsEquivalentForEveryCompletion(string name)
    {
        foreach (var state in States([null, true, false]))
        {
            var residual = Groups[name].Reduce(View(state));

            foreach (var whole in Completions(state))
            {
                residual.Evaluate(View(whole)).ShouldBe(Groups[name].Evaluate(View(whole)), $"{name} of {Words(state)}, then {Words(whole)}: {residual.Text}");
            }
        }
    }

    private static IEnumerable<bool?[]> States(bool?[] values) => from first in values from second in values from third in values select new[] { first, second, third };

    private static IEnumerable<bool?[]> Completions(bool?[] state) =>
        States([true, false]).Where(whole => whole.Zip(state, (given, known) => known is null || known == given).All(fits => fits));

    private static View View(bool?[] state) => new(
        FactSet.Of(Tiny.Vocabulary, Definitions.Zip(state).Where(pair => pair.Second is not null)
            .Select(pair => Fact.Known(pair.First, new YesNoValue(pair.Second == true), Provenance.Entered))), 0);

    private static string Words(bool?[] state) => string.Join(", ", state.Select(value => value is { } yes ? yes ? "yes" : "no" : "unknown"));
}

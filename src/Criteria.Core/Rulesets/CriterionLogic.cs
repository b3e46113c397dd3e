using System.Collections.Immutable;
using Criteria.Core.Logic;

namespace Criteria.Core.Rulesets;

/// <summary>How a criterion's parts make its standing.</summary>
public static class CriterionLogic
{
    /// <summary>What a criterion comes to, without words.</summary>
    public static Verdict Weigh(this Criterion criterion, View view)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        ArgumentNullException.ThrowIfNull(view);
        return criterion.Weigh(view, out _, out _, out _);
    }

    /// <summary>What a criterion concludes about a view, with its value in words and what is missing.</summary>
    public static Conclusion Conclude(this Criterion criterion, View view)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        ArgumentNullException.ThrowIfNull(view);
        var verdict = criterion.Weigh(view, out var outcome, out var applies, out var silent);
        return new Conclusion(
            verdict,
            verdict.Standing == Standing.NotApplicable ? "" : criterion.Body.ValueText(outcome),
            verdict.Standing == Standing.Undetermined ? criterion.Missing(view, applies, silent) : [])
        {
            MissingOfValue = applies != Truth.NotMet && verdict.Stands != Truth.Met && criterion.Body is (GradeBody or ScoreBody) ? criterion.MissingOfValue(view) : [],
        };
    }

    private static Verdict Weigh(this Criterion criterion, View view, out BodyOutcome outcome, out Truth applies, out Truth silent)
    {
        outcome = criterion.Body.Evaluate(view);
        applies = criterion.Applies(view, outcome);
        silent = criterion.SilentTruth(view);
        var stands = Stands(applies, silent);
        return outcome.Settled(stands, stands == Truth.Met ? criterion.Answered(view, outcome.Truth) : Truth.Unknown);
    }

    /// <summary>Whether a criterion reads one of those marked, by index.</summary>
    internal static bool ReadsAny(this Criterion criterion, bool[] marked)
    {
        foreach (var upstream in criterion.ReadsCriteria)
        {
            if (marked[upstream])
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a criterion applies and its source speaks to the case.</summary>
    internal static Truth Stands(Truth applies, Truth silent) =>
        applies == Truth.NotMet ? Truth.NotMet : Truths.And(applies, Truths.Not(silent)) == Truth.Met ? Truth.Met : Truth.Unknown;

    /// <summary>The verdict with that outcome, when the criterion stands so and its answer is that one.</summary>
    internal static Verdict Settled(this in BodyOutcome outcome, Truth stands, Truth answer)
    {
        var standing = stands == Truth.NotMet ? Standing.NotApplicable
            : stands != Truth.Met ? Standing.Undetermined
            : answer switch
            {
                Truth.Met => Standing.Met,
                Truth.NotMet => Standing.NotMet,
                _ => Standing.Undetermined,
            };
        return new Verdict(standing, stands, outcome.LowestBand, outcome.HighestBand, outcome.Points);
    }

    /// <summary>Whether the criterion applies.</summary>
    public static Truth Applies(this Criterion criterion, View view, BodyOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        return outcome.DoesNotApply ? Truth.NotMet : criterion.AppliesWhen.Evaluate(view);
    }

    /// <summary>Whether a question that nobody answered matters to the case.</summary>
    public static Truth SilentTruth(this Criterion criterion, View view)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        var truth = Truth.NotMet;
        foreach (var question in criterion.Silent)
        {
            if (question.Answer is null)
            {
                truth = Truths.Or(truth, question.When.Evaluate(view));
            }
        }

        return truth;
    }

    // Local decisions override the condition where their question matters; two that differ leave it open, whatever their order.
    // While it is open whether a question matters, its answer must agree with what stands without it.
    private static Truth Answered(this Criterion criterion, View view, Truth truth)
    {
        if (criterion.Silent.IsEmpty)
        {
            return truth;
        }

        Truth? decided = null;
        foreach (var (answer, matters) in criterion.Answers(view))
        {
            if (matters == Truth.Met)
            {
                decided = decided is null || decided == answer.As ? answer.As : Truth.Unknown;
            }
        }

        var outcome = decided ?? truth;
        foreach (var (answer, matters) in criterion.Answers(view))
        {
            if (matters == Truth.Unknown && answer.As != outcome)
            {
                return Truth.Unknown;
            }
        }

        return outcome;
    }

    private static IEnumerable<(LocalAnswer Answer, Truth Matters)> Answers(this Criterion criterion, View view)
    {
        foreach (var question in criterion.Silent)
        {
            if (question.Answer is { } answer)
            {
                yield return (answer, question.When.Evaluate(view));
            }
        }
    }

    private static ImmutableArray<MissingFact> Missing(this Criterion criterion, View view, Truth applies, Truth silent)
    {
        var missing = new MissingFacts();
        if (applies == Truth.NotMet)
        {
            return missing.ToArray();
        }

        // What would decide the heart of it is of no use to anyone while it is open whether it applies at all.
        if (applies == Truth.Unknown)
        {
            criterion.AppliesWhen.Reduce(view).AddMissing(view, missing);
            return [.. missing.ToArray().Select(criterion.WithOwnQuestion)];
        }

        // Once a question of the source stands, no fact of the body can settle the finding any more.
        if (silent != Truth.Met)
        {
            criterion.Body.AddMissing(view, missing);
            foreach (var question in criterion.Silent)
            {
                question.When.Reduce(view).AddMissing(view, missing);
            }
        }

        return [.. missing.ToArray().Select(criterion.WithOwnQuestion)];
    }

    private static ImmutableArray<MissingFact> MissingOfValue(this Criterion criterion, View view)
    {
        var missing = new MissingFacts();
        criterion.Body.AddMissing(view, missing);
        return missing.ToArray();
    }

    // Whom to ask for a document is said by the criterion that looks for it.
    private static MissingFact WithOwnQuestion(this Criterion criterion, MissingFact fact) =>
        fact.Ask.Length > 0 ? fact : fact with { Ask = criterion.Ask ?? "", Owner = fact.Owner.Length > 0 ? fact.Owner : criterion.Owner ?? "" };
}

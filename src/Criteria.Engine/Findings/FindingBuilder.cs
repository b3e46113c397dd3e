using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Counting;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Findings;

/// <summary>Makes the finding of a criterion about a view: conclusion, trace, residual and all that a report prints.</summary>
internal static class FindingBuilder
{
    public static Finding Build(Criterion criterion, View view, string? night, Settler settler)
    {
        var conclusion = criterion.Conclude(view);
        var settlement = conclusion.Standing == Standing.Undetermined ? settler.Settle(criterion, view, conclusion.Verdict) : null;
        if (settlement is { IsTooLarge: false } settled)
        {
            conclusion = With(conclusion, settled, criterion);
        }

        view[criterion.Index] = conclusion;
        return new Finding
        {
            Criterion = criterion,
            Night = night,
            Conclusion = conclusion,
            Value = conclusion.Standing == Standing.NotApplicable ? null : Value(criterion, view, conclusion),
            Closeness = conclusion.Standing == Standing.Met && criterion.Body is GradeBody grade ? Closeness.Of(grade, grade.Evaluate(view), view.Facts) : null,
            Whatever = settlement is { IsTooLarge: false } ? Labels(settlement) : [],
            NotSearched = settlement is { IsTooLarge: true } ? Labels(settlement) : [],
            Because = Because(criterion, view, conclusion, settlement),
            Residual = conclusion.Standing == Standing.Undetermined ? Residual(criterion, view) : null,
            Silent = conclusion.Standing == Standing.Undetermined && criterion.AppliesWhen.Evaluate(view) == Truth.Met ? Questions(criterion, view, answered: false) : [],
            DecidedLocally = Questions(criterion, view, answered: true),
            Cautions = conclusion.Standing == Standing.NotApplicable
                ? []
                : [.. criterion.Cautions.Where(caution => caution.When.Evaluate(view) == Truth.Met).Select(caution => caution.Say)],
            ReadFirst = conclusion.Standing == Standing.Met ? criterion.ReadFirst?.Fill(view) : null,
            Option = criterion.Body is OptionBody option && conclusion.Standing is Standing.Met or Standing.Undetermined ? Option((OptionBody)criterion.Body, view) : null,
        };
    }

    private static ImmutableArray<SilentQuestion> Questions(Criterion criterion, View view, bool answered) => criterion.Silent.IsEmpty
        ? []
        : [.. criterion.Silent.Where(question => question.Answer is not null == answered && question.When.Evaluate(view) == Truth.Met)];

    // Every completion says the same: what is missing no longer matters to the standing.
    private static Conclusion With(Conclusion conclusion, in Settlement settlement, Criterion criterion)
    {
        var verdict = settlement.Verdict;
        var value = verdict.Standing == Standing.NotApplicable ? ""
            : verdict.Points is { } points ? criterion.Body.ValueText(new BodyOutcome(Truth.Unknown, verdict.LowestBand, verdict.HighestBand, points))
            : conclusion.Value;
        return verdict.Standing == Standing.Undetermined
            ? conclusion with { Verdict = verdict, Value = value }
            : new Conclusion(verdict, value, []);
    }

    private static ImmutableArray<string> Labels(Settlement? settlement) => [.. settlement!.Value.Whatever.Select(fact => fact.Label)];

    private static FindingValue? Value(Criterion criterion, View view, Conclusion conclusion)
    {
        var outcome = criterion.Body.Evaluate(view);
        if (conclusion.Verdict is { Points: not null } verdict)
        {
            outcome = outcome with { LowestBand = verdict.LowestBand, HighestBand = verdict.HighestBand, Points = verdict.Points };
        }

        switch (criterion.Body)
        {
            case GradeBody grade:
                var fact = view.Facts[grade.Of];
                return new FindingValue(
                    outcome.LowestBand >= 0 && outcome.LowestBand == outcome.HighestBand ? grade.Bands[outcome.LowestBand].Grade : "",
                    fact.Number, grade.Of.Unit, grade.ValueText(outcome), fact.IsKnown ? fact.Text : "");
            case ScoreBody score:
                var points = outcome.Points!.Value;
                return new FindingValue(
                    outcome.LowestBand >= 0 && outcome.LowestBand == outcome.HighestBand ? score.Classes[outcome.LowestBand].Name : "",
                    Interval.Between(points.Low, points.High), Units.Find("points")!, score.ValueText(outcome),
                    $"{points} of {score.Most}");
            default:
                return null;
        }
    }

    private static TraceNode Because(Criterion criterion, View view, Conclusion conclusion, Settlement? settlement)
    {
        var body = criterion.Body.Explain(view);
        if (criterion.AppliesWhen is Constant && criterion.Silent.IsEmpty && settlement is null)
        {
            return body;
        }

        var parts = ImmutableArray.CreateBuilder<TraceNode>();
        if (criterion.AppliesWhen is not Constant)
        {
            var applies = criterion.AppliesWhen.Explain(view);
            parts.Add(new TraceNode("applies-when", "it applies", applies.Truth, null, null, [applies]));
        }

        parts.Add(body);
        foreach (var question in criterion.Silent)
        {
            var when = question.When.Explain(view);
            parts.Add(new TraceNode(
                "silent", question.Question, when.Truth,
                question.Answer is { } answer ? $"decided locally as {answer.As.Words()} by {answer.By}" : null, null, [when]));
        }

        if (settlement is { } tried)
        {
            var facts = Finding.WhateverWords([.. tried.Whatever.Select(fact => fact.Label)]);
            parts.Add(tried.IsTooLarge
                ? new TraceNode("whatever", $"too many combinations to try whether all come to the same, {facts}", Truth.Unknown, null, null, [])
                : new TraceNode("whatever", $"the same, {facts}", Truth.Met, null, null, []));
        }

        var truth = conclusion.Standing switch
        {
            Standing.Met => Truth.Met,
            Standing.NotMet or Standing.NotApplicable => Truth.NotMet,
            _ => Truth.Unknown,
        };
        return new TraceNode("criterion", criterion.Title, truth, conclusion.Standing.Words(), null, parts.ToImmutable());
    }

    private static TraceNode? Residual(Criterion criterion, View view)
    {
        var parts = ImmutableArray.CreateBuilder<TraceNode>();
        if (criterion.AppliesWhen.Reduce(view) is var applies and not Constant)
        {
            parts.Add(new TraceNode("applies-when", "it applies", Truth.Unknown, null, null, [applies.Explain(view)]));
        }

        var silent = criterion.SilentTruth(view);
        if (silent != Truth.Met && criterion.Body.Residual(view) is { } body)
        {
            parts.Add(body);
        }

        foreach (var question in criterion.Silent.Where(question => question.Answer is null))
        {
            var truth = question.When.Evaluate(view);
            if (truth == Truth.Met)
            {
                parts.Add(new TraceNode("decision", $"a local decision, or the payer's word: {question.Question}", Truth.Unknown, null, null, []));
            }
            else if (truth == Truth.Unknown && silent != Truth.Met)
            {
                parts.Add(new TraceNode("silent", $"that this does not arise: {question.Question}", Truth.Unknown, null, null, [question.When.Reduce(view).Explain(view)]));
            }
        }

        return parts.Count switch
        {
            0 => null,
            1 => parts[0],
            _ => new TraceNode("all", "all of these are still needed", Truth.Unknown, null, null, parts.ToImmutable()),
        };
    }

    private static OptionView Option(OptionBody option, View view)
    {
        ImmutableArray<string> Points(ImmutableArray<OptionPoint> points, Truth truth) =>
            [.. points.Where(point => point.Condition.Evaluate(view) == truth).Select(point => point.Say)];

        return new OptionView(
            option.Offer, Points(option.For, Truth.Met), Points(option.Against, Truth.Met),
            [.. Points(option.For, Truth.Unknown).Select(point => $"for: {point}"), .. Points(option.Against, Truth.Unknown).Select(point => $"against: {point}")],
            option.Strength, option.Certainty);
    }
}

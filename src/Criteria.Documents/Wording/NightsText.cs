using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Wording;

/// <summary>Several nights of one index in words: night by night, and together by the rule that is declared.</summary>
internal static class NightsText
{
    /// <summary>Grade by REI, 4 % rule: mild (10.8/h), night of 11 March 2026; moderate (17.9/h), night of 12 March 2026.</summary>
    public static string NightByNight(NightsTogether together) =>
        $"{together.Criterion.Title}: {string.Join("; ", together.Graded.Select(night => $"{night.Value!.Band} ({night.Value.NumberText}), {Words.Night(night.Night!)}"))}.";

    /// <summary>For the top of a report, when the nights have different grades.</summary>
    public static string Differ(NightsTogether together) =>
        $"The nights differ. {NightByNight(together)}{(together.Rule == NightRule.Each ? $" They are not combined: {NotCombined(together)}." : "")}";

    /// <summary>Why nights are not combined.</summary>
    public static string NotCombined(NightsTogether together) =>
        together.Declared is null ? "no rule for that is declared" : $"each night by itself{Declared(together)}";

    /// <summary>Who declared the rule, and how it stands to the policy; to be put behind the method.</summary>
    public static string Declared(NightsTogether together) => together.Declared is not { } declared
        ? ", as the policy sets it"
        : $", as declared for this case{(declared.By is { Length: > 0 } by ? $" by {by}" : "")}; the policy's setting {(together.DiffersFromPolicy ? $"is another: {Word(together.Policy)}" : "is the same")}";

    private static string Word(NightRule rule) => rule.ToString().ToLowerInvariant();

    /// <summary>Mean of 3 nights, each counting alike: 15.2/h, moderate.</summary>
    public static string Together(NightsTogether together) => $"{Method(together)}: {Result(together)}";

    /// <summary>The method, with what it is made of.</summary>
    public static string Method(NightsTogether together)
    {
        var nights = $"{together.Graded.Count()} nights";
        return together.Rule switch
        {
            NightRule.Mean => $"mean of {nights}, each counting alike",
            NightRule.Pooled => $"events of {nights} over all their hours",
            NightRule.Worst => $"worst of {nights}",
            _ => "each night by itself",
        };
    }

    /// <summary>Which nights were left out and what they are, or nothing.</summary>
    public static string LeftOut(NightsTogether together) => together.LeftOut.Any()
        ? $"Left out: {string.Join("; ", together.LeftOut.Select(night => $"{Words.Night(night.Night!)} ({(night.Standing == Standing.NotApplicable ? "not graded by this criterion" : "grade open")})"))}."
        : "";

    private static string Result(NightsTogether together)
    {
        if (together.Value is not { } value)
        {
            return "open, as not every night has its number of events and its time";
        }

        var unit = ((GradeBody)together.Criterion.Body).Of.Unit;
        var number = value.IsExact ? QuantityText.Of(value.Low, unit) : $"{value.Low.ToText(2)} to {value.High.ToText(2)}{unit.Symbol}";
        return together.Grade.Length > 0 ? $"{number}, {together.Grade}" : $"{number}, on both sides of a boundary";
    }
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Findings;

/// <summary>How several nights make one grade. Nothing is combined unless the case or a ruleset's setting says so.</summary>
public enum NightRule
{
    /// <summary>Not at all: each night keeps its own grade.</summary>
    Each = 0,

    /// <summary>The mean of the nights' indices, each night counting alike.</summary>
    Mean,

    /// <summary>All events over all hours, so that longer nights count more.</summary>
    Pooled,

    /// <summary>The night with the highest index.</summary>
    Worst,
}

/// <summary>One graded index over all nights of a case: night by night, and together where a rule is declared.</summary>
/// <remarks>Only nights that the criterion itself grades are put together; any other is named as left out. Changes no finding.</remarks>
public sealed record NightsTogether
{
    /// <summary>The setting of a ruleset that declares the rule.</summary>
    public const string Setting = "night_rule";

    // The mean of quotients has no short exact form; twelve decimals restore every one that lies on a boundary.
    private const int MeanDecimals = 12;
    private const int MinutesPerHour = 60;

    /// <summary>The criterion.</summary>
    public required Criterion Criterion { get; init; }

    /// <summary>What it says of each night, in their order.</summary>
    public required ImmutableArray<Finding> Nights { get; init; }

    /// <summary>The rule that counts: the case's, else the policy's.</summary>
    public required NightRule Rule { get; init; }

    /// <summary>The rule that the ruleset's setting declares.</summary>
    public required NightRule Policy { get; init; }

    /// <summary>What the case declares, or null where it leaves the rule to the policy.</summary>
    public NightsDeclaration? Declared { get; init; }

    /// <summary>Whether the case declares another rule than the policy.</summary>
    public bool DiffersFromPolicy => Declared is not null && Rule != Policy;

    /// <summary>The value that the rule gives; null without a rule, and where a night lacks what the rule needs.</summary>
    public Interval? Value { get; init; }

    /// <summary>The grade of that value; empty where there is none, or where the value lies on both sides of a boundary.</summary>
    public string Grade { get; init; } = "";

    /// <summary>The nights that are graded.</summary>
    public IEnumerable<Finding> Graded => Nights.Where(IsGraded);

    /// <summary>The nights that are not.</summary>
    public IEnumerable<Finding> LeftOut => Nights.Where(night => !IsGraded(night));

    /// <summary>Whether graded nights have different grades.</summary>
    public bool Differ => Graded.Select(night => night.Value!.Band).Distinct(StringComparer.Ordinal).Count() > 1;

    /// <summary>The graded indices of an assessment of which at least two nights are graded, in its order.</summary>
    public static ImmutableArray<NightsTogether> Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        return
        [
            .. assessment.Findings.Where(finding => finding is { Criterion: { Body: GradeBody, Shown: Shown.AtTheTop }, Night: not null })
                .GroupBy(finding => finding.Id).Where(nights => nights.Count(IsGraded) > 1).Select(nights => Of([.. nights], assessment.NightsDeclared)),
        ];
    }

    private static bool IsGraded(Finding night) => night is { Standing: Standing.Met, Value: { Number: not null, Band.Length: > 0 } };

    private static NightRule NamedRule(string? word) => Enum.TryParse<NightRule>(word, ignoreCase: true, out var rule) ? rule : NightRule.Each;

    private static NightsTogether Of(ImmutableArray<Finding> nights, NightsDeclaration? declared)
    {
        var criterion = nights[0].Criterion;
        var policy = NamedRule(criterion.Ruleset.Settings.FirstOrDefault(setting => setting.Name == Setting)?.Is);
        var together = new NightsTogether
        {
            Criterion = criterion,
            Nights = nights,
            Rule = declared is null ? policy : NamedRule(declared.ReadBy),
            Policy = policy,
            Declared = declared,
        };
        if (together.Combined() is not { } value)
        {
            return together;
        }

        var (lowest, highest) = ((GradeBody)criterion.Body).BandsOf(value);
        return together with { Value = value, Grade = lowest == highest ? ((GradeBody)criterion.Body).Bands[lowest].Grade : "" };
    }

    private Interval? Combined()
    {
        var graded = Graded.ToArray();
        var values = graded.Select(night => night.Value!.Number!.Value).ToArray();
        return Rule switch
        {
            NightRule.Mean => MeanOf(values),
            NightRule.Worst => WorstOf(values),
            NightRule.Pooled when graded.All(night => night.Closeness is not null) => Interval.Exactly(Ratio.Of(
                graded.Sum(night => night.Closeness!.Events) * MinutesPerHour, graded.Sum(night => night.Closeness!.Minutes))),
            _ => null,
        };
    }

    private static Interval MeanOf(Interval[] values) =>
        new(Mean(values.Select(value => value.Low)), Mean(values.Select(value => value.High)), values.All(value => value.HighIncluded));

    private static Interval WorstOf(Interval[] values)
    {
        var (low, high) = (values.Max(value => value.Low), values.Max(value => value.High));
        return new Interval(low, high, low == high || values.Any(value => value.High == high && value.HighIncluded));
    }

    private static Ratio Mean(IEnumerable<Ratio> values) => decimal.Round(values.Average(value => value.Rounded), MeanDecimals);
}

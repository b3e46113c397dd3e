using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>One band of a grade: every value from its lower to its upper end.</summary>
/// <param name="Grade">The name.</param>
/// <param name="Lower">The lower end, or null for the lowest band.</param>
/// <param name="LowerIncluded">Whether the lower end belongs to the band.</param>
/// <param name="Upper">The upper end, or null for the highest band.</param>
/// <param name="UpperIncluded">Whether the upper end belongs to the band.</param>
/// <param name="Text">The band in words.</param>
/// <param name="Setting">The setting that decides to which band one of its ends belongs, if one does.</param>
public sealed record Band(string Grade, Ratio? Lower, bool LowerIncluded, Ratio? Upper, bool UpperIncluded, string Text, string? Setting = null);

/// <summary>A grade: the band in which a number lies. Bands are ordered from mildest and leave no gap.</summary>
public sealed class GradeBody : Body
{
    private readonly Vocabulary _vocabulary;

    internal GradeBody(FactDefinition of, ImmutableArray<Band> bands, Rounding rounding, Vocabulary vocabulary) =>
        (Of, Bands, Rounding, _vocabulary) = (of, bands, rounding, vocabulary);

    /// <summary>The number that is graded.</summary>
    public FactDefinition Of { get; }

    /// <summary>The bands, mildest first.</summary>
    public ImmutableArray<Band> Bands { get; }

    /// <summary>How the ruleset takes rounded figures.</summary>
    internal Rounding Rounding { get; }

    /// <inheritdoc/>
    public override string Kind => "grade";

    /// <inheritdoc/>
    public override BodyOutcome Evaluate(View view)
    {
        var fact = view.Facts[Of];
        if (fact.State == FactState.NotApplicable)
        {
            return new BodyOutcome(Truth.Unknown, -1, -1, null, DoesNotApply: true);
        }

        if (fact.Value is not NumberValue number)
        {
            return new BodyOutcome(Truth.Unknown, 0, Bands.Length - 1, null);
        }

        var (lowest, highest) = BandsOf(Comparison.Round(number, Rounding));
        return new BodyOutcome(lowest == highest ? Truth.Met : Truth.Unknown, lowest, highest, null);
    }

    /// <summary>The lowest and the highest band in which the number may lie.</summary>
    internal (int Lowest, int Highest) BandsOf(Interval range)
    {
        var lowest = 0;
        while (lowest < Bands.Length - 1 && !IsBelowUpperEnd(range, Bands[lowest]))
        {
            lowest++;
        }

        var highest = Bands.Length - 1;
        while (highest > lowest && !ReachesLowerEnd(range, Bands[highest]))
        {
            highest--;
        }

        return (lowest, highest);
    }

    /// <inheritdoc/>
    public override string ValueText(BodyOutcome outcome) => outcome.LowestBand < 0 ? ""
        : outcome.LowestBand == outcome.HighestBand ? Bands[outcome.LowestBand].Grade
        : outcome.LowestBand == 0 && outcome.HighestBand == Bands.Length - 1 ? ""
        : $"{Bands[outcome.LowestBand].Grade} to {Bands[outcome.HighestBand].Grade}";

    /// <inheritdoc/>
    public override TraceNode Explain(View view)
    {
        var outcome = Evaluate(view);
        var fact = view.Facts[Of];
        var text = outcome.LowestBand >= 0 && outcome.LowestBand == outcome.HighestBand
            ? $"{Of.Label} lies in {Bands[outcome.LowestBand].Grade}: {Bands[outcome.LowestBand].Text}{BySetting(Bands[outcome.LowestBand], fact)}"
            : $"{Of.Label} graded as {string.Join("; ", Bands.Select(band => $"{band.Grade}: {band.Text}"))}";
        return TraceNode.Leaf("band", text, outcome.Truth, fact.Text, fact.Origin.Words);
    }

    /// <inheritdoc/>
    public override TraceNode? Residual(View view)
    {
        var outcome = Evaluate(view);
        if (outcome.Truth != Truth.Unknown || outcome.DoesNotApply)
        {
            return null;
        }

        var possible = string.Join(" or ", Bands[outcome.LowestBand..(outcome.HighestBand + 1)].Select(band => $"{band.Grade} ({band.Text})"));
        return TraceNode.Leaf("band", $"{Of.Label}: {possible}", Truth.Unknown, view.Facts[Of].Text, view.Facts[Of].Origin.Words);
    }

    /// <inheritdoc/>
    public override void AddMissing(View view, MissingFacts missing)
    {
        if (Evaluate(view).Truth == Truth.Unknown)
        {
            missing.Add(Of, view.Facts);
        }
    }

    /// <inheritdoc/>
    public override void AddReads(Reads reads)
    {
        reads.Add(Of, _vocabulary);
        foreach (var end in Bands.Select(band => band.Lower).OfType<Ratio>())
        {
            reads.Bounds.Add(new NumberBound(Of, end, QuantityText.Of(end, Of.Unit)));
        }
    }

    // Exactly on an end that a setting gives to one of two bands: the reader must know that it was a choice.
    private static string BySetting(Band band, Fact fact) =>
        band.Setting is not null && fact.Number is { IsExact: true, Low: var value } && (value == band.Lower || value == band.Upper)
            ? $", by the setting {band.Setting}"
            : "";

    private static bool IsBelowUpperEnd(Interval range, Band band) =>
        band.Upper is not { } upper || range.Low < upper || (band.UpperIncluded && range.Low == upper);

    private static bool ReachesLowerEnd(Interval range, Band band) =>
        band.Lower is not { } lower || range.High > lower || (range.High == lower && range.HighIncluded && band.LowerIncluded);
}

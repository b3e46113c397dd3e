using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads a grade and checks that its bands leave no gap and do not overlap.</summary>
internal sealed class GradeReader(BindingContext context)
{
    private static readonly string[] EndKeys = ["from", "above", "below", "up_to"];

    private sealed record Bounds(
        string Grade, Quantity? Lower, bool LowerIncluded, Quantity? Upper, bool UpperIncluded, SourceSpan Span, string? Setting = null);

    public GradeBody? Read(Node node)
    {
        if (Fields.Of(node, "a grade", context.Bag) is not { } fields)
        {
            return null;
        }

        var of = fields.RequiredScalar("of");
        var list = fields.List("bands");
        var boundaries = fields.List("boundaries");
        fields.Done();
        if (of is null || Number(of) is not { } fact)
        {
            return null;
        }

        var bands = list.Select(item => Band(item, fact)).OfType<Bounds>().ToList();
        if (bands.Count != list.Count || bands.Count == 0)
        {
            if (list.Count == 0)
            {
                context.Bag.Add(RulesetDiagnostics.EmptyGroup("bands", node.Span));
            }

            return null;
        }

        foreach (var boundary in boundaries)
        {
            ApplyBoundary(boundary, fact, bands);
        }

        CheckOrder(bands);
        return new GradeBody(fact, [.. bands.Select(Finish)], context.Ruleset.Rounding, context.Vocabulary);
    }

    private FactDefinition? Number(ScalarNode of)
    {
        if (context.Fact(of.Text, of.Span) is not { } fact)
        {
            context.ReportUnknown(of.Text, of.Span);
            return null;
        }

        if (fact.IsNumeric)
        {
            return fact;
        }

        context.Bag.Add(RulesetDiagnostics.WrongKind(fact.Id, "not a number", "a grade is of a number", of.Span));
        return null;
    }

    private Bounds? Band(Node node, FactDefinition fact)
    {
        if (Fields.Of(node, "a band", context.Bag) is not { } fields)
        {
            return null;
        }

        var grade = fields.RequiredText("grade");
        var (from, above) = (End(fields, "from", fact), End(fields, "above", fact));
        var (below, upTo) = (End(fields, "below", fact), End(fields, "up_to", fact));
        fields.Done();
        if (EndKeys.Count(key => fields.Map[key] is not null) != new[] { from, above, below, upTo }.Count(end => end is not null))
        {
            return null;
        }

        if ((from is not null && above is not null) || (below is not null && upTo is not null))
        {
            context.Bag.Add(RulesetDiagnostics.BandEnd(grade, "has two ends on one side", node.Span));
            return null;
        }

        return new Bounds(grade, from ?? above, from is not null, below ?? upTo, upTo is not null, node.Span);
    }

    private Quantity? End(Fields fields, string key, FactDefinition fact) =>
        fields.Scalar(key) is { } node ? Quantities.Read(node, fact, context.Bag) : null;

    private void ApplyBoundary(Node node, FactDefinition fact, List<Bounds> bands)
    {
        if (Fields.Of(node, "a boundary", context.Bag) is not { } fields)
        {
            return;
        }

        var at = fields.RequiredScalar("at");
        var goesTo = fields.RequiredScalar("goes_to");
        fields.Done();
        if (at is null || goesTo is null || Quantities.Read(at, fact, context.Bag) is not { } value)
        {
            return;
        }

        var above = bands.FindIndex(band => band.Lower?.Base == value.Base);
        if (above < 1 || bands[above - 1].Upper?.Base != value.Base)
        {
            context.Bag.Add(RulesetDiagnostics.BoundaryUnknown(at.Text, at.Span));
            return;
        }

        var setting = context.Setting(goesTo.Text);
        if (setting is null || (setting.Is != bands[above].Grade && setting.Is != bands[above - 1].Grade))
        {
            context.Bag.Add(RulesetDiagnostics.BoundarySetting(goesTo.Text, bands[above - 1].Grade, bands[above].Grade, goesTo.Span));
            return;
        }

        var toUpper = setting.Is == bands[above].Grade;
        bands[above] = bands[above] with { LowerIncluded = toUpper, Setting = setting.Name };
        bands[above - 1] = bands[above - 1] with { UpperIncluded = !toUpper, Setting = setting.Name };
    }

    private void CheckOrder(List<Bounds> bands)
    {
        if (bands[0].Lower is not null)
        {
            context.Bag.Add(RulesetDiagnostics.BandEnd(bands[0].Grade, "is the lowest and must have no lower end", bands[0].Span));
        }

        if (bands[^1].Upper is not null)
        {
            context.Bag.Add(RulesetDiagnostics.BandEnd(bands[^1].Grade, "is the highest and must have no upper end", bands[^1].Span));
        }

        foreach (var band in bands.Where(IsEmpty))
        {
            context.Bag.Add(RulesetDiagnostics.BandEnd(band.Grade, "ends before it starts", band.Span));
        }

        for (var i = 1; i < bands.Count; i++)
        {
            CheckPair(bands[i - 1], bands[i]);
        }

        foreach (var twice in bands.GroupBy(band => band.Grade).Where(group => group.Count() > 1))
        {
            context.Bag.Add(RulesetDiagnostics.Twice("band", twice.Key, twice.Last().Span));
        }
    }

    // Neighbours may meet without a gap and still overlap with others when a band runs backwards.
    private static bool IsEmpty(Bounds band) => band is { Lower: { } lower, Upper: { } upper }
        && (lower.Base > upper.Base || (lower.Base == upper.Base && !(band.LowerIncluded && band.UpperIncluded)));

    private void CheckPair(Bounds below, Bounds above)
    {
        if (below.Upper is not { } upper || above.Lower is not { } lower)
        {
            context.Bag.Add(RulesetDiagnostics.BandEnd(
                below.Upper is null ? below.Grade : above.Grade, "has no end towards its neighbour", below.Upper is null ? below.Span : above.Span));
            return;
        }

        if (lower.Base > upper.Base || (lower.Base == upper.Base && !below.UpperIncluded && !above.LowerIncluded))
        {
            context.Bag.Add(RulesetDiagnostics.BandGap(below.Grade, above.Grade, above.Span));
        }
        else if (lower.Base < upper.Base || (below.UpperIncluded && above.LowerIncluded))
        {
            context.Bag.Add(RulesetDiagnostics.BandOverlap(below.Grade, above.Grade, above.Span));
        }
    }

    private static Band Finish(Bounds band)
    {
        var lower = band.Lower is { } low ? $"{(band.LowerIncluded ? "at least" : "above")} {low.Written}" : null;
        var upper = band.Upper is { } high ? $"{(band.UpperIncluded ? "up to" : "below")} {high.Written}" : null;
        var text = lower is null ? upper ?? "any value" : upper is null ? lower : $"{lower} and {upper}";
        return new Band(band.Grade, band.Lower?.Base, band.LowerIncluded, band.Upper?.Base, band.UpperIncluded, text, band.Setting);
    }
}

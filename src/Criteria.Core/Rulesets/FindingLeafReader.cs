using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads a comparison that starts with the name of a criterion.</summary>
internal sealed class FindingLeafReader(BindingContext context, Shape shape, SourceSpan span)
{
    public Predicate? Read(LeafCursor cursor)
    {
        CheckReference(shape, span);
        if (cursor.AtEnd || cursor.TakeWords("is", "met"))
        {
            return End(cursor, new StandingLeaf(shape.Reference, Standing.Met));
        }

        if (cursor.TakeWords("is", "not", "met"))
        {
            return End(cursor, new StandingLeaf(shape.Reference, Standing.NotMet));
        }

        if (cursor.TakeWords("is", "not", "applicable"))
        {
            return End(cursor, new StandingLeaf(shape.Reference, Standing.NotApplicable));
        }

        if (cursor.Peek() == "is" && cursor.Peek(1) == "undetermined")
        {
            context.Bag.Add(RulesetDiagnostics.UndeterminedAsked("is undetermined", cursor.Here()));
            return null;
        }

        if (cursor.TakeWords("differs", "from"))
        {
            return Differs(cursor);
        }

        return cursor.TakeWords("is") ? Band(cursor) : Points(cursor);
    }

    private BandLeaf? Band(LeafCursor cursor)
    {
        if (shape.Bands.IsEmpty)
        {
            context.Bag.Add(RulesetDiagnostics.WrongKind(
                shape.Reference.Id, "neither a grade nor a score with classes", "use `is met`, `is not met` or `is not applicable`", cursor.Here()));
            return null;
        }

        var atLeast = cursor.TakeWords("at", "least");
        var atMost = !atLeast && cursor.TakeWords("at", "most");
        var negated = !atLeast && !atMost && WordList.TakeNot(cursor, shape.Bands);
        var words = WordList.Read(cursor, shape.Reference.Id, shape.Bands, context.Bag);
        if (words.IsDefaultOrEmpty)
        {
            return null;
        }

        var places = words.Select(word => shape.Bands.IndexOf(word)).Order().ToArray();
        var (lowest, highest) = atLeast ? (places[0], shape.Bands.Length - 1) : atMost ? (0, places[^1]) : (places[0], places[^1]);
        if (highest - lowest + 1 != places.Length && !atLeast && !atMost)
        {
            context.Bag.Add(RulesetDiagnostics.WrongKind(shape.Reference.Id, "a grade with an order", "name grades that lie side by side, or use `any`", span));
            return null;
        }

        var text = $"{(atLeast ? "at least " : atMost ? "at most " : negated ? "not " : "")}{string.Join(" or ", words)}";
        return new BandLeaf(shape.Reference, lowest, highest, negated, text);
    }

    private PointsLeaf? Points(LeafCursor cursor)
    {
        if (!Operators.TryFind(cursor.Peek(), out var found) || shape.Kind != "score")
        {
            context.Bag.Add(RulesetDiagnostics.LeafSyntax(cursor.DescribeNext(), shape.Kind == "score" ? "`is` or a comparison of points" : "`is met`, `is not met`, `is not applicable` or nothing", cursor.Here()));
            return null;
        }

        cursor.Take();
        var (text, start) = cursor.Rest();
        var fault = QuantityReader.Read(text, out var quantity, out _, out _);
        if (fault == QuantityFault.None && quantity!.Dimension == Dimension.None)
        {
            return new PointsLeaf(shape.Reference, found, quantity.Base, text);
        }

        context.Bag.Add(RulesetDiagnostics.BadQuantity(text, "not a number of points", cursor.Part(start, text.Length)));
        return null;
    }

    private DiffersLeaf? Differs(LeafCursor cursor)
    {
        var (name, otherSpan) = cursor.Take();
        if (!context.Shapes.TryGetValue(name, out var other))
        {
            context.ReportUnknown(name, otherSpan);
            return null;
        }

        CheckReference(other, otherSpan);
        if (shape.Bands.IsEmpty || !shape.Bands.SequenceEqual(other.Bands))
        {
            context.Bag.Add(RulesetDiagnostics.DifferentBands(shape.Reference.Id, name, otherSpan));
            return null;
        }

        return End(cursor, new DiffersLeaf(shape.Reference, other.Reference));
    }

    private void CheckReference(Shape target, SourceSpan place)
    {
        if (target.Ruleset.Function != RulesetFunction.Coverage)
        {
            return;
        }

        if (context.Ruleset.Function == RulesetFunction.Clinical)
        {
            context.Bag.Add(RulesetDiagnostics.ClinicalReadsCoverage(context.Ruleset.Id, target.Reference.Id, place));
        }
        else if (context.Ruleset.Payer != target.Ruleset.Payer || context.Ruleset.Item != target.Ruleset.Item)
        {
            context.Bag.Add(RulesetDiagnostics.OtherPayer(context.Ruleset.Id, target.Reference.Id, place));
        }
    }

    private T? End<T>(LeafCursor cursor, T made)
        where T : class
    {
        if (cursor.AtEnd)
        {
            return made;
        }

        context.Bag.Add(RulesetDiagnostics.LeafSyntax(cursor.DescribeNext(), "the end of the comparison", cursor.Here()));
        return null;
    }
}

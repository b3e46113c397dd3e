using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads the published figures on how much nights differ. They stand in the ruleset, so that its digest covers them.</summary>
internal sealed class NightFigureReader(SourceRegister sources, DiagnosticBag bag)
{
    /// <summary>The key in a ruleset.</summary>
    public const string Key = "night_to_night";


    private const string To = " to ";

    /// <summary>The figures, and the words for grades with their places, to be checked once the grades are known.</summary>
    public (ImmutableArray<NightFigure> Figures, ImmutableArray<ScalarNode> Grades) Read(Fields ruleset)
    {
        var figures = ImmutableArray.CreateBuilder<NightFigure>();
        var words = ImmutableArray.CreateBuilder<ScalarNode>();
        foreach (var item in ruleset.Node(Key) is null ? [] : ruleset.List(Key))
        {
            if (Fields.Of(item, "a figure on nights", bag) is not { } fields)
            {
                continue;
            }

            fields.RequiredNode("grades");
            var grades = fields.Words("grades").ToImmutableArray();
            var share = fields.RequiredScalar("share") is { } node ? ReadShare(node) : null;
            var of = fields.RequiredText("of");
            var cites = CitationReader.Read(fields.Words("cites"), sources, bag);
            fields.Done();
            if (cites.IsEmpty)
            {
                bag.Add(RulesetDiagnostics.NoCitation(Key, item.Span));
            }

            words.AddRange(grades);
            if (share is var (low, high))
            {
                figures.Add(new NightFigure([.. grades.Select(grade => grade.Text)], low, high, of, cites));
            }
        }

        return (figures.ToImmutable(), words.ToImmutable());
    }

    private (decimal Low, decimal High)? ReadShare(ScalarNode node)
    {
        var ends = node.Text.Split(To).Select(Percent).ToArray();
        if (ends.Length <= 2 && ends.All(end => end is not null) && ends[0] <= ends[^1])
        {
            return (ends[0]!.Value, ends[^1]!.Value);
        }

        bag.Add(ReadingDiagnostics.Expected("a share, or two with `to` between them, the lower first", node.Described, node.Span));
        return null;
    }

    private static decimal? Percent(string text) =>
        QuantityReader.Read(text, out var quantity, out _, out _) == QuantityFault.None && quantity!.Dimension == Dimension.Share ? quantity.Base : null;
}

using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Humanizer;

namespace Criteria.Cli.Report;

/// <summary>Writes the register of published facts beside the criteria that rest on it, for a screen.</summary>
internal sealed class BasisText(TextWriter writer)
{
    private const int Indent = 8;

    private readonly PlainText _text = new(writer);

    public void Write(BasisTotals totals, IEnumerable<CoveredFact> shown)
    {
        _text.Hanging("", $"{"published fact".ToQuantity(totals.All)}: {string.Join(", ", totals.ByUsage.Select(part => $"{part.Count} {part.Words}"))}.", 0);
        _text.Hanging("", $"Verified: {string.Join(", ", totals.ByBasis.Select(part => $"{part.Count} {part.Words}"))}.", 0);
        foreach (var row in shown)
        {
            _text.Line();
            _text.Hanging(row.Fact.Id, $"{row.Fact.Says} ({row.Fact.VerifiedWords})", Indent);
            foreach (var line in BasisWords.Uses(row))
            {
                _text.Hanging("", line, Indent);
            }
        }
    }
}

/// <summary>The counts at the top.</summary>
/// <param name="All">How many rows there are.</param>
/// <param name="ByUsage">How many of each usage.</param>
/// <param name="ByBasis">How many of each level of verification, by the stronger part.</param>
internal sealed record BasisTotals(int All, (int Count, string Words)[] ByUsage, (int Count, string Words)[] ByBasis)
{
    public static BasisTotals Of(IReadOnlyCollection<CoveredFact> rows) => new(
        rows.Count,
        [.. BasisWords.Usages.Select(usage => (rows.Count(row => row.Usage == usage.Key), usage.Value))],
        [.. FactBases.All.Select(word => (rows.Count(row => row.Fact.Verified.Words() == word), word))]);
}

/// <summary>The words for what became of a row.</summary>
internal static class BasisWords
{
    public static readonly KeyValuePair<FactUsage, string>[] Usages =
    [
        new(FactUsage.Criteria, "with criteria"), new(FactUsage.OtherUse, "used otherwise"), new(FactUsage.Carried, "carried by other rows"),
        new(FactUsage.NotACriterion, "set aside with a reason"), new(FactUsage.Open, "open"),
    ];

    public static IEnumerable<string> Uses(CoveredFact row)
    {
        if (!row.Criteria.IsEmpty)
        {
            yield return $"criteria: {string.Join(", ", row.Criteria.Select(criterion => criterion.Id))}";
        }

        if (!row.Fact.UsedBy.IsEmpty)
        {
            yield return $"used by: {string.Join("; ", row.Fact.UsedBy)}";
        }

        if (!row.Fact.CarriedBy.IsEmpty)
        {
            yield return $"carried by: {string.Join(", ", row.Fact.CarriedBy)}";
        }

        if (row.Fact.NotACriterion is { } reason)
        {
            yield return $"no criterion: {reason}";
        }

        if (row.Usage == FactUsage.Open)
        {
            yield return "open";
        }
    }
}

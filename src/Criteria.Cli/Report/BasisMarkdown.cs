using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Cli.Report;

/// <summary>Writes the register of published facts, the criteria that rest on it and the sources, as a page.</summary>
internal sealed class BasisMarkdown(TextWriter writer)
{
    public void Write(BasisTotals totals, IReadOnlyCollection<CoveredFact> rows, RulesetLibrary library)
    {
        writer.WriteLine("# Published facts and the criteria that rest on them");
        writer.WriteLine();
        writer.WriteLine("Written by `criteria rules basis --format markdown`. A fact is verified as far as its text was seen: read, restated by another");
        writer.WriteLine("text, from memory and not checked, derived from other rows, or common practice without a text.");
        Totals(totals);
        Facts(rows);
        WithoutRow(library);
        Sources(rows, library);
    }

    private void Totals(BasisTotals totals)
    {
        Heading("Totals");
        Table("facts", "number");
        Row("all", $"{totals.All}");
        foreach (var (count, words) in totals.ByUsage.Concat(totals.ByBasis.Select(part => (part.Count, $"verified: {part.Words}"))))
        {
            Row(words, $"{count}");
        }
    }

    private void Facts(IEnumerable<CoveredFact> rows)
    {
        Heading("Facts");
        Table("row", "what it says", "verified", "sources", "what rests on it");
        foreach (var row in rows)
        {
            Row(row.Fact.Id, row.Fact.Says, row.Fact.VerifiedWords, string.Join(", ", row.Fact.Sources.Select(source => source.Id)), string.Join("; ", BasisWords.Uses(row)));
        }
    }

    private void WithoutRow(RulesetLibrary library)
    {
        var without = library.All.Criteria.Where(criterion => criterion.RestsOn.IsEmpty).ToArray();
        if (without.Length == 0)
        {
            return;
        }

        Heading("Criteria that rest on no row");
        writer.WriteLine("They rest on other criteria, or on the sources that they cite alone.");
        writer.WriteLine();
        Table("criterion", "title", "cites");
        foreach (var criterion in without)
        {
            Row(criterion.Id, criterion.Title, string.Join(", ", criterion.Cites.Select(citation => citation.Source.Id).Distinct(StringComparer.Ordinal)));
        }
    }

    private void Sources(IReadOnlyCollection<CoveredFact> rows, RulesetLibrary library)
    {
        Heading("Sources");
        Table("source", "document", "verified", "on", "look again by", "rows");
        foreach (var source in library.Sources.Sources)
        {
            var count = rows.Count(row => row.Fact.Sources.Contains(source));
            Row(source.Id, source.ShortName, source.Verified.Words(), source.VerifiedOn?.ToIso() ?? "", source.ReviewBy?.ToIso() ?? "", $"{count}");
        }
    }

    private void Heading(string title)
    {
        writer.WriteLine();
        writer.WriteLine($"## {title}");
        writer.WriteLine();
    }

    private void Table(params string[] columns)
    {
        Row(columns);
        writer.WriteLine($"|{string.Concat(columns.Select(_ => "---|"))}");
    }

    // A bar would end the cell.
    private void Row(params string[] cells) => writer.WriteLine($"| {string.Join(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal)))} |");
}

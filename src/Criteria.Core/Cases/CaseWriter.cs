using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>What a written case file says beside the case.</summary>
/// <param name="Head">Lines of remarks for its top.</param>
/// <param name="AssessedOn">A remark behind the date of the assessment, or null.</param>
/// <param name="Of">A remark behind a fact, or null for none. Remarks stand on one line.</param>
public sealed record CaseRemarks(IReadOnlyList<string> Head, string? AssessedOn, Func<Fact, string?> Of);

/// <summary>Writes a case as a case file, so that reading it gives the same case again.</summary>
public static class CaseWriter
{
    /// <summary>The file, in YAML.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="remarks">What the file says beside the case, or null.</param>
    public static string Write(Case subject, CaseRemarks? remarks = null)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var lines = new CaseLines(remarks?.Of ?? (_ => null));
        foreach (var line in remarks?.Head ?? [])
        {
            lines.Remark(line);
        }

        lines.Add(0, $"case: {Scalars.Text(subject.Key)}");
        if (subject.AssessedOn is { } date)
        {
            lines.Add(0, $"assessed_on: {date.ToIso()}", remarks?.AssessedOn);
        }

        var facts = subject.Facts;
        new SectionWriter(facts.Vocabulary, lines).Write([.. facts.Entered.Where(fact => fact.Definition.Scope == FactScope.Case)], "", 0);
        if (!subject.Nights.IsEmpty)
        {
            lines.Add(0, $"{Vocabulary.NightPlace}:");
        }

        foreach (var night in subject.Nights)
        {
            WriteNight([.. night.Facts.Entered.Where(fact => fact.Definition.Scope == FactScope.Night)], facts.Vocabulary, lines);
        }

        foreach (var list in facts.Records.Where(list => !list.Items.IsEmpty || list.ClosedBy is not null))
        {
            RecordWriter.Write(list, lines);
        }

        return lines.ToString();
    }

    private static void WriteNight(IReadOnlyList<Fact> facts, Vocabulary vocabulary, CaseLines lines)
    {
        var start = lines.Count;
        new SectionWriter(vocabulary, lines).Write([.. facts.Where(fact => fact.Definition.At is not null)], Vocabulary.NightPlace, 2);
        IndexWriter.Write(facts, vocabulary, lines);
        lines.BeginItem(start);
    }
}

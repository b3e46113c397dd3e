using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Documents.Sharing;

/// <summary>The de-identified form of a case: the Safe Harbor classes that a case file can hold are taken out.</summary>
/// <remarks>
/// The vocabulary says of each fact and each list what it identifies by (<see cref="FactDefinition.Identifies"/>). The names of records, codes that no
/// list knows and every note of who wrote or reviewed go as well; the key is replaced. What remains may still identify somebody who knows the patient.
/// </remarks>
public static class Deidentified
{
    private const string Key = "DE-IDENTIFIED";

    /// <summary>The case for documents: its days stay in it, because rules compare them; documents print years only.</summary>
    public static Case Of(Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return Of(subject, Key, subject.AssessedOn, new SharedFacts(subject.Facts, keepsDays: true));
    }

    /// <summary>The case as a case file: its days are unknown, and remarks give their years.</summary>
    /// <param name="subject">The case.</param>
    /// <param name="rulesOn">The date whose rules counted; its year stays.</param>
    /// <param name="key">The key in the place of the case's own; from it nothing is taken.</param>
    /// <returns>The file, in YAML.</returns>
    public static string FileOf(Case subject, DateOnly rulesOn, string key)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentException.ThrowIfNullOrEmpty(key);
        var shared = new SharedFacts(subject.Facts, keepsDays: false);
        var year = new DateOnly(rulesOn.Year, 1, 1);
        return CaseWriter.Write(Of(subject, key, year, shared), new CaseRemarks(ResidualRisk.Lines, "stands for its year; it only chooses the rules", shared.RemarkOf));
    }

    private static Case Of(Case subject, string key, DateOnly? assessedOn, SharedFacts shared)
    {
        var facts = FactSet.Of(subject.Facts.Vocabulary, shared.Of(subject.Facts, FactScope.Case), subject.Facts.Records.Select(shared.Of));
        ImmutableArray<Night> nights = [.. subject.Nights.Select((night, at) => new Night($"night {(at + 1).ToString(CultureInfo.InvariantCulture)}", facts.With(shared.Of(night.Facts, FactScope.Night))))];
        return new Case(key, assessedOn, facts, []).WithNights(nights);
    }
}

using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>One patient's facts, nights, documents and therapy trials, for one decision.</summary>
/// <param name="Key">The case key; identity is this key and nothing else.</param>
/// <param name="AssessedOn">The date the assessment is made for, if the case says so.</param>
/// <param name="Facts">The facts of the case.</param>
/// <param name="Nights">The nights in the order of their dates; each holds the facts of the case and its own.</param>
public sealed record Case(string Key, DateOnly? AssessedOn, FactSet Facts, ImmutableArray<Night> Nights)
{
    /// <summary>The payer asked about, or null.</summary>
    public string? Payer => Word(CoveragePlaces.Payer);

    /// <summary>The item asked about, or null.</summary>
    public string? Item => Word(CoveragePlaces.Item);

    /// <summary>The date of service, or null.</summary>
    public DateOnly? ServiceDate => Facts.Vocabulary.At(CoveragePlaces.ServiceDate) is { } fact
        ? (Facts[fact].Value as DateValue)?.Date
        : null;

    /// <summary>The date whose rules count: the date of service, else the date of the assessment.</summary>
    public DateOnly? RulesDate => ServiceDate ?? AssessedOn;

    /// <summary>How the case says that its nights are read together, or null when it leaves that to the rules.</summary>
    public NightsDeclaration? NightsDeclaration => Word(NightsPlaces.ReadBy) is { } rule
        ? new NightsDeclaration(rule, Facts.Vocabulary.At(NightsDeclaration.ByPlace) is { } by ? (Facts[by].Value as TextValue)?.Text : null)
        : null;

    /// <summary>The same case with other nights; what is computed from them is computed anew, in the case and in each night.</summary>
    public Case WithNights(ImmutableArray<Night> nights)
    {
        if (Facts.Vocabulary.ComputedFromNights.IsEmpty)
        {
            return this with { Nights = nights };
        }

        // Without nights of their own, so that one change after another builds no chain.
        ImmutableArray<FactSet> bare = [.. nights.Select(night => night.Facts.WithNights([]))];
        return this with { Facts = Facts.WithNights(bare), Nights = [.. nights.Select(night => night with { Facts = night.Facts.WithNights(bare) })] };
    }

    private string? Word(string place) => Facts.Vocabulary.At(place) is { } fact ? (Facts[fact].Value as ChoiceValue)?.Word : null;
}

/// <summary>One night of a case.</summary>
/// <param name="Label">Its date, or its number in the file.</param>
/// <param name="Facts">The facts of the case and of this night.</param>
public sealed record Night(string Label, FactSet Facts);

/// <summary>The places of a case file that select the rulesets of a coverage check.</summary>
internal static class CoveragePlaces
{
    public const string Payer = "coverage.payer";
    public const string Item = "coverage.item";
    public const string ServiceDate = "coverage.service_date";
}

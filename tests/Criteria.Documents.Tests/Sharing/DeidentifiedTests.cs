using System.Text;
using System.Text.RegularExpressions;
using Criteria.Core.Facts;
using Criteria.Documents.Renderers;
using Criteria.Documents.Sharing;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests.Sharing;

/// <summary>An identifier is planted in every place of a case that can hold one; none comes out.</summary>
public sealed partial class DeidentifiedTests
{
    private const string Plant = "Zzyzx";

    private static readonly Case Planted = Written.CaseOf(PlantedText());

    public static TheoryData<string> Documents => [.. Written.Templates.Documents.Select(document => document.Name)
        .Where(document => Written.Templates.Find(document)!.Head is { To.IsEmpty: true, Release: false })];

    [Fact]
    public void Plants_StandInTheDocumentsOfTheCaseItself() =>
        Written.Text(Written.Document(Planted, "impression"), "markdown").ShouldContain(Plant);

    [Theory]
    [MemberData(nameof(Documents))]
    public void Document_OfAPlantedCase_HoldsNoPlantAndNoDay(string document)
    {
        var page = Written.Shared(Planted, document).Page!;

        foreach (var format in DocumentFormats.All)
        {
            var text = Encoding.UTF8.GetString(DocumentFormats.Render(page, format).Span);
            text.ShouldNotContain(Plant);
            Day().Matches(text).ShouldBeEmpty(format);
        }

        page.CaseKey.ShouldBe("DE-IDENTIFIED");
        (page.Date.Month, page.Date.Day).ShouldBe((1, 1));
        page.Markdown.ShouldStartWith("*De-identified for sharing");
    }

    [Fact]
    public void Case_Deidentified_KeepsEveryFindingOfTheCase()
    {
        var (whole, shared) = (Written.Assess(Planted), Written.Assess(Deidentified.Of(Planted)));

        shared.Findings.Select(finding => (finding.Id, finding.Standing, finding.Value?.Band)).ShouldBe(whole.Findings.Select(finding => (finding.Id, finding.Standing, finding.Value?.Band)));
    }

    [Theory]
    [InlineData("89 years", "89 years")]
    [InlineData("90 years", "at least 90 years")]
    [InlineData("97 years", "at least 90 years")]
    public void Age_AboveTheLimit_IsSharedAsARange(string age, string shared) =>
        Deidentified.Of(Written.CaseOf($"case: A-1\nassessed_on: 2026-06-18\npatient: {{ age: {age} }}\n")).Facts["age"].Text.ShouldBe(shared);

    [Theory]
    [InlineData("night of 3 June 2026 and 2026-06-04", "night of 2026 and 2026")]
    [InlineData("30 /h, J Clin Sleep Med 2017;13:479-504, 555-0100-22", "30 /h, J Clin Sleep Med 2017;13:479-504, 555-0100-22")]
    public void Years_StandInThePlaceOfDates(string text, string years) => Years.Only(text).ShouldBe(years);

    // Every text, every origin, every name of a record and every reviewer of the example is a plant.
    private static string PlantedText()
    {
        var text = Written.ExampleText("oral-appliance-mild").Replace("case: HT-0416", $"case: {Plant}-1", StringComparison.Ordinal);
        text = Reviewer().Replace(text, $"reviewed_by: {Plant}-reviewer");
        foreach (var id in new[] { "visit-note", "test-order", "report", "follow-up", "appliance-order" })
        {
            text = Regex.Replace(text, $@"(id: |from: ){id}\b", $"$1{Plant}-{id}");
        }

        var identity = Written.Library.Vocabulary.Facts.Where(fact => fact.At?.StartsWith("identity.", StringComparison.Ordinal) == true && fact.Kind == FactKind.Text)
            .Select(fact => $"  {fact.At!["identity.".Length..]}: {Plant}-{fact.Id}\n");
        var others = Written.Library.Vocabulary.Facts.Where(fact => fact.At?.StartsWith("denial.", StringComparison.Ordinal) == true && fact.Kind == FactKind.Text)
            .Select(fact => $"  {fact.At!["denial.".Length..]}: {Plant}-{fact.Id}\n");
        return text.Replace("neck: { value: 37 cm, from: ", $"neck: {{ value: 37 cm, from: {Plant} told p.1 by ", StringComparison.Ordinal)
            + "identity:\n" + string.Concat(identity) + "  birth_date: 1899-12-31\n" + "denial:\n" + string.Concat(others)
            + $"recipients: [{{ id: {Plant}-r, kind: dentist, name: {Plant}-name, fax: {Plant}-fax }}]\n"
            + $"overrides: [{{ id: {Plant}-o, kind: finding, of: severity.rei-4, reads: {Plant}-reads, reason: other, note: {Plant}-note, by: {Plant}-by, on: 2026-05-01 }}]\n"
            + $"sign_offs: [{{ id: {Plant}-s, kind: impression, reviewed_by: {Plant}-signer, reviewed_on: 2026-05-02 }}]\n"
            + $"addenda: [{{ id: {Plant}-a, kind: impression, text: {Plant}-text, by: {Plant}-by, on: 2026-05-03 }}]\n";
    }

    [GeneratedRegex("reviewed_by: [^}\n]+?(?= \\}|\n)")]
    private static partial Regex Reviewer();

    [GeneratedRegex(@"\b\d{4}-\d{2}-\d{2}\b|\b\d{1,2} (?:January|February|March|April|May|June|July|August|September|October|November|December) \d{4}\b")]
    private static partial Regex Day();
}

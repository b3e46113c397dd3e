using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>The words for the patient that stand in the rulesets: all there, easy to read, without a figure.</summary>
public sealed class PlainWordsTests
{
    // Of a single sentence the grade swings more than of a page.
    private const double HighestOfOne = 9;

    public static TheoryData<string> Options => [.. Criteria.Where(criterion => criterion.Body is OptionBody).Select(criterion => criterion.Id)];

    public static TheoryData<string> WithPlainWords => [.. Criteria.Where(criterion => criterion.Plain is not null).Select(criterion => criterion.Id)];

    private static IEnumerable<Criterion> Criteria => Written.Library.All.Criteria;

    [Theory]
    [MemberData(nameof(Options))]
    public void ShippedOption_HasWordsForThePatient(string id) => Of(id).Plain.ShouldNotBeNullOrWhiteSpace();

    [Theory]
    [MemberData(nameof(WithPlainWords))]
    public void PlainWords_OfEveryCriterion_AreEasyToRead(string id) => ShouldBePlain(Of(id).Plain!);

    [Fact]
    public void PlainWords_OfEveryGrade_AreEasyToRead()
    {
        var words = Written.Library.Rulesets.SelectMany(ruleset => ruleset.PlainGrades).ToArray();

        words.ShouldNotBeEmpty();
        words.ShouldAllBe(grade => grade.Say.Length > 0);
        foreach (var grade in words)
        {
            ShouldBePlain(grade.Say);
        }
    }

    // What the patient page prints of a grade: those of the index that a report shows at the top.
    [Fact]
    public void GradesAtTheTop_HaveWordsForEveryBandAndForWhatTheyCount()
    {
        var graded = Criteria.Where(criterion => criterion is { Body: GradeBody, Shown: Shown.AtTheTop, PerNight: true, Ruleset.Function: RulesetFunction.Clinical }).ToArray();

        graded.ShouldNotBeEmpty();
        foreach (var criterion in graded)
        {
            criterion.Plain.ShouldNotBeNull(criterion.Id);
            ((GradeBody)criterion.Body).Bands.Select(band => band.Grade).ShouldBeSubsetOf(criterion.Ruleset.PlainGrades.SelectMany(words => words.Grades));
        }
    }

    [Fact]
    public void PlainWords_OfAllOptionsTogether_ReadLikeThePatientPage() =>
        Readability.Grade(string.Join('\n', Criteria.Where(criterion => criterion.Body is OptionBody).Select(criterion => criterion.Plain))).ShouldBeLessThanOrEqualTo(Readability.ForPatients);

    [Fact]
    public void Grade_OfAHardSentence_IsAboveTheBound() =>
        Readability.Grade("Polysomnographic documentation demonstrated predominantly obstructive respiratory disturbances necessitating multidisciplinary evaluation.")
            .ShouldBeGreaterThan(HighestOfOne);

    private static Criterion Of(string id) => Criteria.Single(criterion => criterion.Id == id);

    private static void ShouldBePlain(string words)
    {
        words.ShouldNotContain(letter => char.IsDigit(letter));
        words.ShouldEndWith(".");
        Readability.Grade(words).ShouldBeLessThanOrEqualTo(HighestOfOne, words);
    }
}

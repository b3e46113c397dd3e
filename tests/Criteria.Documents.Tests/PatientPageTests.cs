using System.Text.RegularExpressions;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>The page for the patient: easy to read, few numbers, and only once a clinician released it.</summary>
public sealed partial class PatientPageTests
{
    // Eight years of school, the usual bound for what patients are handed.
    private const double HighestGrade = 8;

    private const int MostNumbers = 3;

    private const string Release = "\nsign_offs:\n  - { id: s1, kind: patient-page, released_by: R. Example, released_on: 2026-06-20 }\n";

    public static TheoryData<string> Examples => [.. Written.Examples.Where(name => !Written.ExampleText(name).Contains("sign_offs:", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void PatientPage_OfEveryExample_ReadsAtGradeEightOrBelow(string example)
    {
        var grade = Grade(Body(example));

        grade.ShouldBeInRange(1, HighestGrade);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void PatientPage_OfEveryExample_HoldsThreeNumbersAtMost(string example) =>
        Number().Count(Body(example)).ShouldBeLessThanOrEqualTo(MostNumbers);

    [Fact]
    public void PatientPage_ThatNobodyReleased_IsRefused()
    {
        var written = Written.Document(Written.ExampleText("oral-appliance-mild"), "patient-page");

        written.Page.ShouldBeNull();
        written.Problems.ShouldContain(problem => problem.ToString().Contains("released", StringComparison.Ordinal));
    }

    [Fact]
    public void PatientPage_OfAMildNight_SaysTheCountTheGradeAndTheCautions()
    {
        var body = Body("oral-appliance-mild");

        body.ShouldContain("This is called mild.");
        body.ShouldContain("A mouth guard made for you by a dentist.");
        body.ShouldContain("Do not drive or use machines when you feel sleepy.");
        body.ShouldContain("Get emergency care at once");
    }

    [Fact]
    public void Grade_OfAHardSentence_IsAboveTheBound() =>
        Grade("Polysomnographic documentation demonstrated predominantly obstructive respiratory disturbances necessitating multidisciplinary evaluation.").ShouldBeGreaterThan(HighestGrade);

    // What the patient reads between the head of the page and the sign-off; the marks are not printed on this page.
    private static string Body(string example)
    {
        var written = Written.Document(Written.ExampleText(example) + Release, "patient-page");
        written.Problems.ShouldBeEmpty();
        var text = Written.Text(written, "markdown");
        var start = text.IndexOf("This page tells you", StringComparison.Ordinal);
        return text[start..text.IndexOf("## Sign-off", StringComparison.Ordinal)];
    }

    // Flesch-Kincaid grade: 0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid and others, 1975).
    private static double Grade(string text)
    {
        var sentences = SentenceEnd().Split(text).Select(part => Word().Matches(part).Select(match => match.Value).ToArray()).Where(words => words.Length > 0).ToArray();
        var words = sentences.SelectMany(sentence => sentence).ToArray();
        return (0.39 * words.Length / sentences.Length) + (11.8 * words.Sum(Syllables) / words.Length) - 15.59;
    }

    // Groups of vowels, less a silent e at the end; a rough count that errs on both sides.
    private static int Syllables(string word) =>
        Math.Max(1, Vowels().Count(word) - (word.EndsWith('e') && !word.EndsWith("le", StringComparison.Ordinal) ? 1 : 0));

    [GeneratedRegex(@"[.?!:](?=\s)|\n")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex("[A-Za-z]+")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouy]+", RegexOptions.IgnoreCase)]
    private static partial Regex Vowels();

    [GeneratedRegex(@"\d+(?:\.\d+)?")]
    private static partial Regex Number();
}

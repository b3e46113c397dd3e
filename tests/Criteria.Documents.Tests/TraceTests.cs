using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Documents.Tests.Support;
using CsCheck;

namespace Criteria.Documents.Tests;

/// <summary>Every sentence carries what it rests on, and goes with it.</summary>
public sealed class TraceTests
{
    public static TheoryData<string> Examples => [.. Written.Examples];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Impression_OfEveryExample_HasSentencesWhoseFindingsStand(string example)
    {
        var subject = Written.CaseOf(Written.ExampleText(example));
        var page = Written.Document(subject, "impression").Page!;

        var sentences = Sentences.Of(page);

        sentences.ShouldNotBeEmpty();
        ShouldStand(sentences, subject);
    }

    // Every fact is taken away once over many runs; each sentence that rested on it has gone, and no other stands on nothing.
    [Fact]
    public void Impression_WithoutAFact_LosesTheSentencesThatRestedOnIt() =>
        Gen.Select(Gen.Int[0, Written.Examples.Count() - 1], Gen.Int[0, int.MaxValue]).Sample((place, choice) =>
        {
            var subject = Written.CaseOf(Written.ExampleText(Written.Examples.ElementAt(place)));
            var known = subject.Nights.SelectMany(night => night.Facts.Entered).Concat(subject.Facts.Entered).Where(fact => fact.IsKnown).Select(fact => fact.Definition).Distinct().ToArray();
            var fact = known[choice % known.Length];
            var before = Sentences.Of(Written.Document(subject, "impression").Page!);

            var reduced = subject.Without(fact);
            var after = Sentences.Of(Written.Document(reduced, "impression").Page!);

            after.ShouldAllBe(sentence => !sentence.Ids.Contains(fact.Id) || IsStillKnown(fact, reduced));
            ShouldStand(after, reduced);
            before.Where(sentence => sentence.Ids.Contains(fact.Id) && !IsStillKnown(fact, reduced)).ShouldAllBe(sentence => !after.Any(other => other.Ids.SequenceEqual(sentence.Ids)));
        }, iter: 150, threads: 1);

    [Fact]
    public void Impression_OfAnEmptyCase_StatesNoFinding()
    {
        var page = Written.Document("case: E-1\nassessed_on: 2026-06-18\nnights: [{ date: 2026-06-03 }]\npatient: { age: 52 years }\n", "impression").Page!;

        page.Markdown.ShouldContain("Lowest saturation: not supplied.");
        page.Markdown.ShouldContain("No grade: no index");
        page.Markdown.Split("\n## Sign-off\n")[0].ShouldNotContain("/h");
        page.Markdown.ShouldNotContain("**Severe**");
    }

    [Fact]
    public void Reasons_OfAMark_NameCriterionFactsSourceAndHowFarItWasVerified()
    {
        var text = Written.Text(Written.ExampleText("oral-appliance-mild"), "impression", "markdown");

        text.ShouldContain("**Grade by REI, 4 % rule** (severity.rei-4, night of 15 April 2026). Met: mild.");
        text.ShouldContain("10.8/h is at least 5 /h and below 15 /h (72 events in 6 h 40 min).");
        text.ShouldContain("(from memory, not checked).");
        text.ShouldContain("Rules: osa-severity 2026.1.");
    }

    private static void ShouldStand(IEnumerable<(string Sentence, string[] Ids)> sentences, Case subject)
    {
        var assessment = Written.Assess(subject);
        foreach (var (sentence, ids) in sentences)
        {
            foreach (var id in ids)
            {
                var findings = assessment.Of(id).ToArray();
                (findings.Length > 0 ? findings.Any(finding => finding.Standing != Standing.NotApplicable) : IsKnown(id, subject)).ShouldBeTrue($"{sentence} [{id}]");
            }
        }
    }

    // A fact that is also computed from others stays known without what was written.
    private static bool IsStillKnown(FactDefinition fact, Case subject) => IsKnown(fact.Id, subject);

    private static bool IsKnown(string id, Case subject) =>
        Written.Library.Vocabulary.Find(id) is { } fact && (subject.Facts[fact].IsKnown || subject.Nights.Any(night => night.Facts[fact].IsKnown));

    // The point rests on a finding that is not met, and is itself met.
    [Fact]
    public void Reason_OfAPointThatRestsOnAFindingNotMet_SaysThatThePointIsMet() =>
        Written.Text(Written.ExampleText("response-to-therapy"), "impression", "text").ReplaceLineEndings(" ").Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Aggregate((text, word) => $"{text} {word}").ShouldContain("(working reading of no significant comorbidity): met;");
}

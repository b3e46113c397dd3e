using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Changes;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests.Changes;

/// <summary>What would change an assessment is exactly what trying every value finds.</summary>
public sealed class OutlookTests
{
    private static readonly FactDefinition[] Tried =
        [.. RandomCases.Writable.Where(fact => fact.Kind is FactKind.YesNo or FactKind.Choice or FactKind.Date || Grid.Of(fact, Rules.Library.Vocabulary) is not null)
            .Where(fact => fact.At?.StartsWith("coverage.", StringComparison.Ordinal) != true)];

    [Theory]
    [InlineData("rei_4.events")]
    [InlineData("rei_3.events")]
    [InlineData("monitoring_time")]
    [InlineData("usable.airflow")]
    [InlineData("height")]
    [InlineData("weight")]
    [InlineData("neck")]
    [InlineData("epworth_total")]
    [InlineData("central_apneas")]
    [InlineData("supine_time")]
    [InlineData("age")]
    [InlineData("sex")]
    [InlineData("hypertension")]
    [InlineData("recorder")]
    [InlineData("night.date")]
    public void Changes_OfACompleteCase_AreThoseThatEveryValueGives(string fact) => ShouldAgree(CaseText.Complete.Read(), Rules.Library.Vocabulary.Find(fact)!);

    [Fact]
    public void Changes_OfRandomCases_AreThoseThatEveryValueGives() => Gen.Select(RandomCases.Any, Gen.Int[0, 10_000])
        .Sample(
            (subject, pick) =>
            {
                if (!subject.Nights.IsEmpty && Known(subject) is { Length: > 0 } known)
                {
                    ShouldAgree(subject, known[pick % known.Length]);
                }
            },
            iter: Samples.Of(25));

    [Fact]
    public void Questions_OfRandomCases_SettleWhatEveryValueSettles() => Gen.Select(RandomCases.Any, Gen.Int[0, 10_000])
        .Sample(
            (subject, pick) =>
            {
                if (subject.Nights.Length != 1 || OutlookOf(subject) is not { Questions.Length: > 0 } outlook)
                {
                    return;
                }

                var unknown = outlook.Questions.Select(question => question.Fact).Where(id => Tried.Any(fact => fact.Id == id)).Distinct().ToArray();
                var fact = Tried.First(each => each.Id == unknown[pick % unknown.Length]);
                var settled = outlook.Questions.First(question => question.Fact == fact.Id).Settles;

                var found = settled.Select(one => $"{one.Criterion.Id} {one.Night}").ToHashSet(StringComparer.Ordinal);
                var without = new BruteForce(InForce(subject), subject, settling: false).Settled(fact, 0).Keys;
                if (found.SetEquals(without))
                {
                    return;
                }

                var with = new BruteForce(InForce(subject), subject, settling: true);
                found.ShouldBeSubsetOf(with.Settled(fact, 0).Keys, fact.Id);
                without.Where(with.Open().Contains).ShouldBeSubsetOf(found, fact.Id);
            },
            iter: Samples.Of(25));

    // A4: 88 events in 6 h are 14.67/h; two more events, or eight fewer minutes, make it 15.0.
    [Fact]
    public void Changes_OfARateJustBelowABoundary_AreTheFewestEventsAndMinutes()
    {
        var subject = CaseText.Complete.WithoutIndices().Index("index: REI, hypopnea: 4 %, per_hour: 14.7, events: 88, over: 6 h").Read();

        var changes = OutlookOf(subject).Of("severity.rei-4", subject.Nights[0].Label).Where(pair => pair.Turn.AfterWords == "moderate").Select(pair => (pair.Change.Fact, pair.Change.Step));

        changes.Order().ShouldBe([("rei_4.events", "2 more"), ("rei_4.time", "8 min less")]);
    }

    [Fact]
    public void Changes_OfAgeAndSex_AreMarkedAsWhatNobodyCanChange()
    {
        // Snoring, hypertension, age, neck and sex: five points of STOP-Bang, high from five.
        var changes = OutlookOf(CaseText.Complete.With("intake.symptoms.daytime_sleepiness", "no").With("intake.symptoms.witnessed_apneas", "no").Read()).Changes;

        changes.Where(change => change.IsFixed).Select(change => change.Fact).Distinct().Order().ShouldBe(["age", "sex"]);
        changes.ShouldContain(change => !change.IsFixed);
    }

    // A usable signal longer than the recording cannot be; nor can more events by the stricter rule.
    [Fact]
    public void Changes_AreNeverImpossible()
    {
        var changes = OutlookOf(CaseText.Complete.Read()).Changes;

        changes.ShouldNotContain(change => change.Fact == "rei_4.events" && change.Turns.Any(turn => turn.AfterWords == "severe"));
        changes.SelectMany(change => change.Turns).ShouldNotContain(turn => turn.Criterion.Impossible);
    }

    [Fact]
    public void Changes_OfADocument_TurnWhatRestsOnIt()
    {
        var turns = OutlookOf(CaseText.Complete.With("coverage.payer", "medicare").With("coverage.item", "pap").Read()).Changes
            .Single(change => change.Fact == "visit-note: document.signed").Turns;

        turns.ShouldContain(turn => turn.Criterion.Id == "pap.evaluation-before-test" && turn.BeforeWords == "met" && turn.AfterWords == "not met");
    }

    [Fact]
    public void Questions_OfADocumentThatIsSought_SettleWhatLooksForIt()
    {
        var subject = CaseText.Empty.With("coverage.payer", "medicare").With("coverage.item", "pap").With("nights.date", "2026-06-03").Read();

        OutlookOf(subject).Questions.Where(question => question.Fact == "documents: test order").SelectMany(question => question.Settles)
            .ShouldContain(settles => settles.Criterion.Id == "pap.test-order" && !settles.Always);
    }

    // What the case says is unknown, and no open finding waits for.
    [Fact]
    public void CannotChange_NamesWhatIsSaidToBeUnknownAndMattersToNothing()
    {
        var outlook = OutlookOf(CaseText.Complete.With("nights.ended", "unknown").With("nights.dentist_handled_test", "unknown").With("intake.neck", "unknown").Read());

        outlook.CannotChange.ShouldNotBeEmpty();
        outlook.CannotChange.ShouldNotContain("Neck circumference");
        foreach (var label in outlook.CannotChange)
        {
            outlook.Questions.ShouldNotContain(question => question.Label == label);
        }
    }

    [Fact]
    public void Outlook_OfARefusedCase_IsEmpty() => OutlookOf(CaseText.Complete.With("patient.age", "12 years").Read()).ShouldSatisfyAllConditions(
        outlook => outlook.Changes.ShouldBeEmpty(),
        outlook => outlook.Questions.ShouldBeEmpty());

    private static FactDefinition[] Known(Case subject) => [.. Tried.Where(fact =>
        (fact.Scope == FactScope.Night ? subject.Nights[0].Facts : subject.Facts) is var facts && facts[fact].IsKnown && !Companions.IsDecidedByItsParts(fact, facts))];

    private static RulesInForce InForce(Case subject) => Rules.Library.InForce(subject.RulesDate ?? Rules.Date, subject.Payer, subject.Item);

    private static Outlook OutlookOf(Case subject) =>
        Rules.Assessor.OutlookOf(subject, Rules.Assessor.Assess(subject, subject.RulesDate ?? Rules.Date));

    private static void ShouldAgree(Case subject, FactDefinition fact)
    {
        var assessment = Rules.Assessor.Assess(subject, subject.RulesDate ?? Rules.Date);
        if (assessment.Refusal is not null)
        {
            return;
        }

        var outlook = Rules.Assessor.OutlookOf(subject, assessment);
        var night = fact.Scope == FactScope.Night ? subject.Nights[0] : null;
        var found = BruteForce.Turns(outlook, fact, (night?.Facts ?? subject.Facts)[fact], night?.Label);

        // What every completion of a changed case agrees on is tried for findings that are settled so as the case is, and not for the others:
        // more is seen to be impossible then, and more turns.
        var without = new BruteForce(InForce(subject), subject, settling: false).Turns(fact, 0);
        if (!found.SequenceEqual(without))
        {
            var with = new BruteForce(InForce(subject), subject, settling: true).Turns(fact, 0);
            without.Keys.Where(with.ContainsKey).ShouldBeSubsetOf(found.Keys, fact.Id);
            foreach (var (key, words) in found)
            {
                new[] { without.GetValueOrDefault(key), with.GetValueOrDefault(key) }.ShouldContain(words, $"{fact.Id}: {key}");
            }
        }
    }
}

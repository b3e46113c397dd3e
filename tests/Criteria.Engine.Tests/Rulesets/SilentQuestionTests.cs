using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>Where a question that a source leaves open arises, nothing is decided without a person; then the local decision counts.</summary>
/// <remarks>That each question of each ruleset arises in some case is held by the tests beside the rulesets.</remarks>
public sealed class SilentQuestionTests
{
    private static readonly CaseText Night = CaseText.Complete.WithoutIndices().Without("nights.monitoring_time");

    private static readonly Dictionary<(string Criterion, string Question), CaseText> Examples = new()
    {
        [("adequacy.night", "pat-signal")] = CaseText.Complete.With("nights.recorder", "PAT set").With("nights.channels", "[pat, oximetry, actigraphy]")
            .With("nights.usable.airflow", "not applicable").With("nights.usable.pat", "6 h"),
        [("hsat.sensors", "airflow-sensor")] = CaseText.Complete.With("nights.channels", "[airflow, thoracic_effort, abdominal_effort, oximetry]"),
        [("severity.negative", "negative-rule")] = Night.Index("index: REI, hypopnea: 4 %, events: 29, over: 6 h")
            .Index("index: REI, hypopnea: 3 %, events: 30, over: 6 h"),
        [("neck.large-australia", "neck-limit")] = CaseText.Complete.With("intake.neck", "42 cm"),
        [("position.enough-time", "exactly-a-tenth")] = CaseText.Complete.With("nights.supine_time", "6 h").With("nights.other_time", "40 min"),
        [("position.class-2", "exactly-30")] = CaseText.Complete.With("nights.supine_events", "90"),
        [("pap.evaluation-before-test", "x-13")] = Evaluation("date: 2026-05-20, in_person: no, telehealth: yes"),
        [("pap.evaluation-before-test", "same-day")] = Evaluation("date: 2026-06-03, in_person: yes, telehealth: no"),
        [("pap.listed-condition", "x-18")] = CaseText.Complete
            .Without("intake.symptoms").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
            .With("intake.symptoms.fatigue", "yes").With("intake.conditions.hypertension", "no"),
        [("pap.sleep-test", "x-01")] = Night.With("nights.recording_time", "10 h").Index("index: payer RDI, hypopnea: 4 %, events: 145, over: 10 h"),
        [("pap.sleep-test", "x-03")] = Night.With("nights.recording_time", "1 h 50 min")
            .Index("index: payer RDI, hypopnea: 4 %, events: 29, over: 1 h 50 min"),
        [("pap.sleep-test", "x-04")] = Night.With("nights.recording_time", "4 h").With("nights.recording_in_fragments", "yes")
            .Index("index: payer RDI, hypopnea: 4 %, events: 29, over: 4 h"),
        [("pap.sleep-test", "denominator")] = Night.With("nights.recording_time", "6 h 1 min").Index("index: REI, hypopnea: 4 %, events: 90, over: 6 h"),
        [("pap.continued.visit", "x-08-first")] = Continued("date: 2026-07-31, in_person: yes, telehealth: no"),
        [("pap.continued.visit", "x-08-last")] = Continued("date: 2026-09-30, in_person: yes, telehealth: no"),
        [("pap.continued.visit", "x-13")] = Continued("date: 2026-09-10, in_person: no, telehealth: yes"),
        [("pap.continued.adherence", "x-08")] = Continued("date: 2026-09-10, in_person: yes").With("coverage.best_run_90", "20").With("coverage.best_run_91", "21").With("coverage.best_run_92", "21"),
        [("pap.test-order", "same-day")] = CaseText.Complete.WithoutDocuments("test order")
            .Document("id: order, kind: test order, date: 2026-06-03, author: physician"),
    };

    public static TheoryData<string, string> Questions
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var (criterion, question) in Examples.Keys)
            {
                data.Add(criterion, question);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Question_ThatArises_LeavesTheFindingOpenWithItsReadings(string criterion, string question)
    {
        var findings = Examples[(criterion, question)].Assess();

        findings.Of(criterion).ShouldBe(Standing.Undetermined);
        findings.Questions(criterion).ShouldBe([question]);
        findings.Missing(criterion).ShouldBeEmpty();
        findings[criterion].Silent[0].Readings.Length.ShouldBeGreaterThanOrEqualTo(2);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Question_AnsweredByAnOverlay_IsDecidedAndSaysByWhom(string criterion, string question)
    {
        var met = Examples[(criterion, question)].Assess(All("met"));
        var notMet = Examples[(criterion, question)].Assess(All("not met"));

        met.Of(criterion).ShouldBe(Standing.Met);
        notMet.Of(criterion).ShouldBe(Standing.NotMet);
        met[criterion].DecidedLocally.ShouldHaveSingleItem().Answer!.By.ShouldBe("nobody, 2026-01-10");
    }

    // A complete ordinary case raises none of them.
    [Fact]
    public void Question_InAnOrdinaryCase_DoesNotArise()
    {
        var findings = CaseText.Complete.Assess();

        findings.Assessment.Findings.ShouldAllBe(finding => finding.Silent.IsEmpty);
    }

    // Each example raises one question only, so one overlay with every answer does for all of them.
    private static Overlay[] All(string answer) => [.. Examples.Keys.Select(key => new Overlay(
        Rules.Library.InForce(Rules.Date, "medicare", "pap").Find(key.Criterion)!.Ruleset.Id, $"answer: {key.Question}, of: {key.Criterion}, as: {answer}"))];

    // PAP from 1 July 2026, a claim from the fourth month, and one re-evaluation.
    private static CaseText Continued(string visit) => CaseText.Complete
        .With("coverage.stage", "continued").With("coverage.service_date", "2026-11-01")
        .With("therapy", "[{ id: pap, kind: PAP, start: 2026-07-01 }, { others: no, reviewed_by: billing staff }]")
        .Document($"id: again, kind: clinical evaluation, author: physician, signed: yes, records_improvement: yes, reviews_adherence: yes, {visit}");

    private static CaseText Evaluation(string entry) => CaseText.Complete.WithoutDocuments("clinical evaluation")
        .Document($"id: note, kind: clinical evaluation, author: physician, signed: yes, {entry}");
}

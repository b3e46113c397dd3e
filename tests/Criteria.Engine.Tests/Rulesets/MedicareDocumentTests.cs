using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

/// <summary>What the Medicare PAP rules ask of documents and of the test itself. The night is that of 2026-06-03.</summary>
public sealed class MedicareDocumentTests
{
    private static readonly CaseText WithoutEvaluation = CaseText.Complete.WithoutDocuments("clinical evaluation");

    private static readonly CaseText WithoutOrder = CaseText.Complete.WithoutDocuments("test order");

    // Source: L33718 I.A: in person, before the test. A note of the same day shows no order of events.
    [Theory]
    [InlineData("2026-06-02", Standing.Met)]
    [InlineData("2026-06-03", Standing.Undetermined)]
    [InlineData("2026-06-04", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData("2016-06-02", Standing.Met)]
    public void Evaluation_AroundTheNight_MustComeBefore(string date, Standing expected)
    {
        var findings = Evaluation($"date: {date}, author: physician, in_person: yes, telehealth: no, signed: yes").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(expected);
        findings.Questions("pap.evaluation-before-test").ShouldBe(date == "2026-06-03" ? ["same-day"] : []);
    }

    // Source: A55426, treating practitioner.
    [Theory]
    [InlineData("physician", Standing.Met)]
    [InlineData("nurse practitioner", Standing.Met)]
    [InlineData("physician assistant", Standing.Met)]
    [InlineData("clinical nurse specialist", Standing.Met)]
    [InlineData("dentist", Standing.NotMet)]
    [InlineData("technologist", Standing.NotMet)]
    [InlineData("supplier", Standing.NotMet)]
    [InlineData("other", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    public void Evaluation_ByEachAuthor_CountsFromTheTreatingPractitioner(string author, Standing expected)
    {
        var findings = Evaluation($"date: 2026-05-20, author: {author}, in_person: yes, telehealth: no, signed: yes").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(expected);
    }

    [Theory]
    [InlineData("signed: yes", Standing.Met)]
    [InlineData("signed: 2026-06-30", Standing.Met)]
    [InlineData("signed: no", Standing.NotMet)]
    [InlineData("pages: 2", Standing.Undetermined)]
    public void Evaluation_Signature_IsNeeded(string signature, Standing expected)
    {
        var findings = Evaluation($"date: 2026-05-20, author: physician, in_person: yes, telehealth: no, {signature}").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(expected);
    }

    [Theory]
    [InlineData("in_person: no, telehealth: yes", "2026-05-20", Standing.Undetermined, "x-13")]
    [InlineData("in_person: no, telehealth: yes", "2026-06-03", Standing.Undetermined, "x-13 same-day")]
    [InlineData("in_person: no, telehealth: yes", "2026-06-04", Standing.NotMet, "")]
    [InlineData("in_person: no, telehealth: no", "2026-05-20", Standing.NotMet, "")]
    [InlineData("telehealth: no", "2026-05-20", Standing.Undetermined, "")]
    public void Evaluation_ByTelehealth_IsLeftToAPerson(string form, string date, Standing expected, string questions)
    {
        var findings = Evaluation($"date: {date}, author: physician, signed: yes, {form}").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(expected);
        string.Join(' ', findings.Questions("pap.evaluation-before-test")).ShouldBe(questions);
    }

    [Fact]
    public void Evaluation_ByTelehealthBesideOneInPerson_PutsNoQuestion()
    {
        var findings = CaseText.Complete.Document("id: call, kind: clinical evaluation, date: 2026-05-25, author: physician, in_person: no, telehealth: yes, signed: yes").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(Standing.Met);
    }

    [Fact]
    public void Evaluation_ByTelehealthOnTheSameDay_NeedsBothDecisions()
    {
        var text = Evaluation("date: 2026-06-03, author: physician, in_person: no, telehealth: yes, signed: yes");
        var telehealth = new Overlay("medicare-pap", "answer: x-13, of: pap.evaluation-before-test, as: met");
        var sameDay = new Overlay("medicare-pap", "answer: same-day, of: pap.evaluation-before-test, as: met");

        text.Assess(telehealth).Of("pap.evaluation-before-test").ShouldBe(Standing.Undetermined);
        text.Assess(sameDay).Of("pap.evaluation-before-test").ShouldBe(Standing.Undetermined);
        text.Assess(telehealth, sameDay).Of("pap.evaluation-before-test").ShouldBe(Standing.Met);
    }

    // A document that is not listed is unknown until somebody says that there is no other.
    [Fact]
    public void Evaluation_NotListed_IsMissingForCertainOnlyOnAClosedList()
    {
        WithoutEvaluation.Assess().Of("pap.evaluation-before-test").ShouldBe(Standing.NotMet);

        var open = WithoutEvaluation.Open().Assess();
        open.Of("pap.evaluation-before-test").ShouldBe(Standing.Undetermined);
        open["pap.evaluation-before-test"].Missing.First().Ask.ShouldStartWith("Please send the signed note of an in-person visit");
    }

    [Fact]
    public void Evaluation_OnASuppliersForm_DoesNotCount()
    {
        var findings = WithoutEvaluation.Document("id: form, kind: supplier form, date: 2026-05-20, author: physician, in_person: yes, signed: yes").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(Standing.NotMet);
    }

    [Fact]
    public void Evaluation_WithoutTheDateOfTheNight_AsksForIt()
    {
        var findings = CaseText.Complete.Without("nights.date").Assess();

        findings.Of("pap.evaluation-before-test").ShouldBe(Standing.Undetermined);
        findings.Missing("pap.evaluation-before-test").ShouldContain("night.date");
    }

    // Source: A52467, initial evaluation: expected content.
    [Theory]
    [InlineData("symptoms")]
    [InlineData("sleepiness_scale")]
    [InlineData("exam")]
    [InlineData("neck")]
    [InlineData("bmi")]
    public void EvaluationContent_EachItem_IsLookedForAndGatesNothing(string item)
    {
        string[] items = ["symptoms", "sleepiness_scale", "exam", "neck", "bmi"];
        var content = string.Join(", ", items.Select(known => $"records_{known}: {(known == item ? "no" : "yes")}"));

        var findings = Evaluation($"date: 2026-05-20, author: physician, in_person: yes, telehealth: no, signed: yes, {content}").Assess();

        findings.Of("pap.evaluation-content").ShouldBe(Standing.NotMet);
        findings.Of("pap.initial-coverage").ShouldBe(Standing.Met);
    }

    [Theory]
    [InlineData("intake.neck")]
    [InlineData("intake.epworth_total")]
    public void EvaluationContent_WithoutTheFigureItself_IsOpen(string place)
    {
        var findings = CaseText.Complete.Without(place).Assess();

        findings.Of("pap.evaluation-content").ShouldBe(Standing.Undetermined);
    }

    // Source: NCD 240.4 B.4 and L33718: ordered beforehand by the treating practitioner.
    [Theory]
    [InlineData("2026-06-02", "physician", Standing.Met)]
    [InlineData("2026-06-03", "physician", Standing.Undetermined)]
    [InlineData("2026-06-04", "physician", Standing.NotMet)]
    [InlineData("unknown", "physician", Standing.Undetermined)]
    [InlineData("2026-06-02", "nurse practitioner", Standing.Met)]
    [InlineData("2026-06-02", "physician assistant", Standing.Met)]
    [InlineData("2026-06-02", "clinical nurse specialist", Standing.Met)]
    [InlineData("2026-06-02", "dentist", Standing.NotMet)]
    [InlineData("2026-06-02", "supplier", Standing.NotMet)]
    public void TestOrder_AroundTheNight_MustComeBefore(string date, string author, Standing expected)
    {
        var findings = WithoutOrder.Document($"id: order, kind: test order, date: {date}, author: {author}").Assess();

        findings.Of("pap.test-order").ShouldBe(expected);
        findings.Questions("pap.test-order").ShouldBe(date == "2026-06-03" ? ["same-day"] : []);
    }

    // Source: A55426, records and their timing; the night is that of 2026-06-03.
    [Theory]
    [InlineData("date: 2026-06-02, signed: yes", Standing.NotMet)]
    [InlineData("date: 2026-06-03, signed: yes", Standing.Met)]
    [InlineData("date: 2026-06-04, signed: yes", Standing.Met)]
    [InlineData("date: 2026-06-04, signed: 2026-06-08", Standing.Met)]
    [InlineData("date: 2026-06-04, signed: no", Standing.NotMet)]
    [InlineData("date: 2026-06-04", Standing.Undetermined)]
    [InlineData("signed: yes", Standing.Undetermined)]
    public void TestReport_AroundTheNight_IsSignedAndOfThatNightOrLater(string report, Standing expected)
    {
        var findings = CaseText.Complete.WithoutDocuments("sleep test report").Document($"id: report, kind: sleep test report, {report}").Assess();

        findings.Of("pap.test-report").ShouldBe(expected);
    }

    // Source: NCD 240.4.1 A and B.1-4.
    [Theory]
    [InlineData("type II", "[eeg, eog, chin_emg, ecg, airflow, thoracic_effort, oximetry]", Standing.Met)]
    [InlineData("type I", "[eeg, eog, chin_emg, heart_rate, thermal_airflow, abdominal_effort, oximetry]", Standing.Met)]
    [InlineData("type III", "[airflow, thoracic_effort, heart_rate, oximetry]", Standing.Met)]
    [InlineData("type III", "[thoracic_effort, abdominal_effort, heart_rate, oximetry]", Standing.Met)]
    [InlineData("type III", "[thoracic_effort, abdominal_effort, ecg, oximetry]", Standing.Met)]
    [InlineData("type III", "[thoracic_effort, abdominal_effort, oximetry]", Standing.NotMet)]
    [InlineData("type III", "[thoracic_effort, abdominal_effort, heart_rate]", Standing.NotMet)]
    [InlineData("type III", "[thoracic_effort, heart_rate, oximetry]", Standing.NotMet)]
    [InlineData("type IV", "[airflow, oximetry, snore]", Standing.Met)]
    [InlineData("type IV", "[nasal_pressure, oximetry, thoracic_effort]", Standing.Met)]
    [InlineData("type IV", "[airflow, oximetry]", Standing.NotMet)]
    [InlineData("type IV", "[airflow, nasal_pressure, oximetry]", Standing.NotMet)]
    [InlineData("type IV", "[oximetry, heart_rate, position]", Standing.NotMet)]
    [InlineData("PAT set", "[pat, oximetry, actigraphy]", Standing.Met)]
    [InlineData("PAT set", "[pat, oximetry]", Standing.NotMet)]
    [InlineData("PAT set", "[pat, actigraphy]", Standing.NotMet)]
    [InlineData("type III", null, Standing.Undetermined)]
    public void CoveredTest_EachSetOfChannels_IsJudgedByTheChannels(string recorder, string? channels, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.recorder", recorder).With("nights.channels", channels).Assess();

        findings.Of("pap.covered-test").ShouldBe(expected);
    }

    // Source: A52467: no part by an equipment supplier; certified hospitals and laboratory tests excepted.
    [Theory]
    [InlineData("no", "no", "type III", Standing.Met)]
    [InlineData("no", null, "type III", Standing.Met)]
    [InlineData("yes", "no", "type III", Standing.NotMet)]
    [InlineData("yes", "yes", "type III", Standing.Met)]
    [InlineData("yes", "no", "type I", Standing.Met)]
    [InlineData("yes", null, "type III", Standing.Undetermined)]
    [InlineData(null, "no", "type III", Standing.Undetermined)]
    public void SupplierPart_InAHomeTest_RulesItOut(string? handled, string? hospital, string recorder, Standing expected)
    {
        var findings = CaseText.Complete.With("nights.supplier_handled_test", handled).With("nights.supplier_is_certified_hospital", hospital)
            .With("nights.recorder", recorder).Assess();

        findings.Of("pap.no-supplier-part").ShouldBe(expected);
    }

    // Source: L33718 I.C.
    [Fact]
    public void Instruction_NotOnFile_IsMissingOnAClosedListOnly()
    {
        var without = CaseText.Complete.WithoutDocuments("instruction record");

        without.Assess().Of("pap.instruction").ShouldBe(Standing.NotMet);
        without.Open().Assess().Of("pap.instruction").ShouldBe(Standing.Undetermined);
    }

    // Source: NCD 240.4 B.2: before the first use. The instruction record is of 2026-06-20.
    [Theory]
    [InlineData("[{ id: trial, kind: PAP, start: 2026-06-21 }]", Standing.Met)]
    [InlineData("[{ id: trial, kind: PAP, start: 2026-06-20 }]", Standing.Met)]
    [InlineData("[{ id: trial, kind: PAP, start: 2026-06-19 }]", Standing.NotMet)]
    [InlineData("[{ id: trial, kind: PAP }]", Standing.Undetermined)]
    [InlineData("[{ others: no, reviewed_by: billing staff }]", Standing.NotApplicable)]
    [InlineData(null, Standing.Undetermined)]
    public void InstructionBeforeUse_AroundTheStart_ReachesToItsDate(string? therapy, Standing expected)
    {
        var findings = CaseText.Complete.With("therapy", therapy).Assess();

        findings.Of("pap.instruction-before-use").ShouldBe(expected);
    }

    // Source: L33718 I.A-C and sleep tests: any one that is missing denies the claim.
    [Theory]
    [InlineData("nights.device_cleared", "no", Standing.NotMet)]
    [InlineData("nights.device_cleared", null, Standing.Undetermined)]
    [InlineData("nights.local_test_policy_met", "no", Standing.NotMet)]
    [InlineData("nights.local_test_policy_met", null, Standing.Undetermined)]
    [InlineData("nights.test_provider_qualifies", "no", Standing.NotMet)]
    [InlineData("nights.test_provider_qualifies", null, Standing.Undetermined)]
    [InlineData("nights.supplier_handled_test", "yes", Standing.NotMet)]
    [InlineData("nights.channels", "[oximetry]", Standing.NotMet)]
    [InlineData("nights.pap_used", "yes", Standing.NotMet)]
    [InlineData("nights.date", "2026-05-20", Standing.NotMet)]
    public void InitialCoverage_EachCondition_IsNeeded(string place, string? value, Standing expected)
    {
        var findings = CaseText.Complete.With(place, value)
            .WithoutDocuments("test order").Document("id: order, kind: test order, date: 2026-05-19, author: physician")
            .WithoutDocuments("clinical evaluation")
            .Document($"id: note, kind: clinical evaluation, date: {(place == "nights.date" ? "2026-05-21" : "2026-05-19")}, author: physician, in_person: yes, telehealth: no, signed: yes")
            .Assess();

        findings.Of("pap.initial-coverage").ShouldBe(expected);
    }

    [Theory]
    [InlineData("clinical evaluation")]
    [InlineData("test order")]
    [InlineData("sleep test report")]
    [InlineData("instruction record")]
    public void InitialCoverage_EachDocument_IsNeeded(string kind)
    {
        CaseText.Complete.WithoutDocuments(kind).Assess().Of("pap.initial-coverage").ShouldBe(Standing.NotMet);
        CaseText.Complete.WithoutDocuments(kind).Open().Assess().Of("pap.initial-coverage").ShouldBe(Standing.Undetermined);
    }

    private static CaseText Evaluation(string entry) => WithoutEvaluation.Document($"id: note, kind: clinical evaluation, {entry}");
}

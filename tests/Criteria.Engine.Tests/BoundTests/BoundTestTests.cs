using Criteria.Core.BoundTests;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine.BoundTests;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.BoundTests;

/// <summary>Reading tests that stand beside a ruleset, running them, and finding what they leave out.</summary>
public sealed class BoundTestTests
{
    private static readonly SourceFile[] Beginnings = [.. ShippedRules.Files().Where(file => file.Name.Contains("/cases/", StringComparison.Ordinal))];

    [Theory]
    [InlineData("criterion: epworth.excessive\n    with: { intake.epworth_total: 11 }\n    is: met")]
    [InlineData("criterion: epworth.excessive\n    vary: intake.epworth_total\n    rows: { 10: not met, 11: met, unknown: undetermined, nothing: undetermined }")]
    [InlineData("expect: { severity.rei-4: moderate, severity.rei-3: moderate }")]
    [InlineData("with: { indices.rei_4: 31 }\n    expect: { severity.rei-4: severe }")]
    [InlineData("with: { indices.rei_4: { per_hour: 4.9, events: 34, over: 6 h 55 min } }\n    expect: { severity.rei-4: below 5 }")]
    [InlineData("with: { indices.rei_4: nothing }\n    expect: { severity.rei-4: undetermined, severity.rei-3: moderate }")]
    [InlineData("with: { nights.channels.nasal_pressure: no }\n    criterion: hsat.sensors\n    is: undetermined\n    question: airflow-sensor")]
    [InlineData("with: { documents.visit-note.signed: no }\n    expect: { pap.evaluation-before-test: not met }")]
    [InlineData("with: { documents.visit-note: nothing }\n    expect: { pap.evaluation-before-test: not met }")]
    [InlineData("with: { documents.visit-note: nothing, documents.closed: no }\n    expect: { pap.evaluation-before-test: undetermined }")]
    [InlineData("with: { documents.extra: { kind: clinical evaluation, date: 2026-05-01 }, documents.closed: yes }\n    expect: { pap.evaluation-before-test: met }")]
    public void Run_OfATest_EditsTheCaseAsItSays(string test) => RunOf(test).Failures.ShouldBeEmpty();

    [Fact]
    public void Run_OfAWrongExpectation_SaysWhatWasFoundAndWhere()
    {
        var run = RunOf("criterion: epworth.excessive\n    name: at the limit\n    with: { intake.epworth_total: 10 }\n    is: met");

        run.Failures.Single().ToString().ShouldBe("t.tests.yaml:7:9: epworth.excessive (at the limit): expected met, found not met");
    }

    [Fact]
    public void Run_OfAnUnaskedQuestion_Fails() =>
        RunOf("criterion: hsat.sensors\n    is: met\n    question: airflow-sensor").Failures.Count.ShouldBe(1);

    [Fact]
    public void Gaps_OfOneSidedTests_NameTheMissingSides()
    {
        var run = RunOf("criterion: epworth.excessive\n    with: { intake.epworth_total: 11 }\n    is: met");

        run.Gaps("sleep-apnea-screening", []).Where(gap => gap.Criterion.Id == "epworth.excessive").Select(gap => gap.What)
            .ShouldBe(["Epworth total > 10: never not met", "Epworth total > 10: never unknown", "epworth_total 10: never below", "epworth_total 10: never on"]);
    }

    [Fact]
    public void Gaps_OfWholeTests_AreNone()
    {
        var run = RunOf("criterion: epworth.excessive\n    vary: intake.epworth_total\n    rows: { 9: not met, 10: not met, 11: met, unknown: undetermined }");

        run.Gaps("sleep-apnea-screening", []).Where(gap => gap.Criterion.Id == "epworth.excessive").ShouldBeEmpty();
    }

    [Theory]
    [InlineData("criterion: epworth.exessive\n    is: met", "did you mean `epworth.excessive`?")]
    [InlineData("criterion: epworth.excessive\n    is: mett", "did you mean `met`?")]
    [InlineData("criterion: epworth.excessive\n    if: met", "did you mean `is`?")]
    [InlineData("criterion: epworth.excessive", "`is`")]
    [InlineData("with: { intake.epworth: 3 }\n    expect: { epworth.excessive: met }", "`epworth`")]
    [InlineData("with: { indices.rei_5: 3 }\n    expect: { epworth.excessive: met }", "did you mean `rei_")]
    [InlineData("with: { intake.epworth_total: 99 }\n    expect: { epworth.excessive: met }", "99")]
    public void Read_OfAFaultyTest_IsRefusedWithAWayOut(string test, string said)
    {
        var reading = Read(test);

        reading.Problems.ShouldContain(problem => problem.Severity == Severity.Error && problem.ToString().Contains(said, StringComparison.Ordinal));
    }

    private static BoundTestReading Read(string test) => BoundTestReader.Read(
        [.. Beginnings, Rules.File("t.tests.yaml", $"tests_of: sleep-apnea-screening\nbegin_with: ordinary\ntests:\n  - {test}\n")], Rules.Library);

    private static BoundTestRun RunOf(string test)
    {
        var reading = Read(test);
        reading.Problems.ShouldBeEmpty();
        return BoundTestRun.Of(Rules.Library, reading.Tests);
    }
}

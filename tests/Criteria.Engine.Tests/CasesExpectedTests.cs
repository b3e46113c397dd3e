using System.Text.Json;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests;

/// <summary>Interpreted and compiled rules are two ways to the same findings; each checks the other.</summary>
public sealed class CasesExpectedTests
{
    private static readonly RulesetLibrary Library = Rules.Library;

    public static TheoryData<string> Examples() => [.. ExampleCases.Names];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Assess_ForOneCaseOrForMany_GivesTheSameFindings(string example)
    {
        var subject = ExampleCases.Read(example);
        var date = subject.RulesDate!.Value;

        var interpreted = new Assessor(Library, CasesExpected.One).Assess(subject, date);
        var compiled = new Assessor(Library, CasesExpected.Many).Assess(subject, date);

        Written(interpreted).ShouldBe(Written(compiled));
    }

    [Fact]
    public void Update_OfAnInterpretedAssessment_EvaluatesTheSameCriteria()
    {
        var subject = ExampleCases.Read("mild-with-hypertension/case.yaml");
        var change = Core.Facts.Fact.Absent(Library.Vocabulary.Find("hypertension")!);
        var interpreted = new Assessor(Library, CasesExpected.One).Open(subject, subject.RulesDate!.Value);
        var compiled = new Assessor(Library).Open(subject, subject.RulesDate!.Value);

        interpreted.Update(change);
        compiled.Update(change);

        interpreted.Evaluated.ShouldBe(compiled.Evaluated);
        Written(interpreted.Assessment).ShouldBe(Written(compiled.Assessment));
    }

    // Everything a finding says, its whole trace included; the criteria themselves are the same objects.
    private static string Written(Assessment assessment) => string.Join('\n', assessment.Findings.Select(finding => JsonSerializer.Serialize(new
    {
        finding.Id,
        finding.Night,
        finding.Standing,
        finding.Value?.Text,
        finding.Because,
        finding.Residual,
        Missing = finding.Missing.Select(missing => missing.ToString()),
        finding.Cautions,
        finding.ReadFirst,
        finding.Option,
        Silent = finding.Silent.Select(question => question.Id),
        DecidedLocally = finding.DecidedLocally.Select(question => question.Id),
    })));
}

using System.Text.Json;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Tests;

/// <summary>Interpreted and compiled rules are two ways to the same findings; each checks the other.</summary>
public sealed class CasesExpectedTests
{
    private static readonly RulesetLibrary Library = RulesetLibrary.Load(ShippedRules.Files()).Library!;

    public static TheoryData<string> Examples() => [.. Directory.EnumerateFiles(ExampleFolder(), "case.*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(ExampleFolder(), file).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Assess_ForOneCaseOrForMany_GivesTheSameFindings(string example)
    {
        var reading = new CaseReader(Library.Vocabulary).Read(new SourceFile(example, File.ReadAllBytes(Path.Combine(ExampleFolder(), example))));
        var date = reading.Case!.RulesDate!.Value;

        var interpreted = new Assessor(Library, CasesExpected.One).Assess(reading.Case, date);
        var compiled = new Assessor(Library, CasesExpected.Many).Assess(reading.Case, date);

        Written(interpreted).ShouldBe(Written(compiled));
    }

    [Fact]
    public void Update_OfAnInterpretedAssessment_EvaluatesTheSameCriteria()
    {
        var example = Path.Combine(ExampleFolder(), "mild-with-hypertension", "case.yaml");
        var subject = new CaseReader(Library.Vocabulary).Read(new SourceFile(example, File.ReadAllBytes(example))).Case!;
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

    private static string ExampleFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Criteria.sln")))
        {
            folder = folder.Parent!;
        }

        return Path.Combine(folder.FullName, "examples");
    }
}

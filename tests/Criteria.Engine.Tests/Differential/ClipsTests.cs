using System.Globalization;
using System.Text;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine.Plans;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Differential;

/// <summary>
/// Derives the standings of random cases a second time, in another rule language and from the published criteria rather than
/// from our rulesets, and compares.
/// </summary>
public sealed class ClipsTests
{
    private const int Seed = 20_260_618;
    private const int Shipped = 20;
    private const int ToSeeBoth = 3000;

    // More cases than the shipped ones: CRITERIA_DIFFERENTIAL_CASES=2000.
    private static readonly int Cases =
        int.TryParse(Environment.GetEnvironmentVariable("CRITERIA_DIFFERENTIAL_CASES"), CultureInfo.InvariantCulture, out var more) ? more : Shipped;

    public static TheoryData<string> Covered() => [.. CoveredRulesets.Ids];

    [ClipsTheory]
    [MemberData(nameof(Covered))]
    public void Standings_OfRandomCases_AreThoseOfASecondDerivation(string ruleset)
    {
        ClipsProgram.Path.ShouldNotBeNull("the program `clips` is not installed, and this machine may not skip what needs it");
        var maker = new CaseMaker(ruleset, Seed);
        var cases = Enumerable.Range(1, Cases).Select(maker.Next).ToArray();
        var batch = new StringBuilder();
        foreach (var file in new[] { "logic", "medicare" }.Concat(maker.RestsOn).Select(CoveredRulesets.RulesFile))
        {
            batch.Append(CultureInfo.InvariantCulture, $"(load* \"{file}\")\n");
        }

        // CLIPS has Kleene logic from us and nothing more: what every completion agrees on is settled here only.
        var plan = Plan.WithoutSettling(maker.Rules);
        var ours = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (subject, number) in cases.Select((subject, index) => (subject, index + 1)))
        {
            ClipsFacts.Write(batch, subject, maker.Stated);
            var findings = Rules.Assessor.Assess(subject, Rules.Date).Findings.ToLookup(finding => finding.Id);
            var sheet = plan.Run(subject);
            foreach (var criterion in maker.Criteria.Where(criterion => !CoveredRulesets.LeftOut.ContainsKey(criterion.Id) && findings.Contains(criterion.Id)))
            {
                batch.Append(CultureInfo.InvariantCulture, $"(answer {number} {criterion.Id})\n");
                ours.Add($"= {number} {criterion.Id}", Says(criterion, sheet[criterion.Index]));
            }
        }

        if (Environment.GetEnvironmentVariable("CRITERIA_DIFFERENTIAL_KEEP") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, $"{ruleset}.bat"), batch.ToString());
            File.WriteAllLines(Path.Combine(folder, $"{ruleset}.here"), ours.Select(entry => $"{entry.Key} {entry.Value}"));
        }

        maker.RestsOn.Select(CoveredRulesets.RulesFile).Where(file => !File.Exists(file)).ShouldBeEmpty("these rules are missing");

        var theirs = ClipsProgram.Run(batch.Append("(exit)\n").ToString());

        var said = theirs.Where(line => line.StartsWith("= ", StringComparison.Ordinal)).Select(line => line.Split(' ', 4))
            .ToDictionary(words => string.Join(' ', words[..3]), words => words[3], StringComparer.Ordinal);
        theirs.Where(line => !line.StartsWith("= ", StringComparison.Ordinal)).Distinct().ShouldBeEmpty();
        string.Join('\n', ours.Where(entry => said.GetValueOrDefault(entry.Key) != entry.Value)
            .Select(entry => $"case {entry.Key[2..]}: here {entry.Value}, there {said.GetValueOrDefault(entry.Key)}"))
            .ShouldBeEmpty();
        said.Count.ShouldBe(ours.Count);
        ours.ShouldNotBeEmpty();
    }

    /// <summary>A comparison in which everything stays open compares nothing.</summary>
    [Theory]
    [MemberData(nameof(Covered))]
    public void RandomCases_OfARuleset_ShowEachCriterionBothWays(string ruleset)
    {
        var maker = new CaseMaker(ruleset, Seed);
        var plan = Plan.WithoutSettling(maker.Rules);
        var seen = new HashSet<(string, string)>();
        for (var number = 1; number <= ToSeeBoth; number++)
        {
            var sheet = plan.Run(maker.Next(number));
            seen.UnionWith(maker.Criteria.Select(criterion => (criterion.Id, Kind(criterion.Body, sheet[criterion.Index]))));
        }

        var wanted = maker.Criteria.Where(criterion => !CoveredRulesets.LeftOut.ContainsKey(criterion.Id))
            .SelectMany(criterion => Wanted(criterion.Body).Select(says => (criterion.Id, says)));

        wanted.Where(pair => !seen.Contains(pair) && !CoveredRulesets.NotSeen.ContainsKey(pair)).ShouldBeEmpty();
        CoveredRulesets.NotSeen.Keys.Where(seen.Contains).ShouldBeEmpty("these are seen after all");
    }

    [Fact]
    public void Rulesets_AreCoveredOrNamedAsNotYetCovered()
    {
        var files = Directory.GetFiles(Path.GetDirectoryName(CoveredRulesets.RulesFile("logic"))!, "*.clp").Select(Path.GetFileNameWithoutExtension).ToArray();
        var rulesets = Rules.Library.Rulesets.Select(ruleset => ruleset.Id).ToHashSet();

        CoveredRulesets.Ids.Except(files!).ShouldBeEmpty();
        CoveredRulesets.NotYet.Intersect(files!).ShouldBeEmpty();
        CoveredRulesets.NotYet.Except(rulesets).ShouldBeEmpty();
        files.Except(["logic", "medicare"]).Except(rulesets!).ShouldBeEmpty();
    }

    private static IEnumerable<string> Wanted(Body body) => body switch
    {
        GradeBody grade => grade.Bands.Select(band => band.Grade),
        ScoreBody { Classes: { IsEmpty: false } classes } => classes.Select(part => part.Name),
        ScoreBody => ["met"],
        _ => ["met", "not met"],
    };

    private static string Kind(Body body, Verdict verdict) => (verdict.Standing, body) switch
    {
        (Standing.Met, GradeBody grade) => grade.Bands[verdict.LowestBand].Grade,
        (Standing.Met, ScoreBody { Classes.IsEmpty: false } score) => score.Classes[verdict.LowestBand].Name,
        _ => verdict.Standing.Words(),
    };

    private static string Says(Criterion criterion, Verdict verdict)
    {
        var kind = Kind(criterion.Body, verdict);

        return verdict.Standing != Standing.NotApplicable && verdict.Points is { } points ? $"{kind} {points}" : kind;
    }
}

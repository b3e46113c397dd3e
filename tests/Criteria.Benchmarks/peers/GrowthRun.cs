using System.Diagnostics;
using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Findings;
using Criteria.Engine.Plans;

namespace Criteria.Benchmarks.Peers;

/// <summary>What more criteria cost the plan and the assessment: made-up rulesets of each size over the same hundred cases.</summary>
internal static class GrowthRun
{
    private const int Cases = 100;

    private static readonly int[] Sizes = [50, 100, 200, 400, 800];

    public static int Run(TextWriter output)
    {
        output.WriteLine("| criteria | making the plan | plan, prepared case | plan, case as read | making the network, first case | assessment with its trace |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (var size in Sizes)
        {
            output.WriteLine(Row(size));
        }

        return 0;
    }

    private static string Row(int size)
    {
        var library = Require.Library(RulesetLibrary.Load(MadeUpRules.Files(size)));
        var rules = library.InForce(NumberedCase.Date, null, null);
        var reader = new CaseReader(library.Vocabulary);
        Case[] cases = [.. Enumerable.Range(0, Cases).Select(number => NumberedCase.Read(reader, number))];

        var clock = Stopwatch.StartNew();
        var plan = new Plan(rules, CasesExpected.Many);
        var making = clock.Elapsed;
        clock.Restart();
        var assessor = new Assessor(library);
        assessor.Assess(cases[0], NumberedCase.Date);
        var first = clock.Elapsed;
        var sheet = plan.NewSheet();
        foreach (var subject in cases)
        {
            plan.Run(sheet, subject);
            Check(sheet, assessor.Assess(subject, NumberedCase.Date), size);
        }

        PreparedCase[] prepared = [.. cases.Select(plan.Prepare)];
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {size} | {making.TotalMilliseconds:0} ms | {Cell(Slices.Time(Cases, 200, () => Array.ForEach(prepared, subject => plan.Run(sheet, subject))))} "
            + $"| {Cell(Slices.Time(Cases, 200, () => Array.ForEach(cases, subject => plan.Run(sheet, subject))))} "
            + $"| {first.TotalMilliseconds:0} ms | {Cell(Slices.Time(1, 100, () => assessor.Assess(cases[7], NumberedCase.Date)))} |");
    }

    private static void Check(VerdictSheet sheet, Assessment assessment, int size)
    {
        if (assessment.Findings.Length != size || assessment.Findings.Any(finding => sheet[finding.Criterion.Index] != finding.Conclusion.Verdict))
        {
            throw new InvalidOperationException($"the plan differs from the assessment of {assessment.Case}");
        }
    }

    private static string Cell(double[] times) => Slices.Text(times.Min()) + ", " + Slices.Text(Slices.Median(times));
}

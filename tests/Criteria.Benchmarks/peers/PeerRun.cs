using System.Diagnostics;
using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Plans;

namespace Criteria.Benchmarks.Peers;

/// <summary>The same fifty criteria over the same thousand cases: by hand, by the plan, with the whole trace, and by general rules engines.</summary>
/// <remarks>
/// Nothing is timed before its answers are those of the function written by hand. Cases are prepared for each in its own form, and each
/// is timed inside its own process after a pass that is not counted; one thread each.
/// </remarks>
internal static class PeerRun
{
    private const int Cases = 1000;
    private const int Repeats = 7;

    private const int TimedSlices = 201;
    private const int UnknownOf20 = 4;

    /// <summary>Runs all; peers that are not installed are named and left out.</summary>
    /// <param name="peers">The folder of the peers; without one only what is of this program is run.</param>
    /// <param name="output">Where the tables go.</param>
    public static int Run(string? peers, TextWriter output)
    {
        var work = Directory.CreateTempSubdirectory("criteria-peers-").FullName;
        try
        {
            Compare(peers, work, complete: true, output);
            Compare(peers, work, complete: false, output);
            return 0;
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }

    private static void Compare(string? peers, string work, bool complete, TextWriter output)
    {
        var cases = MadeUpCase.Row(Cases, complete ? 0 : UnknownOf20);
        var plain = cases.Select(PlainFacts.Of).ToArray();
        var expected = plain.Select(ByHand).ToArray();
        var folder = Directory.CreateDirectory(Path.Combine(work, complete ? "complete" : "unknown")).FullName;
        WriteFiles(folder, cases, complete);

        var rows = new List<(string Name, double[] Times)> { ("a function written by hand", TimeByHand(plain)) };
        rows.AddRange(Ours(cases, expected));
        foreach (var (name, start) in peers is null ? [] : Peers(peers, folder, complete))
        {
            if (Times(name, start, expected) is { } times)
            {
                rows.Add((name, times));
            }
            else
            {
                output.WriteLine($"{name} is not installed; peers/install installs it");
            }
        }

        Print(rows, expected, complete, output);
    }

    private static string ByHand(PlainFacts facts)
    {
        var truths = new int[Workload.Criteria.Length];
        HandWritten.Run(facts, truths);
        return string.Concat(truths.Select(truth => "NUM"[truth]));
    }

    private static double[] TimeByHand(PlainFacts[] plain)
    {
        var truths = new int[Workload.Criteria.Length];
        return Slices.Time(Cases, TimedSlices, () =>
        {
            foreach (var facts in plain)
            {
                HandWritten.Run(facts, truths);
            }
        });
    }

    private static IEnumerable<(string Name, double[] Times)> Ours(MadeUpCase[] made, string[] expected)
    {
        var library = Require.Library(RulesetLibrary.Load(CriteriaText.Files()));
        var rules = library.InForce(NumberedCase.Date, null, null);
        var plan = Plan.WithoutSettling(rules, CasesExpected.Many);
        var settling = new Plan(rules, CasesExpected.Many);
        var assessor = new Assessor(library);
        var (sheet, settled) = (plan.NewSheet(), settling.NewSheet());
        Case[] cases = [.. made.Select(subject => subject.ToCase(library.Vocabulary))];
        var indices = Enumerable.Range(0, Workload.Criteria.Length).Select(i => rules.Find(CriteriaText.Id(i))!.Index).ToArray();
        for (var i = 0; i < cases.Length; i++)
        {
            plan.Run(sheet, cases[i]);
            Same("the plan", i, expected[i], string.Concat(indices.Select(index => Letter(sheet[index].Standing))));
            settling.Run(settled, cases[i]);
            Same("the plan that settles", i, expected[i], Settled(expected[i], string.Concat(indices.Select(index => Letter(settled[index].Standing)))));
            var assessment = assessor.Assess(cases[i], NumberedCase.Date);
            Same("the assessment", i, expected[i], Settled(expected[i], string.Concat(Enumerable.Range(0, indices.Length).Select(each => Letter(assessment.Of(CriteriaText.Id(each)).Single().Standing)))));
        }

        PreparedCase[] prepared = [.. cases.Select(plan.Prepare)];
        yield return ("the plan, prepared cases", Slices.Time(Cases, TimedSlices, () => Array.ForEach(prepared, subject => plan.Run(sheet, subject))));
        yield return ("the plan, cases as they are read", Slices.Time(Cases, TimedSlices, () => Array.ForEach(cases, subject => plan.Run(sheet, subject))));
        yield return ("the plan that settles, cases as they are read", Slices.Time(Cases, Repeats, () => Array.ForEach(cases, subject => settling.Run(settled, subject))));
        yield return ("the assessment, with the whole trace", Slices.Time(Cases, Repeats, () => Array.ForEach(cases, subject => assessor.Assess(subject, NumberedCase.Date))));
    }

    // What every completion agrees on may be settled although three values leave it open. Nothing else may differ.
    private static string Settled(string expected, string found) =>
        string.Concat(expected.Zip(found, (three, settled) => three == 'U' ? 'U' : settled));

    private static char Letter(Standing standing) => standing switch
    {
        Standing.Met => 'M',
        Standing.NotMet => 'N',
        _ => 'U',
    };

    private static IEnumerable<(string Name, ProcessStartInfo Start)> Peers(string peers, string folder, bool complete)
    {
        var kind = complete ? "complete" : "unknown";
        yield return ("CLIPS 6.30", Start("clips", "-f2", Path.Combine(folder, "run.clp")));
        yield return ("RulesEngine 6.0.1", Start("dotnet", Path.Combine(peers, "rules-engine/bin/Release/net10.0/rules-engine.dll"), folder, kind, "100", "400"));
        yield return ("json-rules-engine 7.3.1", Start("node", Path.Combine(peers, "node/json-rules.mjs"), folder, kind, "20", "5"));
        yield return ("zen-engine 0.54.0", Start("node", Path.Combine(peers, "node/zen.mjs"), folder, kind, "100", "20"));
    }

    private static ProcessStartInfo Start(string program, params IEnumerable<string> arguments) =>
        new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };

    private static double[]? Times(string name, ProcessStartInfo start, string[] expected)
    {
        try
        {
            using var process = Process.Start(start)!;
            var complaints = process.StandardError.ReadToEndAsync();
            var lines = process.StandardOutput.ReadToEnd().Split('\n');
            process.WaitForExit();
            var answers = lines.Where(line => line.StartsWith("answers ", StringComparison.Ordinal)).Select(line => line["answers ".Length..].Trim()).ToArray();
            if (answers.Length == 0)
            {
                return Missing(name, complaints.Result + string.Join('\n', lines.TakeLast(20)));
            }

            for (var i = 0; i < expected.Length; i++)
            {
                Same(name, i, expected[i], answers[i]);
            }

            return [.. lines.Where(line => line.StartsWith("time ", StringComparison.Ordinal)).Select(line => double.Parse(line["time ".Length..], CultureInfo.InvariantCulture))];
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    // A program that cannot find its package is not installed; any other complaint is a fault.
    private static double[]? Missing(string name, string complaint) =>
        complaint.Contains("ERR_MODULE_NOT_FOUND", StringComparison.Ordinal) || complaint.Contains("does not exist", StringComparison.Ordinal)
            ? null : throw new InvalidOperationException($"{name}: {complaint}");

    private static void Same(string name, int number, string expected, string found)
    {
        if (expected != found)
        {
            throw new InvalidOperationException($"{name}, case {number}:\n{found} should be\n{expected}");
        }
    }

    private static void WriteFiles(string folder, MadeUpCase[] cases, bool complete)
    {
        Write("rules.clp", ClipsText.Rules(complete));
        Write("cases.clp", ClipsText.Cases(cases, complete, Repeats, passes: 1));
        Write("run.clp", $"(load \"{folder}/rules.clp\")\n(batch* \"{folder}/cases.clp\")\n(exit)\n");
        Write("cases.json", JsonTexts.Cases(cases));
        Write("rules-engine.json", JsonTexts.RulesEngine(complete));
        Write("json-rules.json", JsonTexts.JsonRules(complete));
        Write("zen.json", JsonTexts.Zen(complete));

        void Write(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);
    }

    private static void Print(List<(string Name, double[] Times)> rows, string[] expected, bool complete, TextWriter output)
    {
        var open = expected.Sum(answers => answers.Count(answer => answer == 'U'));
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"\n{Workload.Criteria.Length} criteria, {expected.Length} cases, {(complete ? "everything known" : $"{UnknownOf20 * 5} % of the facts unknown")}, {100.0 * open / (expected.Length * Workload.Criteria.Length):F0} % of the answers undetermined\n"));
        output.WriteLine("| what | least | median | cases a second | times by hand | times the plan |\n| --- | --- | --- | --- | --- | --- |");
        var (hand, plan) = (rows[0].Times.Min(), rows[1].Times.Min());
        foreach (var (name, times) in rows)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {Slices.Text(times.Min())} | {Slices.Text(Slices.Median(times))} | {1e9 / times.Min():N0} | {times.Min() / hand:0.0} | {times.Min() / plan:0.0} |"));
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

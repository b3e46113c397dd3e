using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Rulesets;
using Criteria.Engine;

namespace Criteria.Benchmarks;

/// <summary>Reads and assesses a hundred thousand different cases, and fails when memory grows with their number.</summary>
internal static class MemoryRun
{
    private const double MostGrowth = 1.5;

    private static readonly int[] Marks = [1_000, 10_000, 50_000, 100_000];

    public static int Run(TextWriter output)
    {
        var library = Require.Library(RulesetLibrary.Load(ShippedRules.Files()));
        var reader = new CaseReader(library.Vocabulary);
        var assessor = new Assessor(library);
        var heaps = new Dictionary<int, long>();
        output.WriteLine("   cases   managed heap    working set");
        for (var number = 0; number < Marks[^1]; number++)
        {
            NumberedCase.Check(assessor.Assess(NumberedCase.Read(reader, number), NumberedCase.Date), number);
            if (Array.IndexOf(Marks, number + 1) >= 0)
            {
                heaps[number + 1] = GC.GetTotalMemory(forceFullCollection: true);
                output.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"{number + 1,8} {Megabytes(heaps[number + 1]),11:F1} MB {Megabytes(Environment.WorkingSet),11:F1} MB"));
            }
        }

        var growth = (double)heaps[Marks[^1]] / heaps[Marks[1]];
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"heap at {Marks[^1]} cases is {growth:F2} times that at {Marks[1]}; at most {MostGrowth} allowed"));
        return growth <= MostGrowth ? 0 : 1;
    }

    private static double Megabytes(long bytes) => bytes / 1048576.0;
}

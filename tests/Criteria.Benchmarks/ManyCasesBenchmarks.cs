using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine;

namespace Criteria.Benchmarks;

/// <summary>A thousand different cases in one process, one after the other. Times are of all thousand.</summary>
[MemoryDiagnoser]
public class ManyCasesBenchmarks
{
    private const int Cases = 1000;

    private SourceFile[] _files = null!;
    private Case[] _cases = null!;
    private CaseReader _reader = null!;
    private Assessor _assessor = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var library = Require.Library(RulesetLibrary.Load(ShippedRules.Files()));
        _reader = new CaseReader(library.Vocabulary);
        _assessor = new Assessor(library);
        _files = [.. Enumerable.Range(0, Cases).Select(NumberedCase.File)];
        _cases = [.. Enumerable.Range(0, Cases).Select(number => NumberedCase.Read(_reader, number))];
        for (var number = 0; number < Cases; number++)
        {
            NumberedCase.Check(_assessor.Assess(_cases[number], NumberedCase.Date), number);
        }
    }

    [Benchmark(Baseline = true)]
    public int Assess() => _cases.Sum(subject => _assessor.Assess(subject, NumberedCase.Date).Findings.Length);

    [Benchmark]
    public int ReadAndAssess() => _files.Sum(file => _assessor.Assess(_reader.Read(file).Case!, NumberedCase.Date).Findings.Length);
}

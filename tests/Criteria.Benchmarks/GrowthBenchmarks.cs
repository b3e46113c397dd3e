using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>What more criteria cost: a made-up ruleset of each size is loaded, compiled, and assesses one case.</summary>
[MemoryDiagnoser]
public class GrowthBenchmarks
{
    private SourceFile[] _files = null!;
    private RulesetLibrary _library = null!;
    private Assessor _assessor = null!;
    private Case _case = null!;

    [Params(50, 100, 200, 400, 800)]
    public int Criteria { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _files = MadeUpRules.Files(Criteria);
        _library = Load();
        _assessor = new Assessor(_library);
        _case = NumberedCase.Read(new CaseReader(_library.Vocabulary), 1);
        var assessment = Assess();
        Require.Finding(assessment, MadeUpRules.LastMet(Criteria), Standing.Met);
        if (assessment.Findings.Length != Criteria)
        {
            throw new InvalidOperationException($"{assessment.Findings.Length} findings of {Criteria} criteria");
        }
    }

    [Benchmark]
    public RulesetLibrary Load() => Require.Library(RulesetLibrary.Load(_files));

    [Benchmark]
    public Assessment CompileAndAssess() => new Assessor(_library).Assess(_case, NumberedCase.Date);

    [Benchmark]
    public Assessment Assess() => _assessor.Assess(_case, NumberedCase.Date);
}

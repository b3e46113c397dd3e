using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>What comes before the first answer: reading the shipped rules, and making a network of them.</summary>
[MemoryDiagnoser]
public class StartBenchmarks
{
    private ImmutableArray<SourceFile> _files;
    private RulesetLibrary _library = null!;
    private Case _case = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _files = ShippedRules.Files();
        _library = Load();
        _case = NumberedCase.Read(new CaseReader(_library.Vocabulary), 1);
        NumberedCase.Check(CompileAndAssess(), 1);
        NumberedCase.Check(InterpretAndAssess(), 1);
        NumberedCase.Check(LoadCompileAndAssess(), 1);
    }

    [Benchmark]
    public RulesetLibrary Load() => Require.Library(RulesetLibrary.Load(_files));

    [Benchmark]
    public Assessment CompileAndAssess() => new Assessor(_library).Assess(_case, NumberedCase.Date);

    [Benchmark]
    public Assessment InterpretAndAssess() => new Assessor(_library, CasesExpected.One).Assess(_case, NumberedCase.Date);

    [Benchmark]
    public Assessment LoadCompileAndAssess()
    {
        var library = Load();
        return new Assessor(library).Assess(NumberedCase.Read(new CaseReader(library.Vocabulary), 1), NumberedCase.Date);
    }
}

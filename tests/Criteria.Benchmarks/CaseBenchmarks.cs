using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Engine;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>One case under the shipped rules, when everything is compiled: reading, assessing with the whole trace, following a change.</summary>
[MemoryDiagnoser]
public class CaseBenchmarks
{
    private SourceFile _file = null!;
    private CaseReader _reader = null!;
    private Assessor _assessor = null!;
    private Case _case = null!;
    private LiveAssessment _live = null!;
    private Assessment _assessment = null!;
    private Fact[] _epworth = null!;
    private int _next;

    [GlobalSetup]
    public void Prepare()
    {
        var library = Require.Library(RulesetLibrary.Load(ShippedRules.Files()));
        _file = NumberedCase.File(1);
        _reader = new CaseReader(library.Vocabulary);
        _case = NumberedCase.Read(_reader, 1);
        _assessor = new Assessor(library);
        _live = _assessor.Open(_case, NumberedCase.Date);
        var epworth = library.Vocabulary.Find("epworth_total")!;
        _epworth = [Points(epworth, 5), Points(epworth, 20)];

        _assessment = Assess();
        NumberedCase.Check(_assessment, 1);
        if (Outlook().Of("severity.rei-4", _case.Nights[0].Label).All(pair => pair.Change.Fact != "rei_4.events"))
        {
            throw new InvalidOperationException("no number of events changes the grade");
        }

        Require.Finding(Update(), "epworth.excessive", Standing.NotMet);
        Require.Finding(Update(), "epworth.excessive", Standing.Met);
    }

    [Benchmark]
    public CaseReading ReadCase() => _reader.Read(_file);

    [Benchmark(Baseline = true)]
    public Assessment Assess() => _assessor.Assess(_case, NumberedCase.Date);

    [Benchmark]
    public Assessment Update()
    {
        _live.Update(_epworth[_next]);
        _next = 1 - _next;
        return _live.Assessment;
    }

    [Benchmark]
    public Outlook Outlook() => _assessor.OutlookOf(_case, _assessment);

    private static Fact Points(FactDefinition definition, int points) =>
        Fact.Known(definition, new NumberValue(Interval.Exactly(points)), Provenance.Entered);
}

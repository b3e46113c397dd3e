using System.Reflection;
using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents;
using Criteria.Documents.Renderers;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>The documents of the sample case as PDF, from the template to the bytes: a page, and one of every document.</summary>
[MemoryDiagnoser]
public class PdfSetBenchmarks
{
    private static readonly string?[] Recipients = [null, "dentist", "orderer", "laboratory", "payer"];

    private DocumentTemplates _templates = null!;
    private Case _case = null!;
    private Assessment _assessment = null!;
    private DocumentOrder[] _orders = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var library = Require.Library(RulesetLibrary.Load(ShippedRules.Files()));
        _templates = DocumentTemplates.Load(library).Templates ?? throw new InvalidOperationException("the templates do not load");
        _case = new CaseReader(library.Vocabulary).Read(Sample()).Case ?? throw new InvalidOperationException("the sample case does not read");
        _assessment = new Assessor(library).Assess(_case, _case.RulesDate!.Value);
        var writer = new DocumentWriter(_templates, _case, _assessment);
        _orders = [.. _templates.Documents.Select(document => Recipients.Select(to => new DocumentOrder(document.Name, to)).First(order => writer.Write(order).Page is not null))];
        if (!Page().AsSpan().StartsWith("%PDF-"u8))
        {
            throw new InvalidOperationException("no PDF is written");
        }
    }

    [Benchmark(Baseline = true)]
    public byte[] Page() => Pdf(_orders.Single(order => order.Name == "request-sheet"));

    [Benchmark]
    public int WholeSet() => _orders.Sum(order => Pdf(order).Length);

    private byte[] Pdf(DocumentOrder order) => DocumentFormats.Render(new DocumentWriter(_templates, _case, _assessment).Write(order).Page!, "pdf").ToArray();

    private static SourceFile Sample()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("sample.yaml")!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return new SourceFile("case.yaml", bytes.ToArray());
    }
}

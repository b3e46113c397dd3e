using System.Text;
using BenchmarkDotNet.Attributes;
using Criteria.Core.Cases;
using Criteria.Core.Rulesets;
using Criteria.Documents;
using Criteria.Documents.Renderers;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>The documents of one assessed case, when the templates are loaded: one page, and every document that needs no recipient in every format.</summary>
[MemoryDiagnoser]
public class DocumentBenchmarks
{
    private DocumentTemplates _templates = null!;
    private Case _case = null!;
    private Assessment _assessment = null!;
    private string[] _names = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var library = Require.Library(RulesetLibrary.Load(ShippedRules.Files()));
        _templates = DocumentTemplates.Load(library).Templates ?? throw new InvalidOperationException("the templates do not load");
        _case = NumberedCase.Read(new CaseReader(library.Vocabulary), 1);
        _assessment = new Assessor(library).Assess(_case, NumberedCase.Date);
        var writer = new DocumentWriter(_templates, _case, _assessment);
        _names = [.. _templates.Documents.Select(document => document.Name).Where(name => writer.Write(new DocumentOrder(name)).Page is not null)];
        if (!_names.Contains("impression") || !Encoding.UTF8.GetString(DocumentFormats.Render(Impression(), "text").Span).StartsWith("CASE ", StringComparison.Ordinal))
        {
            throw new InvalidOperationException("the impression is not written");
        }
    }

    [Benchmark(Baseline = true)]
    public DocumentPage Impression() => new DocumentWriter(_templates, _case, _assessment).Write(new DocumentOrder("impression")).Page!;

    [Benchmark]
    public int WholeSetInEveryFormat()
    {
        var writer = new DocumentWriter(_templates, _case, _assessment);
        return _names.Select(name => writer.Write(new DocumentOrder(name)).Page!).Sum(page => DocumentFormats.All.Sum(format => DocumentFormats.Render(page, format).Length));
    }
}

using System.Text;
using BenchmarkDotNet.Attributes;
using Criteria.Documents;
using Criteria.Documents.Renderers;

namespace Criteria.Benchmarks;

/// <summary>A document of one page in each output format, from Markdown to the file.</summary>
[MemoryDiagnoser]
public class RendererBenchmarks
{
    private const string Markdown = """
        Clinical draft for a licensed clinician. Options, not orders.

        ## Night of 3 June 2026

        **Mild** by REI, 4 % rule: 14.6/h, 101 events in 6 h 55 min.[^1] **Moderate** by REI, 3 % rule: 21.3/h, 147 events.[^2]

        | Line | Standing | What to ask for |
        |:--|:--|:--|
        | Qualifying sleep test[^1] | undetermined | Ask the contractor which of the two routes applies. |
        | Evaluation before the test[^2] | met | Nothing. |

        ## Why: the reasons behind the marks

        [^1]: **Grade by REI, 4 % rule**. Met: mild.

            - Facts: 101 events in 6 h 55 min.
            - Sources: a published manual, its section on scoring (read).
        [^2]: **Grade by REI, 3 % rule**. Met: moderate.
        """;

    private static readonly DocumentPage Page = new()
    {
        Name = "impression",
        Title = "Impression",
        CaseKey = "HT-0412",
        Study = "night of 3 June 2026",
        Rulesets = ["osa-severity 2026.1"],
        State = DocumentState.Draft,
        StateWords = "DRAFT, not signed",
        Markdown = Markdown,
        Date = new DateOnly(2026, 6, 18),
        Id = new string('0', 32),
        Program = "Criteria",
    };

    [Params("text", "html", "pdf", "docx")]
    public string Format { get; set; } = "";

    [GlobalSetup]
    public void Check()
    {
        var start = Encoding.Latin1.GetString(Render().Span[..2]);
        if (start != Format switch { "text" => "CA", "html" => "<!", "pdf" => "%P", _ => "PK" })
        {
            throw new InvalidOperationException($"not a file of the format {Format}");
        }
    }

    [Benchmark]
    public ReadOnlyMemory<byte> Render() => DocumentFormats.Render(Page, Format);
}

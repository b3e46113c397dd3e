namespace Criteria.Documents.Renderers;

/// <summary>The style that every HTML document carries in itself. Black on white; no meaning by colour.</summary>
internal static class HtmlStyle
{
    /// <summary>The style sheet; PAPER stands for the paper.</summary>
    public const string Text = """
        @page { size: PAPER; margin: 18mm 16mm; }
        html { font-family: "Liberation Sans", Arial, Helvetica, sans-serif; font-size: 100%; line-height: 1.45; color: #000; background: #fff; }
        body { max-width: 46rem; margin: 1.5rem auto; padding: 0 1rem; }
        header p { display: flex; flex-wrap: wrap; gap: 0.25rem 1.5rem; margin: 0 0 1.5rem; padding-bottom: 0.4rem; border-bottom: 2px solid #000; }
        header strong { margin-left: auto; }
        h1 { font-size: 1.5rem; margin: 0 0 1rem; }
        h2 { font-size: 1.15rem; margin: 1.6rem 0 0.5rem; border-bottom: 1px solid #000; break-after: avoid; }
        h3, h4 { font-size: 1rem; margin: 1.1rem 0 0.3rem; break-after: avoid; }
        p, ul, ol { margin: 0.4rem 0; }
        li { margin: 0.2rem 0; }
        table { border-collapse: collapse; width: 100%; margin: 0.6rem 0; }
        th, td { border: 1px solid #000; padding: 0.3rem 0.5rem; text-align: left; vertical-align: top; }
        thead { display: table-header-group; }
        tr { break-inside: avoid; }
        tbody th { font-weight: 600; }
        sup a { color: #000; }
        figure { margin: 0.8rem 0; break-inside: avoid; }
        figure svg { max-width: 100%; height: auto; }
        ol.why { font-size: 0.9rem; }
        footer { margin-top: 2rem; padding-top: 0.4rem; border-top: 1px solid #000; font-size: 0.85rem; }
        @media print { body { max-width: none; margin: 0; padding: 0; } }

        """;
}

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Puts the runs of a line one after the other.</summary>
internal static class TextSetter
{
    /// <summary>The line as ink.</summary>
    public static IEnumerable<Ink> Set(Line line, double x, double baseLine, TextMeter meter)
    {
        foreach (var run in line.Runs)
        {
            yield return new TextInk(run, x, baseLine - run.Rise);
            x += meter.Width(run.Text, run.Face, run.Size);
        }
    }
}

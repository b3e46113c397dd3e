namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Breaks words into lines that fit a width: as many words as fit, and a word that is too long for any line is cut.</summary>
internal sealed class LineBreaker(TextMeter meter)
{
    /// <summary>The lines; one empty line for no words.</summary>
    public List<Line> Break(IEnumerable<TextWord> words, double width)
    {
        var lines = new List<Line>();
        var line = new OpenLine(meter);
        foreach (var word in words)
        {
            Place(word, width, lines, ref line);
            if (word.EndsLine)
            {
                lines.Add(line.Close());
                line = new OpenLine(meter);
            }
        }

        if (!line.IsEmpty || lines.Count == 0)
        {
            lines.Add(line.Close());
        }

        return lines;
    }

    /// <summary>What each column of a table asks for.</summary>
    /// <param name="rows">The rows, each with the words of its cells.</param>
    public IReadOnlyList<ColumnDemand> Demands(IReadOnlyList<IReadOnlyList<IReadOnlyList<TextWord>>> rows)
    {
        const double Space = 2 * PdfDesign.CellSide;
        var columns = rows.Max(row => row.Count);
        return [.. Enumerable.Range(0, columns).Select(i => rows.Where(row => i < row.Count).Select(row => row[i]).ToList())
            .Select(cells => new ColumnDemand(cells.SelectMany(cell => cell).Select(Width).Append(0).Max() + Space, cells.Select(Width).Append(0).Max() + Space))];
    }

    private double Width(TextWord word) => word.Runs.Sum(run => meter.Width(run.Text, run.Face, run.Size));

    private double Width(IReadOnlyList<TextWord> words) => Break(words, double.MaxValue).Max(line => line.Width);

    private void Place(TextWord word, double width, List<Line> lines, ref OpenLine line)
    {
        if (line.WidthWith(word) <= width)
        {
            line.Add(word);
            return;
        }

        if (!line.IsEmpty)
        {
            lines.Add(line.CloseAtSpace());
            line = new OpenLine(meter);
        }

        var rest = word;
        while (line.WidthWith(rest) > width && WordCutter.Cut(rest, width, meter) is var (head, tail))
        {
            line.Add(head);
            lines.Add(line.Close());
            line = new OpenLine(meter);
            rest = tail;
        }

        line.Add(rest);
    }

    private sealed class OpenLine(TextMeter meter)
    {
        private readonly List<Run> _runs = [];
        private double _width;

        public bool IsEmpty => _runs.Count == 0;

        public double WidthWith(TextWord word)
        {
            var sum = _width;
            for (var i = 0; i < word.Runs.Count; i++)
            {
                sum += Width(i == 0 ? Spaced(word.Runs[i]) : word.Runs[i]);
            }

            return sum;
        }

        public void Add(TextWord word)
        {
            for (var i = 0; i < word.Runs.Count; i++)
            {
                var run = i == 0 ? Spaced(word.Runs[i]) : word.Runs[i];
                _width += Width(run);
                if (_runs.Count > 0 && _runs[^1].Joins(run))
                {
                    _runs[^1] = _runs[^1] with { Text = _runs[^1].Text + run.Text };
                }
                else
                {
                    _runs.Add(run);
                }
            }
        }

        public Line Close() => new(_runs, _width);

        // The space is not seen, but parts the words for whoever reads the text aloud or copies it.
        public Line CloseAtSpace()
        {
            _runs[^1] = _runs[^1] with { Text = $"{_runs[^1].Text} " };
            return Close();
        }

        // The space between two words belongs to the second, so that a mark's small one is not taken.
        private Run Spaced(Run run) => IsEmpty ? run : run with { Text = $" {run.Text}" };

        private double Width(Run run) => meter.Width(run.Text, run.Face, run.Size);
    }
}

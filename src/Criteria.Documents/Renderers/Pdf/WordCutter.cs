using System.Text;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Cuts a word that is longer than a line: after a sign that parts it, else between any two characters. No hyphen is added, so that an identifier stays what it is.</summary>
internal static class WordCutter
{
    private const string Parting = "-/._,;:\u2013\u2014";

    /// <summary>The part that fits and the rest; null where nothing is left to cut.</summary>
    public static (TextWord Head, TextWord Tail)? Cut(TextWord word, double width, TextMeter meter)
    {
        var head = new List<Run>();
        var room = width;
        for (var i = 0; i < word.Runs.Count; i++)
        {
            var run = word.Runs[i];
            var needed = meter.Width(run.Text, run.Face, run.Size);
            if (needed <= room)
            {
                head.Add(run);
                room -= needed;
                continue;
            }

            var at = CutAt(run, room, head.Count == 0, meter);
            if (at > 0)
            {
                head.Add(run with { Text = run.Text[..at] });
            }

            var tail = word.Runs.Skip(i + 1).Prepend(run with { Text = run.Text[at..] }).Where(part => part.Text.Length > 0).ToList();
            return head.Count == 0 || tail.Count == 0 ? null : (new TextWord(head), new TextWord(tail, word.EndsLine));
        }

        return null;
    }

    // At least one character goes on each line: a column may be narrower than that.
    private static int CutAt(Run run, double room, bool first, TextMeter meter)
    {
        var fits = 0;
        var parted = 0;
        var width = 0d;
        foreach (var rune in run.Text.EnumerateRunes())
        {
            width += meter.Width(rune.ToString(), run.Face, run.Size);
            if (width > room)
            {
                break;
            }

            fits += rune.Utf16SequenceLength;
            parted = IsParting(rune) ? fits : parted;
        }

        var least = first ? Rune.GetRuneAt(run.Text, 0).Utf16SequenceLength : 0;
        return Math.Max(parted * 2 > fits ? parted : fits, least);
    }

    private static bool IsParting(Rune rune) => rune.IsBmp && Parting.Contains((char)rune.Value, StringComparison.Ordinal);
}

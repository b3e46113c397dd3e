using System.Text.RegularExpressions;

namespace Criteria.Documents.Templating;

/// <summary>Takes out what a template leaves behind where a sentence was not printed: empty items, rows, headings and lines.</summary>
internal static partial class Tidy
{
    /// <summary>The text without them; it ends with one line end, unless it is empty.</summary>
    public static string Up(string markdown)
    {
        var lines = markdown.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd()).Where(line => !EmptyItem().IsMatch(line)).ToList();
        DropHeadlessTables(lines);
        JoinTables(lines);
        DropEmptyHeadings(lines);
        var text = ManyLines().Replace(string.Join('\n', lines), "\n\n").Trim('\n');
        return text.Length == 0 ? "" : text + "\n";
    }

    // A table whose rows were not printed: its head and its rule of dashes.
    private static void DropHeadlessTables(List<string> lines)
    {
        for (var i = lines.Count - 1; i > 0; i--)
        {
            if (Rule().IsMatch(lines[i]) && !IsRow(lines.Skip(i + 1).FirstOrDefault(line => line.Length > 0)))
            {
                lines.RemoveRange(i - 1, 2);
                i--;
            }
        }
    }

    // Loops leave empty lines between the rows of a table.
    private static void JoinTables(List<string> lines)
    {
        for (var i = lines.Count - 2; i > 0; i--)
        {
            if (lines[i].Length == 0 && IsRow(lines[i - 1]) && IsRow(lines[i + 1]) && !(i + 2 < lines.Count && Rule().IsMatch(lines[i + 2])))
            {
                lines.RemoveAt(i);
            }
            else if (lines[i].Length == 0 && lines[i + 1].Length == 0)
            {
                lines.RemoveAt(i);
            }
        }
    }

    // From the end on, so that a heading above an empty one goes too.
    private static void DropEmptyHeadings(List<string> lines)
    {
        for (var i = lines.Count - 1; i >= 0; i--)
        {
            if (Level(lines[i]) is not (> 0 and var level))
            {
                continue;
            }

            var next = lines.Skip(i + 1).FirstOrDefault(line => line.Length > 0);
            if (next is null || Level(next) is > 0 and var other && other <= level)
            {
                lines.RemoveAt(i);
            }
        }
    }

    private static bool IsRow(string? line) => line is { Length: > 0 } && line[0] == '|';

    private static int Level(string line)
    {
        var marks = line.TakeWhile(letter => letter == '#').Count();
        return marks > 0 && marks < line.Length && line[marks] == ' ' ? marks : 0;
    }

    [GeneratedRegex(@"^\s*(?:[-*+]|\d+\.)\s*$|^\|[\s|]*$")]
    private static partial Regex EmptyItem();

    [GeneratedRegex(@"^\|(?:\s*:?-+:?\s*\|)+$")]
    private static partial Regex Rule();

    [GeneratedRegex(@"\n{3,}")]
    private static partial Regex ManyLines();
}

using System.Text.RegularExpressions;

namespace Criteria.Documents.Templating;

/// <summary>Takes out what a template leaves behind where a sentence was not printed: empty items, rows, headings and lines.</summary>
internal static partial class Tidy
{
    /// <summary>Stands where a block printed nothing. No text of a case can hold it.</summary>
    public const char Nothing = '\u0001';

    /// <summary>A template in which a line that only holds a tag leaves no line behind; its places stay where they are.</summary>
    public static string LinesOfTags(string template) => TagLine().Replace(template, $"$0{Nothing}");

    /// <summary>The text without them; it ends with one line end, unless it is empty.</summary>
    public static string Up(string markdown)
    {
        var lines = markdown.Split('\n').Where(line => !IsNothing(line)).Select(line => line.Replace($"{Nothing}", "", StringComparison.Ordinal).TrimEnd())
            .Where(line => !EmptyItem().IsMatch(line)).ToList();
        DropHeadlessTables(lines);
        DropEmptyHeadings(lines);
        SetListsApart(lines);
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

    // A line that follows an item would belong to it.
    private static void SetListsApart(List<string> lines)
    {
        for (var i = lines.Count - 1; i > 0; i--)
        {
            if (Item().IsMatch(lines[i - 1]) && lines[i].Length > 0 && lines[i][0] != ' ' && !Item().IsMatch(lines[i]))
            {
                lines.Insert(i, "");
            }
        }
    }

    private static bool IsNothing(string line) => line.Contains(Nothing, StringComparison.Ordinal) && line.All(letter => letter is Nothing or ' ');

    private static bool IsRow(string? line) => line is { Length: > 0 } && line[0] == '|';

    private static int Level(string line)
    {
        var marks = line.TakeWhile(letter => letter == '#').Count();
        return marks > 0 && marks < line.Length && line[marks] == ' ' ? marks : 0;
    }

    [GeneratedRegex(@"^\s*(?:[-*+]|\d+\.)\s*$|^\|[\s|]*$")]
    private static partial Regex EmptyItem();

    [GeneratedRegex(@"^\s*(?:[-*+]|\d+\.) ")]
    private static partial Regex Item();

    [GeneratedRegex(@"^\|(?:\s*:?-+:?\s*\|)+$")]
    private static partial Regex Rule();

    [GeneratedRegex(@"^[ \t]*\{%(?:(?!%\}).)*%\}[ \t]*$", RegexOptions.Multiline)]
    private static partial Regex TagLine();

    [GeneratedRegex(@"\n{3,}")]
    private static partial Regex ManyLines();
}

using System.Text.RegularExpressions;

namespace Criteria.Documents.Wording;

/// <summary>Writes plain text in lines of bounded width, with a hanging indent.</summary>
internal sealed partial class PlainText(TextWriter writer)
{
    /// <summary>The width that any chart box and terminal shows.</summary>
    public const int Width = 80;

    private const char Glue = '\u00A0';

    public void Line(string text = "") => writer.WriteLine(text);

    /// <summary>A text on the left and one on the right of a line; on two lines when they do not fit.</summary>
    public void Spread(string left, string right)
    {
        if (left.Length + right.Length + 1 <= Width)
        {
            writer.WriteLine(left.PadRight(Width - right.Length) + right);
        }
        else
        {
            Hanging("", left, 0);
            Hanging(new string(' ', Math.Max(0, Width - right.Length)), right, 0);
        }
    }

    /// <summary>A heading of a part.</summary>
    public void Part(string title)
    {
        writer.WriteLine();
        Hanging("", title, 0);
        writer.WriteLine(new string('-', Width));
    }

    /// <summary>A paragraph: the first line after <paramref name="lead"/>, the others indented below it.</summary>
    /// <remarks>A number stays on one line with its unit.</remarks>
    public void Hanging(string lead, string text, int indent)
    {
        var margin = new string(' ', indent);
        var line = lead.PadRight(indent);
        var empty = true;
        foreach (var word in Glued(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                writer.WriteLine(line.Replace(Glue, ' '));
                line = margin;
                empty = true;
            }

            // A word that no line can hold goes on in the next one.
            var rest = empty ? word : $" {word}";
            while (line.Length + rest.Length > Width)
            {
                var room = Width - line.Length;
                writer.WriteLine((line + rest[..room]).Replace(Glue, ' '));
                (line, rest) = (margin, rest[room..]);
            }

            line += rest;
            empty = false;
        }

        writer.WriteLine(line.Replace(Glue, ' ').TrimEnd());
    }

    private static string Glued(string text) =>
        HoursAndMinutes().Replace(NumberAndUnit().Replace(text, $"$1{Glue}$2"), $"$1{Glue}$2");

    [GeneratedRegex(@"(\u00A0h) (\d)", RegexOptions.CultureInvariant)]
    private static partial Regex HoursAndMinutes();

    [GeneratedRegex(@"(\d) (%|/h|h|min|cm|kg|kg/m2|years|points)(?=[\s,;:.)]|$)", RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();
}

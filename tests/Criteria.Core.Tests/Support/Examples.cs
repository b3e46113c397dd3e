using System.Text;

namespace Criteria.Core.Tests.Support;

/// <summary>One example of a <c>.golden.txt</c> page: a title, a text, and what is said of it.</summary>
internal sealed record Example(string Title, string Text, string Said);

/// <summary>
/// Pages of examples that stand beside their tests: <c>=== title</c>, the text, <c>>>></c>, and what the program says.
/// A page is compared byte for byte. It is rewritten only when CRITERIA_ACCEPT is set to 1; read the difference.
/// </summary>
internal static class Examples
{
    private const string Start = "=== ";
    private const string Answer = ">>>";

    public static IReadOnlyList<Example> Of(string page)
    {
        var examples = new List<Example>();
        foreach (var part in ("\n" + Repository.Text(page)).Split("\n" + Start).Skip(1))
        {
            var lines = part.Split('\n');
            var answer = Array.IndexOf(lines, Answer);
            answer = answer < 0 ? lines.Length : answer;
            examples.Add(new Example(
                lines[0], string.Join('\n', lines[1..answer]) + "\n", string.Join('\n', lines[Math.Min(answer + 1, lines.Length)..]).Trim('\n')));
        }

        return examples;
    }

    public static TheoryData<string> Titles(string page) => [.. Of(page).Select(example => example.Title)];

    /// <summary>Holds one example against what the program says now.</summary>
    public static void ShouldHold(string page, string title, Func<string, IEnumerable<string>> say)
    {
        var example = Of(page).Single(candidate => candidate.Title == title);

        var said = string.Join('\n', say(example.Text));

        if (Environment.GetEnvironmentVariable("CRITERIA_ACCEPT") == "1")
        {
            Rewrite(page, example, said);
            return;
        }

        said.ShouldBe(example.Said, title);
    }

    private static void Rewrite(string page, Example example, string said)
    {
        lock (Start)
        {
            var text = new StringBuilder();
            foreach (var each in Of(page))
            {
                text.Append(Start).Append(each.Title).Append('\n').Append(each.Text.TrimEnd('\n')).Append('\n').Append(Answer).Append('\n')
                    .Append(each.Title == example.Title ? said : each.Said).Append("\n\n");
            }

            System.IO.File.WriteAllText(Repository.Path(page), text.ToString().TrimEnd('\n') + "\n");
        }
    }
}

using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>The lines of a case file that is being written.</summary>
internal sealed class CaseLines(Func<Fact, string?> remarkOf)
{
    private const string Step = "  ";

    private readonly List<string> _lines = [];

    public int Count => _lines.Count;

    /// <summary>A line that only people read.</summary>
    public void Remark(string text) => _lines.Add($"# {text}");

    /// <summary>One line, so many steps in, with a remark behind it.</summary>
    public void Add(int depth, string text, string? remark = null) =>
        _lines.Add(string.Concat(Enumerable.Repeat(Step, depth)) + text + (remark is null ? "" : $"   # {remark}"));

    /// <summary>A fact under its key.</summary>
    public void Add(int depth, string key, Fact fact) => Add(depth, $"{key}: {Scalars.Of(fact)}", remarkOf(fact));

    /// <summary>Puts the dash of a list before the lines from <paramref name="start"/> on; when there are none, an empty entry.</summary>
    public void BeginItem(int start)
    {
        if (start == _lines.Count)
        {
            Add(1, "- {}");
            return;
        }

        // INVARIANT: the lines of an entry stand two steps in.
        _lines[start] = $"{Step}- {_lines[start][(2 * Step.Length)..]}";
    }

    public override string ToString() => string.Concat(_lines.Select(line => line + "\n"));
}

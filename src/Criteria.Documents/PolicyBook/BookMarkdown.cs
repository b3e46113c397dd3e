using System.Text;
using Criteria.Documents.Templating;

namespace Criteria.Documents.PolicyBook;

/// <summary>Markdown in which nothing that a rule says can become markup.</summary>
internal sealed class BookMarkdown
{
    private readonly StringBuilder _text = new();

    /// <summary>What was written.</summary>
    public override string ToString() => _text.ToString();

    /// <summary>A heading of the second to fourth level.</summary>
    public void Heading(int level, string text) => Block($"{new string('#', level)} {Safe(text)}");

    /// <summary>A paragraph.</summary>
    public void Paragraph(string text) => Block(Safe(text));

    /// <summary>A paragraph with a few words in front in bold.</summary>
    public void Paragraph(string lead, string text) => Block($"**{Safe(lead)}** {Safe(text)}");

    /// <summary>A list, each line with how deep it stands; nothing when there is none.</summary>
    public void List(IEnumerable<(int Depth, string Text)> lines)
    {
        var before = _text.Length;
        foreach (var (depth, text) in lines)
        {
            _text.Append(' ', depth * 2).Append("- ").Append(Safe(text)).Append('\n');
        }

        _text.Append(_text.Length > before ? "\n" : "");
    }

    /// <summary>A table; nothing when it has no rows.</summary>
    public void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        var all = rows.ToArray();
        if (all.Length == 0)
        {
            return;
        }

        Row(head);
        _text.Append('|').Insert(_text.Length, "---|", head.Count).Append('\n');
        foreach (var row in all)
        {
            Row(row);
        }

        _text.Append('\n');
    }

    private void Row(IEnumerable<string> cells) => _text.Append("| ").AppendJoin(" | ", cells.Select(Safe)).Append(" |\n");

    private void Block(string text) => _text.Append(text).Append("\n\n");

    private static string Safe(string text) => MarkdownEncoder.Instance.Encode(text.Replace('\n', ' ').Trim());
}

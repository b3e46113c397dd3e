using System.Text;
using Criteria.Core.Logic;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Tests.Support;

/// <summary>Everything a finding says, as text, so that two findings can be compared wholly.</summary>
internal static class Print
{
    public static string Of(Finding finding)
    {
        var text = new StringBuilder();
        text.Append(finding.Id).Append(" [").Append(finding.Night).Append("] ").Append(finding.Standing.Words()).Append(' ').AppendLine(finding.Value?.Text);
        text.AppendJoin(' ', finding.Missing.Select(fact => fact.Fact)).AppendLine();
        text.AppendJoin(' ', finding.Silent.Concat(finding.DecidedLocally).Select(question => question.Id)).AppendLine();
        text.AppendJoin('\n', finding.Cautions.Append(finding.ReadFirst ?? "")).AppendLine();
        if (finding.Option is { } option)
        {
            text.AppendJoin('\n', option.For.Concat(option.Against).Concat(option.Unknown)).AppendLine();
        }

        Add(text, finding.Because, 0);
        if (finding.Residual is { } residual)
        {
            Add(text, residual, 0);
        }

        return text.ToString();
    }

    public static string[] Of(Assessment assessment) => [.. assessment.Findings.Select(Of)];

    private static void Add(StringBuilder text, TraceNode node, int depth)
    {
        text.Append(' ', depth).Append(node.Kind).Append(' ').Append(node.Truth).Append(": ").Append(node.Text).Append(" | ").Append(node.Value).Append(" | ").AppendLine(node.From);
        foreach (var part in node.Parts)
        {
            Add(text, part, depth + 1);
        }
    }
}

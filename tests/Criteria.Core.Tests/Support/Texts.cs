using System.Collections.Immutable;
using System.Text;
using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Support;

/// <summary>Makes files of texts, and says what a reading reported.</summary>
internal static class Texts
{
    public static SourceFile File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    /// <summary>Every problem in its one-line form, place first.</summary>
    public static void ShouldSay(this IEnumerable<Diagnostic> problems, params string[] lines) =>
        problems.Select(problem => problem.ToString()).ShouldBe(lines);

    /// <summary>Every message is one line, short enough to be read, and starts small; every place lies in the file.</summary>
    public static void ShouldBeWellWorded(this IEnumerable<Diagnostic> problems)
    {
        foreach (var problem in problems)
        {
            var line = problem.ToString();
            line.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029').ShouldBeFalse(line);
            line.Length.ShouldBeLessThan(900, line);
            char.IsUpper(problem.Message[0]).ShouldBeFalse(line);
            problem.Message.ShouldNotEndWith(".", customMessage: line);
            (problem.Span.Line >= 1 && problem.Span.Column >= 1).ShouldBeTrue(line);
        }
    }

    public static string[] Codes(this ImmutableArray<Diagnostic> problems) => [.. problems.Select(problem => problem.Code)];
}

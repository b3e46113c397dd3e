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

    public static string[] Codes(this ImmutableArray<Diagnostic> problems) => [.. problems.Select(problem => problem.Code)];
}

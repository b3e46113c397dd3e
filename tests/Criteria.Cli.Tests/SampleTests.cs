using Criteria.Cli.Tests.Support;
using Criteria.Core.Rulesets;
using Criteria.Documents;

namespace Criteria.Cli.Tests;

/// <summary>The documents in <c>docs/samples</c> are those that the program writes.</summary>
public sealed class SampleTests
{
    private const string Case = "docs/samples/case.yaml";

    // Whom a document of the sample case goes to, where it could go to several.
    private static readonly Dictionary<string, string> To = new(StringComparer.Ordinal) { ["request-sheet"] = "orderer", ["referral-physician"] = "orderer" };

    internal static IEnumerable<string> Names => DocumentTemplates.Load(ShippedRules.Loading.Library!).Templates!.Documents.Select(document => document.Name);

    public static TheoryData<string> Documents => [.. Names];

    [Theory]
    [MemberData(nameof(Documents))]
    public void Sample_OfEveryDocument_IsWhatTheProgramWrites(string document)
    {
        var result = Write(document, "--ascii");

        result.Error.ShouldBeEmpty();
        result.Code.ShouldBe(0);
        Repository.ShouldBeApproved(result.Out, "docs", "samples", $"{document}.txt");
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void Sample_OfEveryDocument_HasNoEmptySectionAndNoTemplateLeft(string document)
    {
        var lines = Write(document, "--ascii").Out.Split('\n');

        lines.ShouldAllBe(line => !line.Contains("{{", StringComparison.Ordinal) && !line.Contains("{%", StringComparison.Ordinal));
        lines.ShouldAllBe(line => line == line.TrimEnd());
        var rules = lines.Select((line, at) => (line, at)).Where(pair => pair.line.Length > 40 && pair.line.All(letter => letter == '-')).Select(pair => pair.at).ToArray();

        var last = rules.Last();

        // The rule itself, what stands in the section, and the heading of the next one, which the last has not.
        rules.Zip(rules.Skip(1)).ShouldAllBe(pair => lines.Skip(pair.First).Take(pair.Second - pair.First).Count(line => line.Length > 0) > (pair.Second == last ? 1 : 2));
    }

    [Fact]
    public void Sample_OfTheCalendar_IsWhatTheProgramWrites()
    {
        var result = Command.Run("write", Case, "--document", "calendar");

        result.Code.ShouldBe(0);
        Repository.ShouldBeApproved(result.Out, "docs", "samples", "calendar.ics");
    }

    internal static CommandResult Write(string document, params string[] options) =>
        Command.Run(["write", Case, "--document", document, .. options, .. To.TryGetValue(document, out var to) ? new[] { "--to", to } : []]);
}

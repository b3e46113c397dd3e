using System.Text.RegularExpressions;
using Criteria.Core.Rulesets;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>A checklist that a biller can act on: each line says who, what and why, or where it stands.</summary>
public sealed partial class ChecklistTests
{
    private static readonly string[] Closed = ["Look at before sending", "Dates, from visit to delivery", "Local rules", "Sign-off"];

    public static TheoryData<string> Lines => [.. Written.Library.All.Criteria
        .Where(criterion => criterion is { Ruleset.Function: RulesetFunction.Coverage, Shown: Shown.Always or Shown.AtTheTop }).Select(criterion => criterion.Id)];

    public static TheoryData<string> Examples => [.. Written.Examples.Where(name => Rows(name).Length > 0)];

    [Theory]
    [MemberData(nameof(Lines))]
    public void CoverageLine_OfEveryShippedRuleset_SaysWhoWhatAndWhy(string id)
    {
        var criterion = Written.Library.All.Criteria.Single(criterion => criterion.Id == id);

        criterion.Owner.ShouldNotBeNullOrWhiteSpace();
        criterion.Ask.ShouldNotBeNullOrWhiteSpace();
        criterion.Why.ShouldNotBeNullOrWhiteSpace();
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Checklist_OfEveryExample_LeavesNoCellEmptyAndNoOwnerOpen(string example)
    {
        foreach (var (_, cells) in Rows(example))
        {
            cells.ShouldAllBe(cell => cell.Length > 0, string.Join(" | ", cells));
            cells.ShouldNotContain("to be found out", string.Join(" | ", cells));
        }
    }

    [Fact]
    public void Examples_WithCoverage_AreThere() => Written.Examples.Count(name => Rows(name).Length > 0).ShouldBeGreaterThan(5);

    [Fact]
    public void Checklist_OfAnAppliance_NamesWhoMendsTheOrderOfDatesAndWhichStepFails()
    {
        var row = Rows("oral-appliance-mild").Single(row => row.Cells[0].StartsWith("Dates from visit to delivery", StringComparison.Ordinal));

        row.Cells[1].ShouldBe("billing staff");
        row.Cells[2].ShouldStartWith("Please check the dates of the visit, the test order, the test");
        row.Cells[2].ShouldContain("Here: delivery on or after the order: not met.");
    }

    [Fact]
    public void Checklist_WithDetailsMissingOfAnOrder_NamesTheOrderOnce()
    {
        var row = Rows("oral-appliance-mild").Single(row => row.Cells[0].StartsWith("Written order", StringComparison.Ordinal));

        row.Cells[2].ShouldContain("Not known of the order of 28 April 2026: names the patient; describes the item;");
        row.Cells[2].Split("Not known of").Length.ShouldBe(2);
        row.Cells[2].ShouldNotContain("appliance-order");
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Checklist_OfEveryExample_CountsNoReasonThatItCouldName(string example)
    {
        foreach (var document in new[] { "checklist", "packet-index" })
        {
            var text = Written.Document(Written.ExampleText(example), document).Page!.Markdown;

            text[..text.IndexOf("## Sign-off", StringComparison.Ordinal)].ShouldNotMatch("; and [a-z-]+ more[.]");
        }
    }

    [Fact]
    public void Checklist_OfALineThatNoDocumentShows_SaysWhatToAskAndWhom() => Written.Document(Written.ExampleText("oral-appliance-mild"), "checklist").Page!.Markdown
        .ShouldContain("Entered in the case; no document is named for it. To ask of technologist: Is the recorder approved or cleared as a diagnostic device?");

    // The rows of the tables of lines, without their marks.
    private static (string Heading, string[] Cells)[] Rows(string example)
    {
        var written = Written.Document(Written.ExampleText(example), "checklist");
        if (written.Page is not { } page)
        {
            return [];
        }

        var heading = "";
        var rows = new List<(string, string[])>();
        foreach (var line in page.Markdown.Split('\n'))
        {
            heading = line.StartsWith("## ", StringComparison.Ordinal) ? line[3..] : heading;
            if (line.StartsWith('|') && !Closed.Contains(heading))
            {
                rows.Add((heading, [.. Mark().Replace(line, "").Replace("\\", "", StringComparison.Ordinal).Split('|')[1..^1].Select(cell => cell.Trim())]));
            }
        }

        return [.. rows];
    }

    [GeneratedRegex(@"\[\^\d+\]")]
    private static partial Regex Mark();
}

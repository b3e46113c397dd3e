using System.Text;
using System.Text.RegularExpressions;
using Criteria.Documents.Renderers;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests.Renderers;

public sealed partial class HtmlTests
{
    private static readonly string Checklist = Written.Text(Written.ExampleText("oral-appliance-mild"), "checklist", "html");

    [Fact]
    public void Html_OfADocument_NamesItsLanguageTitleAndState()
    {
        Checklist.ShouldStartWith("<!DOCTYPE html>\n<html lang=\"en\">");
        Checklist.ShouldContain("<title>Documentation checklist, case HT-0416, DRAFT, not signed</title>");
        Regex.Count(Checklist, "<h1>").ShouldBe(1);
    }

    [Theory]
    [InlineData("impression")]
    [InlineData("checklist")]
    public void Html_Headings_SkipNoLevel(string document)
    {
        var levels = Heading().Matches(Written.Text(Written.ExampleText("oral-appliance-mild"), document, "html")).Select(match => match.Groups[1].Value[0] - '0').ToArray();

        levels.Length.ShouldBeGreaterThan(3);
        levels.Zip(levels.Skip(1)).ShouldAllBe(pair => pair.Second <= pair.First + 1);
    }

    [Fact]
    public void Html_Tables_HaveHeadersWithTheirScope()
    {
        Regex.Count(Checklist, "<table>").ShouldBeGreaterThan(2);
        Regex.Count(Checklist, "<thead>").ShouldBe(Regex.Count(Checklist, "<table>"));
        Regex.Count(Checklist, "<th>").ShouldBe(0);
        Checklist.ShouldContain("<th scope=\"col\">Line</th>");
        Checklist.ShouldContain("<th scope=\"row\">Proof of delivery");
    }

    [Fact]
    public void Html_OfADocument_FetchesNothing()
    {
        Regex.IsMatch(Checklist, "src=|@import|url\\(|<script|<link").ShouldBeFalse();
        Regex.Matches(Checklist, "href=\"([^\"]*)\"").Select(match => match.Groups[1].Value).ShouldAllBe(address => address.StartsWith("#why-"));
    }

    [Fact]
    public void Html_EveryMark_LeadsToItsReason()
    {
        var marks = Regex.Matches(Checklist, "href=\"#(why-\\d+)\"").Select(match => match.Groups[1].Value).Distinct().ToArray();

        marks.Length.ShouldBeGreaterThan(5);
        marks.ShouldAllBe(mark => Checklist.Contains($"<li id=\"{mark}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Html_OfTextThatLooksLikeMarkup_ShowsItAsText()
    {
        var text = Written.ExampleText("oral-appliance-mild") + "identity: { patient_name: '<script>alert(1)</script> **x** [a](http://b) ![i](figure:f)' }\n";

        var html = Written.Text(text, "impression", "html");

        html.ShouldContain("&lt;script&gt;alert(1)&lt;/script&gt; **x** [a](http://b) ![i](figure:f)");
    }

    [Fact]
    public void Html_Figure_HasAnAlternative()
    {
        var page = PlainTextTests.Page("![grade](figure:severity)\n") with { Figures = [new DocumentFigure("severity", "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>", [], "Mild, 10.8/h.")] };

        Encoding.UTF8.GetString(new HtmlRenderer().Render(page)).ShouldContain("<figure role=\"img\" aria-label=\"Mild, 10.8/h.\">\n<svg");
        Encoding.UTF8.GetString(new PlainTextRenderer(ascii: true).Render(page)).ShouldContain("[Figure: Mild, 10.8/h.]");
    }

    [GeneratedRegex("<h([1-6])>")]
    private static partial Regex Heading();
}

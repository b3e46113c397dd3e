using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>The packet index: each document with what it supports, and what is missing.</summary>
public sealed class PacketIndexTests
{
    [Fact]
    public void PacketIndex_OfACaseWithDocuments_NamesWhatEachSupports()
    {
        var text = Text(Written.ExampleText("oral-appliance-mild"));

        Part(text, "### visit-note", "###").ShouldContain("In-person evaluation before the test");
        Part(text, "### report", "###").ShouldContain("Signed report of the sleep test");
    }

    [Fact]
    public void PacketIndex_WithoutADocument_MovesItsLinesToWhatIsMissing()
    {
        var whole = Written.ExampleText("oral-appliance-mild");
        var cut = string.Join('\n', whole.Split('\n').Where(line => !line.Contains("id: test-order", StringComparison.Ordinal)));
        cut.ShouldNotBe(whole);

        Part(Text(whole), "## What is missing", "## Sign-off").ShouldNotContain("Order for the sleep test, dated before it");
        Part(Text(cut), "## What is missing", "## Sign-off").ShouldContain("Order for the sleep test, dated before it");
    }

    private static string Text(string caseText) => Written.Text(caseText, "packet-index", "markdown");

    private static string Part(string text, string from, string to)
    {
        var start = text.IndexOf(from, StringComparison.Ordinal);
        start.ShouldBeGreaterThan(-1, text);
        var end = text.IndexOf(to, start + from.Length, StringComparison.Ordinal);
        return end < 0 ? text[start..] : text[start..end];
    }
}

using Criteria.Documents.Templating;

namespace Criteria.Documents.Tests.Templating;

public sealed class TidyTests
{
    [Theory]
    [InlineData("a\n\u0001\nb\n", "a\nb\n")] // a sentence that was not printed leaves no line
    [InlineData("- a\n- \u0001\n- b\n", "- a\n- b\n")]
    [InlineData("## A\n\n## B\nb\n", "## B\nb\n")]
    [InlineData("## A\n### A1\n## B\nb\n", "## B\nb\n")]
    [InlineData("## A\n### A1\na\n", "## A\n### A1\na\n")]
    [InlineData("| h |\n|---|\n\ntext\n", "text\n")]
    [InlineData("| h |\n|---|\n| r |\n", "| h |\n|---|\n| r |\n")]
    [InlineData("- a\ntext\n", "- a\n\ntext\n")]
    [InlineData("a\n\n\n\nb", "a\n\nb\n")]
    [InlineData("\u0001\n", "")]
    public void Up_TakesOutWhatStandsAboveNothing(string text, string tidy) => Tidy.Up(text).ShouldBe(tidy);
}

using Criteria.Core.Logic;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>How documents tell an option: its grounds, how far its source was checked, and by which night.</summary>
public sealed class OptionTests
{
    public static TheoryData<string> Documents => ["impression", "interpretation-report"];

    // A ground is a sentence for a reader; that its source was not checked stands behind the option and in the reasons.
    [Fact]
    public void Grounds_OfShippedOptions_DoNotBreakOffForTheirSource() => Written.Library.All.Criteria
        .Select(criterion => criterion.Body).OfType<OptionBody>().SelectMany(option => option.For.Concat(option.Against))
        .Where(point => point.Say.Contains("from memory", StringComparison.Ordinal)).ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Documents))]
    public void Option_OfASourceFromMemory_SaysSoAtItsEndAndInTheReasons(string document)
    {
        var text = Written.Document(Written.ExampleText("clear-severe"), document).Page!.Markdown;

        var option = text.Split('\n').Single(line => line.Contains("Positive airway pressure (PAP).", StringComparison.Ordinal));
        option.ShouldContain("For: High blood pressure (conditional recommendation). ");
        option.ShouldContain(" Certainty: not stated in the text seen. Source partly from memory, not checked.");
        text.ShouldContain("recommendations 2 and 3 (from memory, not checked)");
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void Option_OfSourcesThatWereSeen_SaysNothingOfMemory(string document) =>
        Written.Document(Written.ExampleText("clear-severe"), document).Page!.Markdown.Split('\n')
            .Single(line => line.Contains("Oral appliance, custom made and adjustable", StringComparison.Ordinal)).ShouldNotContain("memory");

    [Theory]
    [MemberData(nameof(Documents))]
    public void Option_OfTwoNights_SaysByWhichOfThemItIsOne(string document)
    {
        var lines = Written.Document(Written.ExampleText("two-nights"), document).Page!.Markdown.Split('\n');

        lines.ShouldContain(line => line.StartsWith("- By each of the nights: **Positive airway pressure (PAP).**", StringComparison.Ordinal));
        lines.ShouldContain(line => line.StartsWith("- By the night of 12 March 2026 alone: **Tirzepatide", StringComparison.Ordinal));
        lines.ShouldNotContain(line => line.StartsWith("- Night of 12 March 2026: **Positive", StringComparison.Ordinal));
    }

    [Fact]
    public void Option_OfASingleNight_NamesNoNight() =>
        Written.Document(Written.ExampleText("clear-severe"), "impression").Page!.Markdown.ShouldContain("\n- **Positive airway pressure (PAP).**");
}

using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Reading;

public sealed class NearestNameTests
{
    private static readonly string[] Known = ["hypertension", "hypopneas", "insomnia", "neck", "night.date", "weight", "height"];

    [Theory]
    [InlineData("hypertensoin", "hypertension")] // neighbours swapped
    [InlineData("hypertenson", "hypertension")] // one left out
    [InlineData("insomniaa", "insomnia")] // one added
    [InlineData("nack", "neck")] // one changed
    [InlineData("Neck", "neck")]
    [InlineData("night-date", "night.date")]
    [InlineData("eight", "height")] // height and weight are equally near: first in order
    public void Of_ANearName_IsThatName(string name, string expected) => NearestName.Of(name, Known).ShouldBe(expected);

    [Theory]
    [InlineData("blood pressure")]
    [InlineData("")]
    [InlineData("x")]
    public void Of_AFarName_IsNone(string name) => NearestName.Of(name, Known).ShouldBeNull();

    [Fact]
    public void Of_AVeryLongName_IsNone() => NearestName.Of(new string('x', 65), [new string('x', 66)]).ShouldBeNull();

    [Fact]
    public void Of_NothingKnown_IsNone() => NearestName.Of("neck", []).ShouldBeNull();

    [Theory]
    [InlineData("abcdef", "abcxyf", "abcxyf")] // two of six
    [InlineData("abcdef", "abwxyf", null)] // three of six
    public void Of_ANameAThirdAway_IsTheLimit(string name, string known, string? expected) => NearestName.Of(name, [known]).ShouldBe(expected);
}

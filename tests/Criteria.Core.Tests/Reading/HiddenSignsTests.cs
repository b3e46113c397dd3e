using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Reading;

public sealed class HiddenSignsTests
{
    [Theory]
    [InlineData("Zo\u00EB O'Neil-\u4E2D \U0001F600", "Zo\u00EB O'Neil-\u4E2D \U0001F600")]
    [InlineData("\u0645\u06CC\u200C\u062E", "\u0645\u06CC\u200C\u062E")]
    [InlineData("a\nb\tc\u0085d", "a b c d")]
    [InlineData("\u202Etxt\u202C", " txt ")]
    [InlineData("a\u200Bb\uFEFFc\u00ADd", "a b c d")]
    [InlineData("a\u2028b\u2029c", "a b c")]
    [InlineData("a\U000E0041b", "a b")]
    [InlineData("a\uFFFEb\U0001FFFFc", "a b c")]
    [InlineData("", "")]
    public void Spaced_OfAText_HasASpaceForEachSignThatNobodySees(string text, string spaced) => HiddenSigns.Spaced(text).ShouldBe(spaced);
}

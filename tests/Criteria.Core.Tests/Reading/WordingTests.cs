using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Reading;

public sealed class WordingTests
{
    [Fact]
    public void List_OfManyWords_IsCutShort()
    {
        Wording.List(["a", "b"]).ShouldBe("`a`, `b`");
        Wording.List(Enumerable.Range(1, 15).Select(number => $"{number}")).ShouldEndWith("`12` and 3 more");
    }

    [Theory]
    [InlineData("a\nb\tc", "a b c")]
    [InlineData("short", "short")]
    [InlineData("a\u2028b\u2029c\u0085d\u202ee", "a b c d e")]
    public void Quote_OfAText_IsOneLine(string text, string expected) => Wording.Quote(text).ShouldBe(expected);

    [Fact]
    public void Quote_OfALongText_NeverCutsALetterInTwo() =>
        Wording.Quote(new string('x', 59) + "\ud83d\ude00y").ShouldBe(new string('x', 59) + "...");

    [Fact]
    public void Quote_OfALongText_IsCutAfter60()
    {
        Wording.Quote(new string('x', 60)).ShouldBe(new string('x', 60));
        Wording.Quote(new string('x', 61)).ShouldBe(new string('x', 60) + "...");
    }
}

using Criteria.Cli.Tests.Support;
using CsCheck;

namespace Criteria.Cli.Tests;

public sealed class HostileInputTests
{
    private static readonly string Valid = File.ReadAllText(Command.Example("clear-severe"));

    [Fact]
    public void Assess_TruncatedCase_NeverShowsAStackTrace()
    {
        for (var length = 0; length < Valid.Length; length += 37)
        {
            ShouldEndClearly(Valid[..length]);
        }
    }

    [Fact]
    public void Assess_MutatedCase_NeverShowsAStackTrace() =>
        Gen.Select(Gen.Int[0, Valid.Length - 1], Gen.Char[' ', '~']).Array[1, 4].Sample(
            changes =>
            {
                var text = Valid.ToCharArray();
                foreach (var (at, letter) in changes)
                {
                    text[at] = letter;
                }

                ShouldEndClearly(new string(text));
            },
            iter: 150);

    [Fact]
    public void Assess_RandomText_NeverShowsAStackTrace() =>
        Gen.Char.AlphaNumeric.Array[0, 200].Select(letters => new string(letters)).Sample(ShouldEndClearly, iter: 100);

    private static void ShouldEndClearly(string text)
    {
        var result = Command.RunWith(text, interactive: false, "assess", "-");

        result.Code.ShouldBeOneOf(0, 1);
        (result.Out + result.Error).ShouldNotContain("\n   at Criteria.");
        if (result.Code == 1)
        {
            result.Out.ShouldBeEmpty();
            result.Error.ShouldContain(": error C");
        }
    }
}

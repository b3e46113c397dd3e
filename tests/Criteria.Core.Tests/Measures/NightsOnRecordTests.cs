using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Core.Tests.Measures;

/// <summary>A night shows that a test was done; that none does shows nothing.</summary>
public sealed class NightsOnRecordTests
{
    [Theory]
    [InlineData("type II", true)]
    [InlineData("type III", true)]
    [InlineData("type IV", true)]
    [InlineData("PAT set", true)]
    [InlineData("type I", false)]
    [InlineData("unknown", false)]
    public void HomeTest_IsKnownFromANightWithAHomeRecorderOnly(string recorder, bool known)
    {
        var fact = Read($"nights: [{{ date: 2026-03-01, recorder: {recorder} }}]")["home_test_done"];

        fact.IsKnown.ShouldBe(known);
        if (known)
        {
            fact.Text.ShouldBe("yes");
            fact.Origin.Text.ShouldBe($"{recorder}, night of 2026-03-01");
        }
    }

    [Fact]
    public void HomeTest_OfOneOfSeveralNights_IsEnough() =>
        Read("nights: [{ date: 2026-03-01, recorder: type I }, { date: 2026-03-02, recorder: type III }]")["home_test_done"].Text.ShouldBe("yes");

    [Theory]
    [InlineData("no")]
    [InlineData("yes")]
    public void HomeTest_ThatIsAnswered_StaysAsAnswered(string answer) =>
        Read($"intake: {{ home_test_done: {answer} }}\nnights: [{{ date: 2026-03-01, recorder: type III }}]")["home_test_done"].Text.ShouldBe(answer);

    [Fact]
    public void HomeTest_WithoutANight_IsNotKnown() => Read("intake: { height: 178 cm }")["home_test_done"].IsKnown.ShouldBeFalse();

    private static FactSet Read(string more)
    {
        var vocabulary = ShippedRules.Loading.Library!.Vocabulary;
        var text = $"case: X\nassessed_on: 2026-06-18\npatient: {{ age: 52 years, sex: male }}\n{more}\n";
        var reading = new CaseReader(vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(text)));
        return reading.Case?.Facts ?? throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }
}

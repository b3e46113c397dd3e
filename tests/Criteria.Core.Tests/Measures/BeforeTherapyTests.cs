using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Measures;

/// <summary>The night without therapy supplies what a test on therapy is set against; from what it lacks nothing is concluded.</summary>
public sealed class BeforeTherapyTests
{
    private const string Before = "{ date: 2026-03-01, pap_used: no, recorder: type III, indices: [{ index: REI, hypopnea: 4 %, events: 120, over: 6 h }] }";

    [Fact]
    public void Rate_OfTheOnlyNightWithoutPap_IsTakenByTheSameTypeOfIndex()
    {
        var facts = Read(Before);

        facts["untreated_rate"].Number.ShouldBe(Interval.Exactly(20));
        facts["untreated_rate"].Origin.Text.ShouldBe("REI, 4 % rule, night of 2026-03-01");
        YesNo(facts, "same_rule").ShouldBe("yes");
        YesNo(facts, "same_denominator").ShouldBe("yes");
        YesNo(facts, "same_recorder").ShouldBe("yes");
    }

    [Theory]
    [InlineData("another rule", "REI by 3 %")]
    [InlineData("another denominator", "AHI by 4 %")]
    public void Rate_OfAnIndexThatTheNightDoesNotHave_IsNotKnownAndNothingIsConverted(string _, string type)
    {
        var facts = Read(Before, $"treated_index: {type}");

        facts["untreated_rate"].IsKnown.ShouldBeFalse();
        facts["same_rule"].IsKnown.ShouldBeFalse();
        facts["same_denominator"].IsKnown.ShouldBeFalse();
    }

    [Theory]
    [InlineData("pap_used: yes", true)]
    [InlineData("pap_used: no", false)]
    [InlineData("scoring: manual", false)]
    public void Rate_WithASecondNight_NeedsThatNightToBeOnPap(string second, bool known) =>
        Read($"{Before}, {{ date: 2026-03-02, {second}, indices: [{{ index: REI, hypopnea: 4 %, events: 12, over: 6 h }}] }}")["untreated_rate"].IsKnown.ShouldBe(known);

    [Theory]
    [InlineData("20.0 /h", "20", "20")]
    [InlineData("25.0 /h", "20", "25.05")]
    public void Rate_ThatIsWrittenToo_IsEverythingBetweenWhereBothDisagree(string written, string low, string high)
    {
        var rate = Read(Before, $"treated_index: REI by 4 %, untreated_rate: {written}")["untreated_rate"].Number!.Value;

        rate.Low.ToText(2).ShouldBe(low);
        rate.High.ToText(2).ShouldBe(high);
    }

    [Fact]
    public void Recorder_OfAnotherKind_IsNotTheSame() => YesNo(Read(Before, "treated_index: REI by 4 %, treated_recorder: PAT set"), "same_recorder").ShouldBe("no");

    [Fact]
    public void Same_EnteredAsNo_Stands()
    {
        var facts = Read(Before, "treated_index: REI by 4 %, treated_recorder: type III, same_rule: no, same_recorder: no, same_denominator: yes");

        YesNo(facts, "same_rule").ShouldBe("no");
        YesNo(facts, "same_recorder").ShouldBe("no");
        YesNo(facts, "same_denominator").ShouldBe("yes");
    }

    [Fact]
    public void Entered_WithoutANight_StandsAsItIs()
    {
        var facts = Read("", "untreated_rate: 17.3 /h, same_rule: yes");

        facts["untreated_rate"].Text.ShouldStartWith("17.3 /h as printed");
        YesNo(facts, "same_rule").ShouldBe("yes");
        facts["same_recorder"].IsKnown.ShouldBeFalse();
    }

    [Fact]
    public void Facts_ComputedFromNights_AreThoseOfEachNightToo()
    {
        var subject = Case(Before, "treated_index: REI by 4 %");

        subject.Nights.Single().Facts["untreated_rate"].Number.ShouldBe(subject.Facts["untreated_rate"].Number);
    }

    [Fact]
    public void WithNights_OfChangedNights_ComputesAnew()
    {
        var subject = Case(Before, "treated_index: REI by 4 %");
        var vocabulary = Shipped.Library.Vocabulary;
        var fewer = Fact.Known(vocabulary.Find("rei_4.events")!, new NumberValue(Interval.Exactly(60)), Provenance.Entered);

        var changed = subject.WithNights([subject.Nights[0] with { Facts = subject.Nights[0].Facts.With(fewer) }]);

        changed.Facts["untreated_rate"].Number.ShouldBe(Interval.Exactly(10));
        changed.Nights[0].Facts["untreated_rate"].Number.ShouldBe(Interval.Exactly(10));
        changed.WithNights([]).Facts["untreated_rate"].IsKnown.ShouldBeFalse();
    }

    private static string YesNo(FactSet facts, string id) => facts[id].Text;

    private static FactSet Read(string nights, string followUp = "treated_index: REI by 4 %, treated_recorder: type III") => Case(nights, followUp).Facts;

    private static Case Case(string nights, string followUp)
    {
        var yaml = $"case: HT-TEST\nassessed_on: 2026-06-18\nfollow_up: {{ {followUp} }}\n{(nights.Length == 0 ? "" : $"nights: [{nights}]\n")}";
        var reading = new CaseReader(Shipped.Library.Vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(yaml)));
        return reading.Case ?? throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }
}

using System.Text;
using Criteria.Core.Pasted;
using Criteria.Core.Reading;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Pasted;

/// <summary>Invented layouts, each with its truth: what is plain is read right, what is open asks, nothing is taken wrong.</summary>
public sealed class PastedTextReaderTests
{
    // Ways to print one line: {0} the words, {1} the figure.
    private static readonly string[] Plain =
    [
        "{0}: {1}", "{0} {1}", "{0} = {1}", "{0}\t{1}", "{0}    {1}", "{0} | {1}", "| {0} | {1} |", "{0}; {1}", "{0} ........ {1}", "{0} - {1}", "The {0} was {1}.", "* {0}: {1}", "1. {0}: {1}",
        "{0}\n{1}", "{0}:\n  {1}", "{1} {0}", "Parameter\tValue\n{0}\t{1}", "{0}: {1} (normal < 5)", "Summary of an invented night\n\n{0}: {1}\n\nPage 1 of 2", "| Measure | Value |\n|---|---|\n| {0} | {1} |",
    ];

    private static readonly (string Words, string Figure, string Truth)[] Figures =
    [
        ("REI 4%", "12.1 /h", "rei_4.printed 12.1 /h"), ("REI (3 %)", "17,2/h", "rei_3.printed 17.2 /h"), ("ODI 3 %", "20 events/h", "odi_3.printed 20 /h"), ("ODI >= 4%", "8.0", "odi_4.printed 8.0/h"),
        ("Lowest SpO2", "81 %", "spo2_lowest 81 %"), ("Mean SpO₂ (%)", "93,5", "spo2_mean 93.5 %"), ("Recording time", "7h 12m", "recording_time 7 h 12 min"),
        ("Monitoring time", "07:12:30", "monitoring_time 7 h 12.5 min"), ("Recording time", "7:12", "recording_time 7 h 12 min"), ("T90", "12.3 %", "t90_share 12.3 %"),
        ("Time below 90 %", "52 min", "time_below_90 52 min"), ("Obstructive apneas", "45", "obstructive_apneas 45"), ("Epworth total", "11", "epworth_total 11"), ("Height", "178 cm", "height 178 cm"),
        ("Date of study", "2026-06-03", "night.date 2026-06-03"),
    ];

    // What a person has to answer; none of these may be clear.
    private static readonly string[] Open =
    [
        "AHI: 17.2 /h", "AHI 4%: 17.2", "RDI: 18 /h", "RDI 4 %: 18", "REI: 12.1 /h", "ODI: 20", "SpO2 < 90 %: 12", "T90: 12", "Recording time: 432", "Lowest SpO2: 81", "Lowest SpO2: 0.81", "Time below 90 %: 12:30",
        "Total sleep time: 6 h 40 min", "REI 4%: 12.1 17.2", "REI 4%: 12.1 (17.2)", "REI 4%: 12.1 ?", "REI 4% REM: 12.1", "REI 4% in side sleep: 12.1", "REI 4%: 12.1 /h supine", "REI 4%: 12.1 supine, 8.1 lateral",
        "REI 4%: 12.1\nREI 4%: 13.0", "Lowest SpO2: 95 %\nMean SpO2: 81 %", "Monitoring time: 8 h\nRecording time: 6 h", "Mean SpO2\nLowest SpO2\n81 %\n93 %", "93 %\nMean SpO2\n81 %\nLowest SpO2",
        "REI 4: 12.1", "REI 3%/4%: 17.2/12.1", "REI 4%: 1O.2", "REI 4%: .5", "REI 4%: -5", "REI 4%: < 5", "REI 4%: 5-15", "REI 4%: 1.2.3", "REI 4%: 180 /h", "Lowest SpO2: 20 %", "Lowest SpO2: 120 %",
        "Hypopneas: 18.5 /h", "Hypopneas: 1,234", "Mean SpO2 / Lowest SpO2: 93 % / 81 %", "Normal REI 4%: 5", "Previous REI 4%: 22.0", "REI 4%: 12.1 follow up", "Date of study: 06/03/2026", "Height: 178", "Age: 52", "\tSupine\tOther\nREI 4%\t30.1\t8.2",
        "Night 1\nREI 4%: 12\nNight 2\nREI 4%: 13\n\nLowest SpO2 of both", "17.2 REI 4% 12.1", "Lowest SpO2 79-81 %", "Recording time: 22:45 - 06:12",
    ];

    public static IEnumerable<object[]> Layouts => from layout in Plain from figure in Figures select new object[] { string.Format(System.Globalization.CultureInfo.InvariantCulture, layout, figure.Words, figure.Figure), figure.Truth };

    public static TheoryData<string> OpenTexts => [.. Open];

    [Fact]
    public void Layouts_AreManyMoreThanAHundred() => (Plain.Length * Figures.Length).ShouldBeGreaterThanOrEqualTo(300);

    [Theory]
    [MemberData(nameof(Layouts))]
    public void Layout_OfOneFigure_IsReadRightOrAsks(string text, string truth)
    {
        var clear = Clear(text);

        clear.Where(line => line != truth).ShouldBeEmpty(text);
    }

    // A line of its own with words and figure is the least that has to be read without a question.
    [Theory]
    [MemberData(nameof(Layouts))]
    public void Layout_OfOneFigure_IsFound(string text, string truth) => Read(text).Values.Any(value => value.Readings.Any(reading => Line(reading) == truth)).ShouldBeTrue(text);

    [Fact]
    public void Layouts_OfOneFigure_AreReadWithoutAQuestionAsARule() =>
        Layouts.Count(row => Clear((string)row[0]).Contains((string)row[1])).ShouldBeGreaterThan(Plain.Length * Figures.Length * 9 / 10);

    [Theory]
    [MemberData(nameof(OpenTexts))]
    public void Text_ThatLeavesSomethingOpen_IsNeverClear(string text)
    {
        var clear = Clear(text);

        clear.Where(line => !text.Contains("Night 1", StringComparison.Ordinal)).ShouldBeEmpty(text);
    }

    [Fact]
    public void Table_WithNights_GivesEachItsOwn()
    {
        var values = Read("Parameter\tNight 1\tNight 2\tMean\nREI 4%\t12.1\t15.3\t13.7\n").Values;

        values.Where(value => value.IsClear).Select(value => $"{value.Night}: {value.Readings[0].Value}").ShouldBe(["1: 12.1/h", "2: 15.3/h"]);
    }

    [Fact]
    public void Table_WithNamesInItsHeading_IsReadByColumn() =>
        Clear("REI 4% | Lowest SpO2 (%) | Recording time\n12.1 | 81 | 7h 12m\n").ShouldBe(["rei_4.printed 12.1/h", "spo2_lowest 81 %", "recording_time 7 h 12 min"]);

    [Fact]
    public void Line_WithThreePairs_IsReadPairByPair() =>
        Clear("REI 3 %: 17.2/h, ODI 4 %: 12/h, lowest SpO2 81 %.").ShouldBe(["rei_3.printed 17.2 /h", "odi_4.printed 12 /h", "spo2_lowest 81 %"]);

    [Fact]
    public void Words_OfALine_HoldNoOtherWordOfIt()
    {
        var value = Read("Pat Example, 1970-01-02, REI 4%: 12.1 /h").Values.ShouldHaveSingleItem();

        value.Words.ShouldBe("REI 4 %: 12.1 /h");
        PastedProposal.Write(Read("Pat Example REI 4%: 12.1 /h")).ShouldNotContain("Pat");
    }

    [Theory]
    [InlineData("REI 4%: 12.1\u0007", "p.txt:1:13: error CP0004: a sign that nobody sees (U+0007); type that line anew; such a sign can hide figures or turn them round")]
    [InlineData("REI\u202e 4%: 12.1", "p.txt:1:4: error CP0004: a sign that nobody sees (U+202E); type that line anew; such a sign can hide figures or turn them round")]
    [InlineData(" \n", "p.txt:1:1: error CP0006: the text is empty")]
    [InlineData("Nothing of note.", "p.txt:1:1: warning CP0007: no figure with a name that is known; the words are those of `printed_as` in the vocabulary; `criteria facts` shows them")]
    public void Text_ThatCannotBeRead_SaysWhy(string text, string problem) => Result(Encoding.UTF8.GetBytes(text)).Problems.ShouldSay(problem);

    [Fact]
    public void Text_OfOtherBytesOrTooLong_IsRefused()
    {
        Result([0x41, 0xE9, 0x42]).Problems.Codes().ShouldBe(["CP0005"]);
        Result(Encoding.UTF8.GetBytes(new string('a', 70_000))).Problems.Codes().ShouldBe(["CP0001"]);
        Result(Encoding.UTF8.GetBytes(new string('\n', 3_000) + "a")).Problems.Codes().ShouldBe(["CP0002"]);
        Result(Encoding.UTF8.GetBytes(new string('a', 2_000))).Problems.Codes().ShouldBe(["CP0003"]);
    }

    [Fact]
    public void Read_OfNoise_NeverThrows()
    {
        foreach (var noise in Damage.Mutations(Encoding.UTF8.GetBytes(string.Join('\n', Open)), 300, seed: 5))
        {
            _ = Result(noise);
        }
    }

    private static string[] Clear(string text) => [.. Read(text).Values.Where(value => value.IsClear).Select(value => Line(value.Readings[0]))];

    private static string Line(PastedReading reading) => $"{reading.Fact.Definition.Id} {reading.Value}";

    private static PastedText Read(string text) => Result(Encoding.UTF8.GetBytes(text)).Text.ShouldNotBeNull(text);

    private static PastedReadingResult Result(byte[] content) => new PastedTextReader(Shipped.Vocabulary).Read(new SourceFile("p.txt", content));
}

using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>What was published on how much nights differ stands beside a grade, apart from the counting interval, and changes nothing.</summary>
public sealed class NightToNightTests
{
    private const string Label = "Night to night, published: about ";

    [Fact]
    public void Report_BesideEachGrade_HasTheFirstFigureOnALineOfItsOwn()
    {
        var lines = Command.Run("assess", Command.Example("scoring-rules-disagree")).Out.Split('\n').Select(line => line.Trim()).ToArray();

        var found = lines.Index().Where(line => line.Item.StartsWith(Label, StringComparison.Ordinal)).ToArray();

        found.Length.ShouldBe(2);
        found.ShouldAllBe(line => line.Item.StartsWith(Label + "20 % of", StringComparison.Ordinal));
        found.ShouldAllBe(line => lines[line.Index - 1].Contains("exact Poisson)", StringComparison.Ordinal) || lines[line.Index - 2].Contains("95 %, exact", StringComparison.Ordinal));
    }

    [Fact]
    public void Explain_OfAGrade_HasAllFiguresWithTheirSources()
    {
        var part = Command.Run("explain", Command.Example("clear-severe"), "severity.rei-4").Out.Split("NIGHT TO NIGHT, PUBLISHED")[1].Split("CAUTIONS")[0];

        part.ShouldContain("About 13 % of severe first nights");
        part.ShouldContain("About 20 to 50 % of adults");
        part.ShouldContain("About 41 % of adults");
        part.ShouldContain("Chest 2020, abstract (read).");
        part.ShouldContain("They change no");
    }

    [Fact]
    public void Json_OfAGrade_HasTheFiguresWithTheirSources()
    {
        var figures = AssessedJson.Of(Command.Example("clear-severe")).Finding("severity.rei-4")["night_to_night"]!.AsArray();

        figures.Count.ShouldBe(4);
        figures[1]!["low_percent"]!.GetValue<int>().ShouldBe(20);
        figures[1]!["high_percent"]!.GetValue<int>().ShouldBe(50);
        figures[1]!["cites"]![0]!["source"]!.GetValue<string>().ShouldBe("lec-2022");
    }
}

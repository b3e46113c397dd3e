using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Figures;
using Criteria.Engine;
using Criteria.Engine.Findings;
using SkiaSharp;

namespace Criteria.Documents.Tests.Figures;

/// <summary>The figure shows the value, the bands, their boundaries and the counting interval where they belong, and says the same in words.</summary>
public sealed class SeverityFigureTests
{
    private const double Width = 640;

    private static readonly Lazy<(RulesetLibrary Library, Assessor Assessor)> Rules = new(() =>
    {
        var library = ShippedRules.Loading.Library!;
        return (library, new Assessor(library));
    });

    [Fact]
    public void Svg_OfAMildIndex_HasBandsBoundariesValueAndInterval()
    {
        // 88 events in 6 h: 14.67/h, 95 % exact Poisson 11.8 to 18.1 (table of Poisson limits).
        var texts = Texts(Svg(Figure("per_hour: 14.7, events: 88, over: 6 h")));

        texts.ShouldContain("Grade by REI, 4 % rule: mild");
        texts.ShouldContain("Night of 3 June 2026");
        texts.ShouldContain("14.7/h");
        texts.ShouldContain("11.8");
        texts.ShouldContain("18.1");
        foreach (var word in new[] { "below 5", "mild", "moderate", "severe", "0", "5", "15", "30" })
        {
            texts.Count(text => text == word).ShouldBe(1, word);
        }
    }

    [Fact]
    public void Svg_TheValuesBand_AloneHasBoldWordsAndAHeavyFrame()
    {
        var svg = Svg(Figure("per_hour: 14.7, events: 88, over: 6 h"));

        svg.Descendants().Where(e => e.Name.LocalName == "text" && e.Attribute("font-weight") is not null).Select(e => e.Value)
            .ShouldBe(["Grade by REI, 4 % rule: mild", "mild", "14.7/h"], ignoreOrder: true);
        svg.Descendants().Count(e => e.Name.LocalName == "line" && (string?)e.Attribute("stroke-width") == "3").ShouldBe(4);
    }

    // Bands, marks and boundaries share one scale.
    [Theory]
    [InlineData("per_hour: 15.0, events: 90, over: 6 h", "15")]
    [InlineData("per_hour: 30.0, events: 180, over: 6 h", "30")]
    [InlineData("per_hour: 5.0, events: 30, over: 6 h", "5")]
    public void Svg_AValueOnABoundary_StandsOverItsNumber(string index, string boundary)
    {
        var svg = Svg(Figure(index));
        var number = svg.Descendants().Single(e => e.Name.LocalName == "text" && e.Value == boundary);
        var mark = Number(svg.Descendants().Single(e => e.Name.LocalName == "polygon").Attribute("points")!.Value.Split(',')[0]);

        mark.ShouldBe(Number(number.Attribute("x")!.Value), tolerance: 0.01);
    }

    [Fact]
    public void Svg_AValueBeyondTheScale_SaysSo()
    {
        var texts = Texts(Svg(Figure("per_hour: 120.0, events: 720, over: 6 h")));

        texts.ShouldContain("120.0/h, beyond the scale");
        texts.ShouldContain(text => text.Contains("111.4 to 129.1/h", StringComparison.Ordinal));
    }

    [Fact]
    public void Svg_APrintedIndexAlone_ShowsItsRangeAndBothGrades()
    {
        var figure = Figure("per_hour: 15.0", monitoring: "unknown");
        var svg = Svg(figure);

        Texts(svg).ShouldContain("14.95 to 15.05/h");
        Texts(svg).ShouldContain("Grade by REI, 4 % rule: open, mild to moderate");
        svg.Descendants().Where(e => e.Name.LocalName == "text" && e.Attribute("font-weight") is not null).Select(e => e.Value).ShouldContain("moderate");
        figure.Alternative.ShouldContain("would be mild to moderate; the grade is open. No counting interval");
    }

    // No text may leave the picture or run into another, whatever the value.
    [Theory]
    [InlineData("per_hour: 0.0, events: 0, over: 6 h")]
    [InlineData("per_hour: 0.3, events: 2, over: 6 h")]
    [InlineData("per_hour: 4.0, events: 4, over: 1 h")]
    [InlineData("per_hour: 15.0, events: 90, over: 6 h")]
    [InlineData("per_hour: 44.0, events: 264, over: 6 h")]
    [InlineData("per_hour: 52.0, events: 312, over: 6 h")]
    [InlineData("per_hour: 59.0, events: 354, over: 6 h")]
    [InlineData("per_hour: 62.0, events: 372, over: 6 h")]
    [InlineData("per_hour: 120.0, events: 720, over: 6 h")]
    public void Svg_AnyValue_KeepsItsTextsInsideAndApart(string index)
    {
        var boxes = Svg(Figure(index)).Descendants().Where(e => e.Name.LocalName == "text").Select(Box).ToArray();

        boxes.Length.ShouldBeGreaterThan(8);
        foreach (var box in boxes)
        {
            box.Left.ShouldBeGreaterThanOrEqualTo(0, box.Text);
            box.Right.ShouldBeLessThanOrEqualTo(Width, box.Text);
        }

        foreach (var (one, other) in boxes.SelectMany((one, i) => boxes.Skip(i + 1).Select(other => (one, other))))
        {
            var apart = one.Right <= other.Left || other.Right <= one.Left || one.Bottom <= other.Top || other.Bottom <= one.Top;
            apart.ShouldBeTrue($"{one.Text} / {other.Text}");
        }
    }

    [Fact]
    public void Alternative_NamesValueBandIntervalAndWhatItReaches()
    {
        var words = Figure("per_hour: 14.7, events: 88, over: 6 h").Alternative;

        words.ShouldContain("lies in mild.");
        words.ShouldContain("Counting error alone allows 11.8 to 18.1/h (95 %, exact Poisson). This reaches into moderate.");
        Figure("per_hour: 10.0, events: 60, over: 6 h").Alternative.ShouldContain("This does not leave the band.");
    }

    [Fact]
    public void Svg_HasTitleAndDescription_AndNoColour()
    {
        var figure = Figure("per_hour: 14.7, events: 88, over: 6 h");
        var svg = figure.ToSvg();
        var root = XDocument.Parse(svg).Root!;

        root.Elements().First(e => e.Name.LocalName == "desc").Value.ShouldBe(figure.Alternative);
        root.Attribute("aria-labelledby")!.Value.Split(' ').ShouldBe(root.Elements().Take(2).Select(e => e.Attribute("id")!.Value));
        root.Descendants().Attributes().Where(a => a.Name.LocalName is "fill" or "stroke").Select(a => a.Value).Distinct().ShouldBeSubsetOf(["#000", "#fff"]);
    }

    [Fact]
    public void Png_IsGreyAndShowsWhatTheSvgShows()
    {
        var figure = Figure("per_hour: 14.7, events: 88, over: 6 h");
        using var image = SKBitmap.Decode(figure.ToPng().AsSpan());

        var root = XDocument.Parse(figure.ToSvg()).Root!;
        image.Width.ShouldBe(1920);
        image.Height.ShouldBe((int)(Number(root.Attribute("height")!.Value) * 3));
        image.ColorType.ShouldBe(SKColorType.Gray8);

        // The mark of the value is black in its middle, the paper above the head white.
        var corner = root.Descendants().Single(e => e.Name.LocalName == "polygon").Attribute("points")!.Value.Split(' ').Select(point => point.Split(',').Select(Number).ToArray()).ToArray();
        image.GetPixel((int)(corner[0][0] * 3), (int)(corner[1][1] * 3)).Red.ShouldBe((byte)0);
        image.GetPixel(3, 3).Red.ShouldBe((byte)255);
    }

    [Fact]
    public void Figure_OfTheSameFinding_HasTheSameBytes()
    {
        var (one, other) = (Figure("per_hour: 14.7, events: 88, over: 6 h"), Figure("per_hour: 14.7, events: 88, over: 6 h"));

        one.ToSvg().ShouldBe(other.ToSvg());
        one.ToPng().ShouldBe(other.ToPng());
    }

    [Fact]
    public void Of_AFindingWithoutGradeOrNumber_IsNothing()
    {
        var assessment = Assess("per_hour: 14.7, events: 88, over: 6 h", "6 h");

        SeverityFigure.Of(assessment.Of("severity.rules-disagree").First()).ShouldBeNull();
        SeverityFigure.Of(assessment.Of("severity.rei-3").First()).ShouldBeNull();
    }

    private static SeverityFigure Figure(string index, string monitoring = "6 h") => SeverityFigure.Of(Assess(index, monitoring).Of("severity.rei-4").First())!;

    private static Assessment Assess(string index, string monitoring)
    {
        var yaml = $$"""
            case: HT-TEST
            assessed_on: 2026-06-18
            patient: { age: 52 years }
            nights:
              - date: 2026-06-03
                recorder: type III
                channels: [airflow, nasal_pressure, thoracic_effort, abdominal_effort, oximetry, heart_rate, position, snore]
                scoring: manual
                recording_time: 6 h 30 min
                monitoring_time: {{monitoring}}
                usable: { airflow: 6 h, oximetry: 6 h }
                covers_usual_sleep: yes
                recording_in_fragments: no
                pap_used: no
                predominantly_obstructive: yes
                called_inconclusive: no
                spo2_lowest: 82 %
                spo2_mean: 93 %
                technically_adequate: yes
                indices: [{ index: REI, hypopnea: 4 %, {{index}} }]
            """;
        var reading = new CaseReader(Rules.Value.Library.Vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(yaml)));
        return Rules.Value.Assessor.Assess(reading.Case ?? throw new InvalidOperationException(string.Join('\n', reading.Problems)), new DateOnly(2026, 6, 18));
    }

    private static XElement Svg(SeverityFigure figure) => XDocument.Parse(figure.ToSvg()).Root!;

    private static string[] Texts(XElement svg) => [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    // The widths of the font that the program carries, measured; not the estimate that placed the texts.
    private static (string Text, double Left, double Right, double Top, double Bottom) Box(XElement text)
    {
        var size = Number(text.Attribute("font-size")!.Value);
        using var font = new SKFont(FigureFont.Of(text.Attribute("font-weight") is not null), (float)size);
        var width = font.MeasureText(text.Value);
        var (x, y) = (Number(text.Attribute("x")!.Value), Number(text.Attribute("y")!.Value));
        var left = (string?)text.Attribute("text-anchor") switch { "middle" => x - (width / 2), "end" => x - width, _ => x };
        return (text.Value, left, left + width, y - (size * 0.75), y + (size * 0.2));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

using System.Text;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Reading;

public sealed class TreeReaderTests
{
    public static TheoryData<string> ShippedFiles => [.. ShippedRules.Files().Select(file => file.Name)];

    [Theory]
    [InlineData("{a: 1, b: [x, {c: y}], d: {}}", "{a: 1, b: [x, {c: y}], d: {}}")]
    [InlineData("a: 1\nb:\n  - x\n  - c: y\nd: {}\n", "{a: 1, b: [x, {c: y}], d: {}}")]
    [InlineData("--- # a comment\na: 1\n...\n", "{a: 1}")]
    [InlineData("text: >-\n  one\n  two\n", "{text: one two}")]
    [InlineData("text: |\n  one\n  two\n", "{text: one\ntwo\n}")]
    [InlineData("a: 'it''s'\nb: \"x\\ty\"\n", "{a: it's, b: x\ty}")]
    [InlineData("a:\nb: ~\nc: ''\n", "{a: , b: ~, c: }")]
    public void Read_OfYaml_GivesTheTree(string text, string expected) => Trees.Tree(text).Outline().ShouldBe(expected);

    [Theory]
    [InlineData("""{"a": 1, "b": ["x", {"c": "y"}], "d": {}}""", "{a: 1, b: [x, {c: y}], d: {}}")]
    [InlineData("""{"a": true, "b": false, "c": null, "d": -1.50, "e": 1e3}""", "{a: true, b: false, c: , d: -1.50, e: 1e3}")]
    [InlineData("""{"a": "x\ty \u00e9"}""", "{a: x\ty é}")]
    [InlineData("[]", "[]")]
    [InlineData("\"x\"", "x")]
    public void Read_OfJson_GivesTheSameTree(string text, string expected) => Trees.Tree(text, "file.json").Outline().ShouldBe(expected);

    [Theory]
    [InlineData("{\"a\": 1}", "{a: 1}")]
    [InlineData("{a: 1}", "{a: 1}")]
    public void Read_OfAFileWithoutExtension_TakesWhatItIs(string text, string expected) => Trees.Tree(text, "case").Outline().ShouldBe(expected);

    [Fact]
    public void Read_OfAByteOrderMark_LeavesItOut()
    {
        var (tree, problems) = Trees.Read([0xEF, 0xBB, 0xBF, .. "a: 1"u8]);

        problems.ShouldSay();
        tree!.Scalars().First().Span.ShouldBe(new SourceSpan("file.yaml", 1, 1, 1, 2));
    }

    // Every plain word of every shipped file stands where its place says.
    [Theory]
    [MemberData(nameof(ShippedFiles))]
    public void Places_OfEveryScalarInYaml_AreWhereItsTextStands(string name)
    {
        var text = Encoding.UTF8.GetString(ShippedRules.Files().Single(file => file.Name == name).Content.Span);

        PlacesShouldHold(Trees.Tree(text, name), text);
    }

    [Theory]
    [MemberData(nameof(ShippedFiles))]
    public void Places_OfEveryScalarInJson_AreWhereItsTextStands(string name)
    {
        var yaml = Encoding.UTF8.GetString(ShippedRules.Files().Single(file => file.Name == name).Content.Span);
        var json = Trees.Tree(yaml, name).ToJson();

        PlacesShouldHold(Trees.Tree(json, "file.json"), json);
    }

    [Theory]
    [InlineData("file.yaml", "a: é\nbö: [ü, \"ß\", x]\n")]
    [InlineData("file.yaml", "{é: 😀, b: 1}")]
    [InlineData("file.yaml", "a: 1\r\nb:\r\n  - c: 2\r\n")]
    [InlineData("file.json", "{\"é\": \"😀\",  \"b\": [1, 2], \"ü\": 3}")]
    [InlineData("file.json", "{\r\n  \"a\": 1,\r\n  \"b\": [\r\n    2]}")]
    public void Places_BehindOtherLetters_CountCharacters(string name, string text) => PlacesShouldHold(Trees.Tree(text, name), text);

    [Fact]
    public void Places_OfAKeyInTheMiddleOfALine_CountFromOne()
    {
        var tree = (MapNode)Trees.Tree("a: 1\nb: { c: 2, d: [3, 44] }\n");

        var inner = (MapNode)tree["b"]!;
        (inner.Span.Line, inner.Span.Column).ShouldBe((2, 4));
        ShouldStand(inner.Find("d")!.KeySpan, 12, 13);
        ShouldStand(((ListNode)inner["d"]!).Items[1].Span, 19, 21);

        static void ShouldStand(SourceSpan span, int column, int end) => (span.Line, span.Column, span.EndLine, span.EndColumn).ShouldBe((2, column, 2, end));
    }

    [Fact]
    public void Part_OfAPlainText_IsThePlaceOfThatPart()
    {
        var scalar = (ScalarNode)((MapNode)Trees.Tree("a: neck >= 43 cm\n"))["a"]!;

        scalar.Part(8, 5).ShouldBe(new SourceSpan("file.yaml", 1, 12, 1, 17));
    }

    [Theory]
    [InlineData("a: \"neck >= 43 cm\"\n", 1, 4)]
    [InlineData("a: neck\n  >= 43 cm\n", 1, 4)]
    public void Part_OfAQuotedOrBrokenText_IsTheWholePlace(string text, int line, int column)
    {
        var scalar = (ScalarNode)((MapNode)Trees.Tree(text))["a"]!;

        scalar.Part(8, 5).ShouldBe(scalar.Span);
        (scalar.Span.Line, scalar.Span.Column).ShouldBe((line, column));
    }

    private static void PlacesShouldHold(Node tree, string text)
    {
        var lines = text.Split('\n');
        var scalars = tree.Scalars().Where(scalar => scalar.Span.Line == scalar.Span.EndLine && scalar.Text.Length > 0).ToArray();
        scalars.ShouldNotBeEmpty();
        foreach (var scalar in scalars)
        {
            var written = lines[scalar.Span.Line - 1][(scalar.Span.Column - 1)..(scalar.Span.EndColumn - 1)];
            if (written[0] is '"')
            {
                written.ShouldEndWith("\"");
                written = System.Text.Json.JsonSerializer.Deserialize<string>(written)!;
            }

            written.ShouldBe(scalar.Text, scalar.Span.ToString());
        }
    }
}

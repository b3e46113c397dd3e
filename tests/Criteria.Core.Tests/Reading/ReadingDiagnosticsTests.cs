using System.Text;
using Criteria.Core.Reading;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Reading;

/// <summary>What is said of a file whose form is wrong, whatever it is about.</summary>
public sealed class ReadingDiagnosticsTests
{
    [Theory]
    [InlineData("a: [1", "file.yaml:2:1: error CD0001: not readable: while parsing a flow sequence, did not find expected ',' or ']'; indent with spaces, and quote a text that holds `: ` or ` #`")]
    [InlineData("a: \"x", "file.yaml:1:4: error CD0001: not readable: while scanning a quoted scalar, found unexpected end of stream; indent with spaces, and quote a text that holds `: ` or ` #`")]
    [InlineData("a: b: c", "file.yaml:1:5: error CD0001: not readable: while scanning a plain scalar value, found invalid mapping; indent with spaces, and quote a text that holds `: ` or ` #`")]
    [InlineData("a: 1\nb", "file.yaml:2:1: error CD0001: not readable: while scanning a simple key, could not find expected ':'; indent with spaces, and quote a text that holds `: ` or ` #`")]
    [InlineData("a: &x 1", "file.yaml:1:4: error CD0005: anchor or alias `x`; write the value out; anchors and aliases are not used")]
    [InlineData("a: *x", "file.yaml:1:4: error CD0005: anchor or alias `x`; write the value out; anchors and aliases are not used")]
    [InlineData("a: !!int 1", "file.yaml:1:4: error CD0006: tag `tag:yaml.org,2002:int`; leave the tag out; the vocabulary says what kind a value is")]
    [InlineData("a: !secret {b: 1}", "file.yaml:1:4: error CD0006: tag `!secret`; leave the tag out; the vocabulary says what kind a value is")]
    [InlineData("a: 1\nb: 2\na: 3\n", "file.yaml:3:1: error CD0007: the key `a` stands twice; the first is on line 1")]
    [InlineData("? [x]\n: 1\n", "file.yaml:1:3: error CD0008: a key that is not a plain word")]
    [InlineData("? {x: 1}\n: 1\n", "file.yaml:1:3: error CD0008: a key that is not a plain word")]
    [InlineData("", "file.yaml:1:1: error CD0009: the file is empty")]
    [InlineData("  \n\n", "file.yaml:1:1: error CD0009: the file is empty")]
    [InlineData("# nothing but a remark\n", "file.yaml:1:1: error CD0009: the file is empty")]
    [InlineData("a: 1\n---\nb: 2\n", "file.yaml:2:1: error CD0010: a second document after `---`; one document a file")]
    [InlineData("a: x\0y", "file.yaml:1:1: error CD0012: not a text in UTF-8; save the file as UTF-8 text")]
    public void Read_OfBrokenYaml_SaysWhatAndWhere(string text, string expected)
    {
        var (_, problems) = Trees.Read(text);

        problems.ShouldSay(expected);
    }

    [Theory]
    [InlineData("{\"a\": 1", "file.json:1:8: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": 1} x", "file.json:1:10: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": 1} {\"b\": 2}", "file.json:1:10: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\n  \"é\": \"ü\", b\n}", "file.json:2:13: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": 1,}", "file.json:1:9: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": 01}", "file.json:1:8: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": \"\\ud800\"}", "file.json:1:7: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData("{\"a\": 1,\n \"b\": 2, \"a\": 3}", "file.json:2:10: error CD0007: the key `a` stands twice; the first is on line 1")]
    [InlineData("// remark\n{}", "file.json:1:1: error CD0001: not readable: broken JSON; quote every key and every text, and put a comma between two entries but none after the last")]
    [InlineData(" ", "file.json:1:1: error CD0009: the file is empty")]
    public void Read_OfBrokenJson_SaysWhatAndWhere(string text, string expected)
    {
        var (_, problems) = Trees.Read(text, "file.json");

        problems.ShouldSay(expected);
    }

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 })] // UTF-16 with its mark
    [InlineData(new byte[] { 0x61, 0x3A, 0x20, 0xE9 })] // Latin-1
    [InlineData(new byte[] { 0xC0, 0x80 })] // overlong
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 })] // a lone surrogate
    [InlineData(new byte[] { 0x61, 0x3A, 0x20, 0x00 })]
    public void Read_OfBytesThatAreNoText_SaysSo(byte[] bytes)
    {
        var (tree, problems) = Trees.Read(bytes);

        tree.ShouldBeNull();
        problems.ShouldSay("file.yaml:1:1: error CD0012: not a text in UTF-8; save the file as UTF-8 text");
    }

    [Theory]
    [InlineData("file.yaml")]
    [InlineData("file.json")]
    public void Read_NestedTo32Levels_IsRead(string name)
    {
        var (tree, problems) = Trees.Read(new string('[', 32) + "1" + new string(']', 32), name);

        problems.ShouldSay();
        tree!.Scalars().Single().Text.ShouldBe("1");
    }

    [Theory]
    [InlineData("file.yaml", 33)]
    [InlineData("file.json", 33)]
    [InlineData("file.yaml", 10_000)]
    [InlineData("file.json", 10_000)]
    public void Read_NestedDeeper_SaysSoAtTheFirstTooDeep(string name, int levels)
    {
        var (tree, problems) = Trees.Read(new string('[', levels) + "1" + new string(']', levels), name);

        tree.ShouldBeNull();
        problems.ShouldSay($"{name}:1:34: error CD0002: nested more than 32 levels deep");
    }

    [Theory]
    [InlineData("- ")]
    [InlineData("? ")]
    public void Read_NestedInBlocksOf10000Levels_SaysSo(string opening)
    {
        var (tree, problems) = Trees.Read(string.Concat(Enumerable.Repeat(opening, 10_000)) + "1");

        tree.ShouldBeNull();
        problems.ShouldSay("file.yaml:1:67: error CD0002: nested more than 32 levels deep");
    }

    [Theory]
    [InlineData("file.yaml", "a: {0}", 4)]
    [InlineData("file.yaml", "a: \"{0}\"", 4)]
    [InlineData("file.yaml", "{0}: 1", 1)]
    [InlineData("file.json", "{{\"a\": \"{0}\"}}", 7)]
    [InlineData("file.json", "{{\"{0}\": 1}}", 2)]
    public void Read_OfAHugeText_SaysSo(string name, string form, int column)
    {
        var longest = string.Format(System.Globalization.CultureInfo.InvariantCulture, form, new string('x', 900));
        var huge = string.Format(System.Globalization.CultureInfo.InvariantCulture, form, new string('x', ReadingBounds.LongestText + 1));

        Trees.Read(longest, name).Problems.ShouldSay();
        Trees.Read(huge, name).Problems.ShouldSay($"{name}:1:{column}: error CD0004: a text of more than 20000 characters");
    }

    [Fact]
    public void Read_OfAHugeFile_SaysSo()
    {
        var (tree, problems) = Trees.Read(Encoding.UTF8.GetBytes("a: " + new string('\n', (int)ReadingBounds.LargestFile)));

        tree.ShouldBeNull();
        problems.ShouldSay("file.yaml:1:1: error CD0003: the file is larger than 4096 KiB");
    }

    [Theory]
    [InlineData("file.yaml")]
    [InlineData("file.json")]
    public void Read_OfTooManyValues_SaysSoOnce(string name)
    {
        var text = "[" + string.Join(',', Enumerable.Repeat("1", ReadingBounds.MostValues + 5)) + "]";

        Trees.Read(text, name).Problems.ShouldSay($"{name}:1:{2 * ReadingBounds.MostValues}: error CD0013: more than 200000 values");
    }

    [Fact]
    public void Read_OfAnAliasBomb_StopsAtTheFirstAnchors()
    {
        var text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 40; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 9))}]\n");
        }

        var (tree, problems) = Trees.Read(text.ToString());

        tree!.Scalars().Count().ShouldBeLessThan(1000);
        problems.Count.ShouldBe(DiagnosticBag.MostPerFile + 1);
        problems.Select(problem => problem.Code).Distinct().Order().ShouldBe(["CD0005", "CD0011"]);
    }

    [Fact]
    public void Problems_BeyondTheMost_AreNotListed()
    {
        var bag = new DiagnosticBag();

        for (var line = 1; line <= DiagnosticBag.MostPerFile + 50; line++)
        {
            bag.Add(ReadingDiagnostics.KeyNotText(new SourceSpan("a.yaml", line, 1, line, 2)));
        }

        bag.Add(ReadingDiagnostics.KeyNotText(new SourceSpan("b.yaml", 1, 1, 1, 2)));
        var problems = bag.Ordered();
        problems.Count.ShouldBe(DiagnosticBag.MostPerFile + 2);
        problems.Single(problem => problem.Code == "CD0011").ToString()
            .ShouldBe("a.yaml:1:1: error CD0011: more than 200 problems; the rest is not listed");
        problems[^1].Span.File.ShouldBe("b.yaml");
    }

    [Fact]
    public void Problems_BeyondTheMost_AreAnErrorEvenWhenEachIsAWarning()
    {
        var bag = new DiagnosticBag();

        for (var line = 1; line <= DiagnosticBag.MostPerFile; line++)
        {
            bag.Add(Warning("CZ0001", "a.yaml", line, 1));
        }

        (bag.HasErrors, bag.IsFull("a.yaml")).ShouldBe((false, false));
        bag.Add(Warning("CZ0001", "a.yaml", 999, 1));
        (bag.HasErrors, bag.IsFull("a.yaml"), bag.IsFull("b.yaml")).ShouldBe((true, true, false));
    }

    [Fact]
    public void Add_OfALongTextOfManyLines_KeepsItToOneLine()
    {
        var bag = new DiagnosticBag();

        bag.Add(Warning("CZ0001", "a.yaml", 1, 1) with { Message = "a\nb\u2028c\u202ed" + new string('x', 1000), Help = "e\rf" });

        var problem = bag.Ordered()[0];
        problem.Message.ShouldStartWith("a b c dxxx");
        problem.Message.ShouldEndWith("x...");
        problem.Message.Length.ShouldBe(403);
        problem.Help.ShouldBe("e f");
    }

    [Fact]
    public void Ordered_WhateverTheOrderOfReport_IsByFileLineColumnAndCode()
    {
        var bag = new DiagnosticBag();
        bag.Add(Warning("CZ0002", "b.yaml", 2, 1));
        bag.Add(Warning("CZ0002", "a.yaml", 1, 5));
        bag.Add(Warning("CZ0001", "b.yaml", 2, 1));
        bag.Add(Warning("CZ0009", "b.yaml", 1, 9));

        bag.Ordered().ShouldSay(
            "b.yaml:1:9: warning CZ0009: x", "b.yaml:2:1: warning CZ0001: x", "b.yaml:2:1: warning CZ0002: x", "a.yaml:1:5: warning CZ0002: x");
        bag.HasErrors.ShouldBeFalse();
    }

    [Theory]
    [InlineData(Severity.Error, "f:1:2: error CZ0001: what; how")]
    [InlineData(Severity.Warning, "f:1:2: warning CZ0001: what; how")]
    [InlineData(Severity.Hint, "f:1:2: hint CZ0001: what; how")]
    public void ToString_OfAProblem_IsOneLine(Severity severity, string expected) =>
        new Diagnostic("CZ0001", severity, "what", new SourceSpan("f", 1, 2, 1, 3), "how").ToString().ShouldBe(expected);

    private static Diagnostic Warning(string code, string file, int line, int column) =>
        new(code, Severity.Warning, "x", new SourceSpan(file, line, column, line, column + 1));
}

using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Cases;

/// <summary>A case that was written is read as the same case.</summary>
public sealed class CaseWriterTests
{
    public static TheoryData<string> CaseFiles => [.. Repository.Files("examples", "case.yaml"), "docs/samples/case.yaml", "rulesets/cases/ordinary.yaml"];

    [Theory]
    [MemberData(nameof(CaseFiles))]
    public void Write_OfACaseFile_IsReadAsTheSameCase(string file) => ShouldComeBack(Repository.Text(file));

    [Theory]
    [InlineData("A: colon # and hash")]
    [InlineData("\"quoted\" and 'single' and \\ slash")]
    [InlineData("[a, b] {c: d} & * ! | > % @ `")]
    [InlineData("- dash")]
    [InlineData("Zo\u00eb \u4e2d \ud83d\ude00")]
    [InlineData(" spaces around ")]
    [InlineData("true")]
    [InlineData("~")]
    public void Write_OfAnyText_IsReadAsTheSameText(string text)
    {
        var fact = Shipped.Vocabulary.Facts.First(fact => fact is { Kind: FactKind.Text, Scope: FactScope.Case });
        var subject = new Case("K-1", null, FactSet.Of(Shipped.Vocabulary, [Fact.Known(fact, new TextValue(text), Provenance.Entered)]), []);

        Read(CaseWriter.Write(subject)).Facts[fact].Text.ShouldBe(text);
    }

    [Theory]
    [InlineData("patient: { age: 52 years }\n")]
    [InlineData("intake: { height: 5 ft 10 in, weight: { value: 229 lb, from: \"visit: p.2\" }, conditions: { hypertension: yes, stroke_history: unknown, others: no, reviewed_by: \"R: on 2026-05-20\" } }\n")]
    [InlineData("intake: { symptoms: { habitual_snoring: not applicable } }\nnights: [{}, { channels: [oximetry] }, { channels: { oximetry: unknown, others: no, reviewed_by: me } }]\n")]
    [InlineData("nights: [{ indices: [{ index: ODI, desaturation: 4 %, per_hour: unknown, events: { value: 12, from: report p.1 } }] }]\n")]
    [InlineData("documents: [{ others: no, reviewed_by: me }]\ntherapy: [{ id: t, kind: PAP, nightly_use: [5 h 10 min, 0.33 h, unknown] }]\n")]
    public void Write_OfAnUnusualForm_IsReadAsTheSameCase(string text) => ShouldComeBack("case: K-1\n" + text);

    private static void ShouldComeBack(string text)
    {
        var first = Read(text);

        var written = CaseWriter.Write(first);
        var second = Read(written);

        CaseWriter.Write(second).ShouldBe(written);
        Lines(second).ShouldBe(Lines(first));
    }

    private static Case Read(string text)
    {
        var reading = new CaseReader(Shipped.Vocabulary).Read(Texts.File("case.yaml", text));
        return reading.Case.ShouldNotBeNull(string.Join('\n', reading.Problems) + "\n" + text);
    }

    // What a list of words closes is told as `others: no` when a part of it is unknown.
    private static string[] Lines(Case subject) =>
    [
        $"{subject.Key} {subject.AssessedOn}",
        .. subject.Facts.Entered.Select(Line),
        .. subject.Nights.SelectMany(night => night.Facts.Entered.Select(fact => $"{night.Label} {Line(fact)}")),
        .. subject.Facts.Records.SelectMany(list => list.Items.SelectMany(record => record.Attributes.Select(fact => $"{list.Definition.At} {record.Id} {record.Kind} {Line(fact)}"))),
        .. subject.Facts.Records.Select(list => $"{list.Definition.At} {list.ClosedBy}"),
    ];

    private static string Line(Fact fact) => $"{fact.Definition.Id} {fact.State} {fact.Text} {fact.Number} {fact.Origin}";
}

using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Cases;

/// <summary>Whatever the bytes: the reader never throws, says why there is no case, and says it in one line a problem.</summary>
public sealed class CaseReaderFuzzTests
{
    private const string Valid = """
        case: T-1
        assessed_on: 2026-06-18
        patient: { age: 52 years, sex: male }
        intake:
          height: 5 ft 10 in
          weight: { value: 229 lb, from: visit p.2 }
          neck: 43 cm
          conditions: { hypertension: yes, others: no, reviewed_by: clinician on 2026-05-20 }
        nights:
          - date: 2026-06-03
            recording_time: 432 min
            channels: [airflow, oximetry]
            usable: { airflow: 6 h 40 min, oximetry: 6 h 55 min }
            indices:
              - { index: REI, hypopnea: 4 %, per_hour: 14.6, events: 101, over: 6 h 55 min }
        documents:
          - { id: visit, kind: visit note, date: 2026-05-20, signed: yes, pages: 3 }
          - { others: no, reviewed_by: "staff" }
        therapy:
          - { id: pap-1, kind: PAP, start: 2026-06-20 }
        """;

    private static readonly byte[] Yaml = Encoding.UTF8.GetBytes(Valid);

    private static readonly byte[] Json = Encoding.UTF8.GetBytes(Trees.Tree(Valid).ToJson());

    public static TheoryData<string> Names => ["case.yaml", "case.json", "case"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_OfNoise_NeverThrows(string name) => ShouldHold(name, Damage.Noise(400, seed: 11));

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_OfEveryBeginning_NeverThrows(string name) => ShouldHold(name, Damage.Beginnings(ContentOf(name), 400));

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_OfADamagedCase_NeverThrows(string name) => ShouldHold(name, Damage.Mutations(ContentOf(name), 1200, seed: 12));

    [Fact]
    public void Read_WithAWrongKindOfValueAnywhere_NeverThrows()
    {
        var tree = Trees.Tree(Valid);
        string[] wrong = ["[]", "{}", "''", "~", "[[1]]", "{ a: 1 }", "{ value: [1] }", "{ value: { value: 1 } }", "{ from: [1] }", "-1", "1e400", "0x1F", "2026-13-01", "unknown", "not applicable", "yes"];
        var texts = from scalar in tree.Scalars() from word in wrong select Replaced(scalar.Span, word);

        ShouldHold("case.yaml", texts.Select(Encoding.UTF8.GetBytes));
    }

    [Fact]
    public void Read_WithEveryLineTwice_SaysWhatStandsTwice()
    {
        var lines = Valid.Split('\n');
        var texts = lines.Select((line, place) => string.Join('\n', lines.Take(place + 1).Append(line).Concat(lines.Skip(place + 1))));

        ShouldHold("case.yaml", texts.Select(Encoding.UTF8.GetBytes));
    }

    [Theory]
    [InlineData("case: {0}")]
    [InlineData("case: T-1\n{0}: 1")]
    [InlineData("case: T-1\nintake: {{ {0}: 1 }}")]
    [InlineData("case: T-1\nintake: {{ neck: {0} }}")]
    [InlineData("case: T-1\nintake: {{ neck: {{ value: 43 cm, from: {0} }} }}")]
    [InlineData("case: T-1\nintake: {{ conditions: {{ others: {0} }} }}")]
    [InlineData("case: T-1\nintake: {{ conditions: {{ others: no, reviewed_by: {0} }} }}")]
    [InlineData("case: T-1\npatient: {{ sex: {0} }}")]
    [InlineData("case: T-1\nassessed_on: {0}")]
    [InlineData("case: T-1\ndocuments: [{{ id: {0}, kind: {0} }}, {{ id: {0}, kind: order }}]")]
    [InlineData("case: T-1\ndocuments: [{{ others: no, {0}: 1, reviewed_by: a }}]")]
    [InlineData("case: T-1\nnights: [{{ indices: [{{ index: {0}, hypopnea: {0} }}] }}]")]
    [InlineData("case: &{0} T-1")]
    [InlineData("case: !{0} T-1")]
    public void Read_OfLongTexts_CutsThemInMessages(string form)
    {
        string[] texts = [new string('9', 900), new string('x', 900), "\"" + new string('x', 5000) + "\"", "\"a\\nb\\r\\tc\\u2028d\\0e\"", "\"" + string.Concat(Enumerable.Repeat("\ud83d\ude00", 70)) + "\""];

        ShouldHold("case.yaml", texts.Select(text => Encoding.UTF8.GetBytes(string.Format(System.Globalization.CultureInfo.InvariantCulture, form, text))));
    }

    [Fact]
    public void Read_OfVeryManyUnknownKeys_ListsTheFirst()
    {
        var text = new StringBuilder("case: T-1\n");
        for (var i = 0; i < 60_000; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"hypertension_of_another_kind_{i}: 1\n");
        }

        var reading = Tiny.Read(text.ToString());

        reading.Case.ShouldBeNull();
        reading.Problems.Length.ShouldBe(DiagnosticBag.MostPerFile + 1);
    }

    private static byte[] ContentOf(string name) => name == "case.yaml" ? Yaml : Json;

    private static string Replaced(SourceSpan span, string word)
    {
        var lines = Valid.Split('\n');
        lines[span.Line - 1] = lines[span.Line - 1][..(span.Column - 1)] + word + lines[span.Line - 1][(span.EndColumn - 1)..];
        return string.Join('\n', lines);
    }

    private static void ShouldHold(string name, IEnumerable<byte[]> contents)
    {
        var reader = new CaseReader(Tiny.Vocabulary);
        foreach (var content in contents)
        {
            var reading = Should.NotThrow(() => reader.Read(new SourceFile(name, content)), Encoding.UTF8.GetString(content));

            (reading.Case is null).ShouldBe(reading.Problems.Any(problem => problem.Severity == Severity.Error), Encoding.UTF8.GetString(content));
            reading.Problems.ShouldBeWellWorded();
        }
    }
}

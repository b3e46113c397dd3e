using Criteria.Core.Facts;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests.Cases;

public sealed class CaseReaderTests
{
    private const string Whole = """
        case: T-1
        assessed_on: 2026-06-18
        patient: { age: 52 years, sex: male, note: "a remark: short" }
        intake:
          height: 5 ft 10 in
          weight: { value: 229 lb, from: visit p.2 }
          neck: unknown
          epworth: not applicable
          conditions: { hypertension: { value: yes, from: visit p.3 }, others: no, reviewed_by: clinician on 2026-05-20 }
          symptoms: { snoring: no }
        nights:
          - date: 2026-06-05
            recording_time: 7 h 30 min
            spo2_lowest: 0.81 fraction
            channels: [airflow]
            indices:
              - { index: ODI, desaturation: 4%, per_hour: 12.0 }
          - date: 2026-06-03
            recording_time: 432 min
            monitoring_time: 6 h 55 min
            usable: { airflow: 6 h 40 min, oximetry: 6 h 55 min }
            indices:
              - { index: REI, hypopnea: 4 %, per_hour: 14.6, events: 101, over: 6 h 55 min }
        documents:
          - { id: visit, kind: visit note, date: 2026-05-20, author: physician, signed: yes, in_person: yes, pages: 3 }
          - { id: again, kind: visit note, signed: 2026-05-28 }
          - { others: no, reviewed_by: staff }
        therapy:
          - { id: pap-1, kind: PAP, start: 2026-06-20 }
        """;

    [Fact]
    public void Read_OfAWholeCase_KeepsKeyDateAndNights()
    {
        var read = Tiny.Case(Whole);

        read.Key.ShouldBe("T-1");
        read.AssessedOn.ShouldBe(new DateOnly(2026, 6, 18));
        read.RulesDate.ShouldBe(new DateOnly(2026, 6, 18));
        read.Nights.Select(night => night.Label).ShouldBe(["2026-06-03", "2026-06-05"]);
    }

    [Theory]
    [InlineData("age", "52 years")]
    [InlineData("sex", "male")]
    [InlineData("note", "a remark: short")]
    [InlineData("height", "177.8 cm (5 ft 10 in)")]
    [InlineData("weight", "103.87 kg (229 lb)")]
    [InlineData("neck", "unknown")]
    [InlineData("epworth", "does not apply")]
    [InlineData("hypertension", "yes")]
    [InlineData("stroke", "no")]
    [InlineData("snoring", "no")]
    [InlineData("visit_date", "not in the case")]
    public void Facts_OfAWholeCase_AreThoseWritten(string id, string expected) => Tiny.Case(Whole).Facts[id].Text.ShouldBe(expected);

    [Theory]
    [InlineData("recording_time", "7 h 12 min")]
    [InlineData("usable.airflow", "6 h 40 min")]
    [InlineData("adequate_time", "6 h 40 min")]
    [InlineData("rei_4", "14.6/h")]
    [InlineData("rei_4.events", "101")]
    [InlineData("rei_4.time", "6 h 55 min")]
    [InlineData("rei_3", "not in the case")]
    [InlineData("channel_airflow", "not in the case")]
    [InlineData("hypertension", "yes")]
    public void Facts_OfANight_AreItsOwnAndThoseOfTheCase(string id, string expected) => Tiny.Case(Whole).Nights[0].Facts[id].Text.ShouldBe(expected);

    [Theory]
    [InlineData("spo2_lowest", "81 %")]
    [InlineData("odi_4", "12.0/h as printed, which stands for 11.95 to below 12.05")]
    [InlineData("channel_airflow", "yes")]
    [InlineData("channel_oximetry", "no")]
    public void Facts_OfAnotherNight_DoNotMix(string id, string expected) => Tiny.Case(Whole).Nights[1].Facts[id].Text.ShouldBe(expected);

    [Theory]
    [InlineData("neck", FactState.Unknown)]
    [InlineData("epworth", FactState.NotApplicable)]
    [InlineData("visit_date", FactState.Absent)]
    [InlineData("snoring", FactState.Known)]
    public void State_OfAFact_TellsUnknownNotApplicableAbsentAndKnownApart(string id, FactState expected)
    {
        var fact = Tiny.Case(Whole).Facts[id];

        fact.State.ShouldBe(expected);
        (fact.Value is not null).ShouldBe(expected == FactState.Known);
    }

    [Theory]
    [InlineData("weight", OriginKind.Document, "visit p.2")]
    [InlineData("hypertension", OriginKind.Document, "visit p.3")]
    [InlineData("stroke", OriginKind.ClosedList, "list closed by clinician on 2026-05-20")]
    [InlineData("snoring", OriginKind.Entered, "")]
    [InlineData("bmi", OriginKind.Computed, "computed from 103.87 kg (229 lb) and 177.8 cm (5 ft 10 in)")]
    public void Origin_OfAFact_SaysWhereItCameFrom(string id, OriginKind kind, string words)
    {
        var origin = Tiny.Case(Whole).Facts[id].Origin;

        (origin.Kind, origin.Words).ShouldBe((kind, words));
    }

    [Fact]
    public void Others_InAClosedGroup_LeaveWhatIsWrittenAlone()
    {
        var facts = Tiny.Case("case: T-1\nintake: { conditions: { stroke: unknown, hypertension: not applicable, others: no, reviewed_by: clinician } }\n").Facts;

        facts["stroke"].State.ShouldBe(FactState.Unknown);
        facts["hypertension"].State.ShouldBe(FactState.NotApplicable);
        facts["insomnia"].Text.ShouldBe("no");
    }

    [Fact]
    public void Conditions_InAnOpenGroup_AreUnknownNeverNo()
    {
        var facts = Tiny.Case("case: T-1\nintake: { conditions: { stroke: yes } }\n").Facts;

        facts["insomnia"].State.ShouldBe(FactState.Absent);
    }

    [Fact]
    public void Documents_OfACase_AreInTheOrderOfTheirIdsAndClosed()
    {
        var read = Tiny.Case(Whole);

        var documents = read.Facts.RecordsOf(read.Facts.Vocabulary.Record("documents")!);
        documents.Items.Select(document => document.Id).ShouldBe(["again", "visit"]);
        documents.ClosedBy.ShouldBe("staff");
        var signed = documents.Definition.Attribute("signed")!;
        documents.Items[0][signed].Value.ShouldBe(new DateValue(new DateOnly(2026, 5, 28)));
        documents.Items[1][signed].Value.ShouldBe(new YesNoValue(true));
        documents.Items[0][documents.Definition.Attribute("date")!].State.ShouldBe(FactState.Absent);
        read.Facts.RecordsOf(read.Facts.Vocabulary.Record("therapy")!).ClosedBy.ShouldBeNull();
    }

    [Fact]
    public void Nights_WithoutADate_ComeLastAndAreNumbered()
    {
        var read = Tiny.Case("case: T-1\nnights:\n  - recording_time: 7 h\n  - date: 2026-06-03\n");

        read.Nights.Select(night => night.Label).ShouldBe(["2026-06-03", "night 1"]);
    }

    [Fact]
    public void Read_OfTheSameCaseInJson_GivesTheSameCase()
    {
        var json = Trees.Tree(Whole).ToJson();

        var (yamlCase, jsonReading) = (Tiny.Case(Whole), Tiny.Read(json, "case.json"));

        jsonReading.Problems.ShouldSay();
        Describe(jsonReading.Case!).ShouldBe(Describe(yamlCase));
    }

    [Fact]
    public void Read_WithTheKeysInAnotherOrder_GivesTheSameCase()
    {
        var parts = Whole.Split('\n').Aggregate(new List<string>(), (blocks, line) =>
        {
            if (!line.StartsWith(' '))
            {
                blocks.Add("");
            }

            blocks[^1] += line + "\n";
            return blocks;
        });

        var reversed = Tiny.Case(string.Concat(Enumerable.Reverse(parts)));

        Describe(reversed).ShouldBe(Describe(Tiny.Case(Whole)));
    }

    [Fact]
    public void Read_WithWindowsLineEnds_GivesTheSameCase() =>
        Describe(Tiny.Case(Whole.ReplaceLineEndings("\r\n"))).ShouldBe(Describe(Tiny.Case(Whole)));

    [Theory]
    [InlineData("true", "yes")]
    [InlineData("yes", "yes")]
    [InlineData("false", "no")]
    [InlineData("no", "no")]
    public void YesNo_WrittenEitherWay_MeansTheSame(string written, string expected) =>
        Tiny.Case($"case: T-1\nintake: {{ symptoms: {{ snoring: {written} }} }}\n").Facts["snoring"].Text.ShouldBe(expected);

    [Theory]
    [InlineData("Yes")]
    [InlineData("y")]
    [InlineData("on")]
    [InlineData("1")]
    public void YesNo_WrittenOtherwise_IsNoAnswer(string written) =>
        Tiny.Read($"case: T-1\nintake: {{ symptoms: {{ snoring: {written} }} }}\n").Problems.Codes().ShouldBe(["CC0115"]);

    [Fact]
    public void Read_OfNull_IsRefused()
    {
        Should.Throw<ArgumentNullException>(() => new Core.Cases.CaseReader(null!));
        Should.Throw<ArgumentNullException>(() => new Core.Cases.CaseReader(Tiny.Vocabulary).Read(null!));
    }

    private static string Describe(Case read)
    {
        var lines = new List<string> { $"{read.Key} {read.AssessedOn:O}" };
        lines.AddRange(Describe(read.Facts));
        foreach (var night in read.Nights)
        {
            lines.Add(night.Label);
            lines.AddRange(Describe(night.Facts));
        }

        foreach (var list in read.Facts.Records)
        {
            lines.Add($"{list.Definition.At} {list.ClosedBy}");
            lines.AddRange(list.Items.SelectMany(item => item.Attributes.Select(fact => $"{item.Id} {item.Kind} {Describe(fact)}")));
        }

        return string.Join('\n', lines);
    }

    private static IEnumerable<string> Describe(FactSet facts) => facts.Vocabulary.Facts.Select(definition => Describe(facts[definition]));

    private static string Describe(Fact fact) => $"{fact.Definition.Id}: {fact.State} {fact.Value} {fact.Text} {fact.Written} {fact.Origin}";
}

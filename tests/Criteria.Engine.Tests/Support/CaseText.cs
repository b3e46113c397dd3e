using System.Collections.Immutable;
using System.Text;
using Criteria.Core.Facts;

namespace Criteria.Engine.Tests.Support;

/// <summary>A case file under construction: places of the vocabulary with what is written there, one night, documents.</summary>
/// <remarks>Immutable. A place of a night (<c>nights.scoring</c>) belongs to the first night; <see cref="Night"/> adds whole nights.</remarks>
internal sealed record CaseText
{
    private const string NightPrefix = "nights.";

    /// <summary>A case of which nothing is known but its key.</summary>
    public static readonly CaseText Empty = new();

    /// <summary>An ordinary case with everything on file: one good night with a type III recorder, moderate by both rules.</summary>
    public static readonly CaseText Complete = Empty
        .With("patient.age", "52 years").With("patient.sex", "male")
        .With("intake.height", "178 cm").With("intake.weight", "104 kg").With("intake.neck", "43 cm")
        .With("intake.epworth_total", "12").With("intake.bicarbonate", "25 mmol/L").With("intake.isi_total", "5").With("intake.awake_paco2", "40 mmHg")
        .With("intake.home_circumstances_unsuitable", "no").With("intake.not_better_explained", "yes")
        .With("intake.drowsy_driving", "no").With("intake.recent_crash_or_near_miss", "no")
        .With("intake.symptoms.habitual_snoring", "yes").With("intake.symptoms.daytime_sleepiness", "yes")
        .With("intake.symptoms.witnessed_apneas", "yes").With("intake.symptoms.others", "no").With("intake.symptoms.reviewed_by", "clinician")
        .With("intake.conditions.hypertension", "yes").With("intake.conditions.others", "no").With("intake.conditions.reviewed_by", "clinician")
        .With("nights.date", "2026-06-03").With("nights.recorder", "type III")
        .With("nights.channels", "[airflow, nasal_pressure, thoracic_effort, abdominal_effort, oximetry, heart_rate, position, snore]")
        .With("nights.scoring", "manual").With("nights.raw_data_reviewed", "yes").With("nights.interpreter_qualified", "yes")
        .With("nights.recording_time", "7 h 12 min").With("nights.monitoring_time", "6 h 55 min")
        .With("nights.usable.airflow", "6 h 40 min").With("nights.usable.oximetry", "6 h 55 min")
        .With("nights.covers_usual_sleep", "yes").With("nights.recording_in_fragments", "no").With("nights.pap_used", "no")
        .With("nights.predominantly_obstructive", "yes").With("nights.technically_adequate", "yes").With("nights.called_inconclusive", "no")
        .With("nights.spo2_lowest", "82 %").With("nights.spo2_mean", "93 %")
        .With("nights.obstructive_apneas", "30").With("nights.mixed_apneas", "2").With("nights.central_apneas", "3")
        .With("nights.hypopneas", "85").With("nights.central_hypopneas", "0").With("nights.periodic_breathing", "no")
        .With("nights.low_saturation_total", "2 min").With("nights.low_saturation_longest", "1 min")
        .With("nights.supine_events", "60").With("nights.supine_time", "3 h").With("nights.other_events", "60").With("nights.other_time", "3 h 55 min")
        .With("nights.device_cleared", "yes").With("nights.test_provider_qualifies", "yes").With("nights.local_test_policy_met", "yes")
        .With("nights.supplier_handled_test", "no").With("nights.supplier_is_certified_hospital", "no")
        .Index("index: REI, hypopnea: 4 %, per_hour: 17.3, events: 120, over: 6 h 55 min")
        .Index("index: REI, hypopnea: 3 %, per_hour: 24.6, events: 170, over: 6 h 55 min")
        .Index("index: ODI, desaturation: 3 %, per_hour: 23.1, events: 160").Index("index: ODI, desaturation: 4 %, per_hour: 18.8, events: 130")
        .Document(
            "id: visit-note, kind: clinical evaluation, date: 2026-05-20, author: physician, in_person: yes, telehealth: no, signed: 2026-05-20, pages: 3, "
            + "records_symptoms: yes, records_sleepiness_scale: yes, records_exam: yes, records_neck: yes, records_bmi: yes")
        .Document("id: test-order, kind: test order, date: 2026-05-21, author: physician, signed: yes")
        .Document("id: report, kind: sleep test report, date: 2026-06-08, author: physician, signed: 2026-06-08")
        .Document("id: instruction, kind: instruction record, date: 2026-06-20, author: supplier")
        .Closed()
        .With("therapy", "[{ others: no, reviewed_by: billing staff }]")
        .With("coverage.payer", "medicare").With("coverage.item", "pap").With("coverage.stage", "initial").With("coverage.service_date", "2026-07-01");

    private ImmutableSortedDictionary<string, string> Facts { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    private ImmutableArray<string> Indices { get; init; } = [];

    private ImmutableArray<string> Documents { get; init; } = [];

    private ImmutableArray<string> FurtherNights { get; init; } = [];

    /// <summary>The text of the case file.</summary>
    public string Yaml
    {
        get
        {
            var text = new StringBuilder("case: HT-TEST\nassessed_on: 2026-06-18\n");
            var sections = Facts.Where(entry => !entry.Key.StartsWith(NightPrefix, StringComparison.Ordinal)).ToArray();
            WriteTree(text, sections, 0);
            WriteNights(text);
            WriteList(text, "documents", Documents);
            return text.ToString();
        }
    }

    /// <summary>The same case with something written at a place; null leaves the place out.</summary>
    public CaseText With(string place, string? value) =>
        this with { Facts = value is null ? Facts.Remove(place) : Facts.SetItem(place, value) };

    /// <summary>The same case without a place and all that stands below it.</summary>
    public CaseText Without(string place) => this with
    {
        Facts = Facts.RemoveRange(Facts.Keys.Where(key => key == place || key.StartsWith(place + ".", StringComparison.Ordinal))),
    };

    /// <summary>The same case with one more index in its first night.</summary>
    public CaseText Index(string entry) => this with { Indices = Indices.Add(entry) };

    /// <summary>The same case without the indices of its first night.</summary>
    public CaseText WithoutIndices() => this with { Indices = [] };

    /// <summary>The same case with one more document.</summary>
    public CaseText Document(string entry) => this with { Documents = Documents.Add(entry) };

    /// <summary>The same case without its documents of a kind.</summary>
    public CaseText WithoutDocuments(string kind) => this with
    {
        Documents = Documents.RemoveAll(entry => entry.Contains($"kind: {kind},", StringComparison.Ordinal)),
    };

    /// <summary>The same case with its list of documents closed.</summary>
    public CaseText Closed() => Document("others: no, reviewed_by: billing staff");

    /// <summary>The same case with its list of documents open.</summary>
    public CaseText Open() => this with { Documents = Documents.RemoveAll(entry => entry.StartsWith("others:", StringComparison.Ordinal)) };

    /// <summary>The same case with a whole further night, written in one line.</summary>
    public CaseText Night(string entry) => this with { FurtherNights = FurtherNights.Add(entry) };

    /// <summary>The same case with every fact of the vocabulary that it does not mention: no, the last choice, an ordinary day, the lowest plausible number.</summary>
    public CaseText Filled()
    {
        var open = Rules.Library.Vocabulary.Facts.Where(fact => fact is { At: not null, Computed: null, Index: null }
            && !Facts.Keys.Any(key => key == fact.At || fact.At.StartsWith(key + ".", StringComparison.Ordinal))
            && !Facts.ContainsKey(fact.At[..fact.At.LastIndexOf('.')] + ".others"));
        return open.Aggregate(this, (text, fact) => text.With(fact.At!, Ordinary(fact)));
    }

    private static string Ordinary(FactDefinition fact) => fact.Kind switch
    {
        FactKind.YesNo => "no",
        FactKind.Choice => fact.Choices[^1],
        FactKind.Date => "2026-06-01",
        FactKind.Code => "G47.33",
        FactKind.Text => "none",
        _ => QuantityText.Of((fact.Plausible ?? fact.Range!.Value).Low, fact.Unit),
    };

    /// <summary>The case as the shipped vocabulary reads it.</summary>
    public Case Read() => Rules.Read(Yaml);

    /// <summary>The findings of the case under the shipped rules and the given changes of overlays.</summary>
    public FindingTable Assess(params Overlay[] overlays) => Rules.Assess(this, overlays);

    private void WriteNights(StringBuilder text)
    {
        var first = Facts.Where(entry => entry.Key.StartsWith(NightPrefix, StringComparison.Ordinal))
            .Select(entry => KeyValuePair.Create(entry.Key[NightPrefix.Length..], entry.Value)).ToArray();
        if (first.Length + Indices.Length + FurtherNights.Length == 0)
        {
            return;
        }

        text.Append("nights:\n");
        if (first.Length + Indices.Length > 0)
        {
            text.Append("  -\n");
            WriteTree(text, first, 4);
            foreach (var (index, number) in Indices.Select((index, number) => (index, number)))
            {
                text.Append(number == 0 ? "    indices:\n" : "").Append("      - { ").Append(index).Append(" }\n");
            }
        }

        foreach (var night in FurtherNights)
        {
            text.Append("  - { ").Append(night).Append(" }\n");
        }
    }

    private static void WriteList(StringBuilder text, string key, ImmutableArray<string> entries)
    {
        if (!entries.IsEmpty)
        {
            text.Append(key).Append(":\n");
            foreach (var entry in entries)
            {
                text.Append("  - { ").Append(entry).Append(" }\n");
            }
        }
    }

    private static void WriteTree(StringBuilder text, IReadOnlyCollection<KeyValuePair<string, string>> entries, int indent)
    {
        foreach (var group in entries.GroupBy(entry => entry.Key.Split('.')[0]))
        {
            text.Append(' ', indent).Append(group.Key).Append(':');
            if (group.FirstOrDefault(entry => entry.Key == group.Key) is { Key: not null } leaf)
            {
                text.Append(' ').Append(leaf.Value).Append('\n');
                continue;
            }

            text.Append('\n');
            WriteTree(text, [.. group.Select(entry => KeyValuePair.Create(entry.Key[(group.Key.Length + 1)..], entry.Value))], indent + 2);
        }
    }
}

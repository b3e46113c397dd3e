using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Tests.Support;

/// <summary>A small vocabulary with one fact of every kind, for tests that do not want the shipped one.</summary>
internal static class Tiny
{
    public const string VocabularyText = """
        records:
          - { at: documents, label: Document, kinds: [visit note, order] }
          - { at: therapy, label: Therapy trial, kinds: [PAP, oral appliance] }
        groups:
          - { at: intake.conditions, label: Conditions }
          - { at: nights.channels, label: Recorded channels, list: complete }
        code_sets:
          - id: sleep-apnea
            system: ICD-10-CM
            label: sleep apnea
            codes:
              - { code: G47.33, label: always in the set }
              - { code: G47.30, label: from a day on, from: 2025-10-01 }
              - { code: G47.39, label: up to a day, until: 2025-09-30 }
        facts:
          - { id: age, at: patient.age, label: Age, kind: number, unit: years, range: 0 years to 120 years, plausible: 18 years to 100 years, meaning: Age., owner: clinician, ask: How old? }
          - { id: sex, at: patient.sex, label: Sex, kind: choice, choices: [male, female, not stated], meaning: Sex., owner: clinician, ask: Which sex? }
          - { id: nights_together.read_by, at: nights_together.read_by, label: Way of reading the nights, kind: choice, choices: [each, worst], meaning: How., owner: clinician, ask: How? }
          - { id: nights_together.declared_by, at: nights_together.declared_by, label: Who declared it, kind: text, meaning: Who., owner: clinician, ask: Who? }
          - { id: note, at: patient.note, label: Note, kind: text, meaning: A remark., owner: clinician, ask: Any remark? }
          - { id: height, at: intake.height, label: Height, kind: number, unit: cm, range: 50 cm to 260 cm, plausible: 130 cm to 215 cm, meaning: Height., owner: clinician, ask: How tall? }
          - { id: weight, at: intake.weight, label: Weight, kind: number, unit: kg, range: 20 kg to 500 kg, meaning: Weight., owner: clinician, ask: How heavy? }
          - { id: neck, at: intake.neck, label: Neck, kind: number, unit: cm, range: 15 cm to 100 cm, plausible: 25 cm to 60 cm, meaning: Neck., owner: clinician, ask: Which neck? }
          - id: bmi
            at: intake.bmi
            label: Body mass index
            kind: number
            unit: kg/m2
            range: 8 kg/m2 to 150 kg/m2
            rounded: yes
            computed: { measure: body mass index, from: [weight, height] }
            meaning: Weight over squared height.
          - { id: epworth, at: intake.epworth, label: Epworth total, kind: count, range: 0 to 24, meaning: Total., owner: patient, ask: Which total? }
          - { id: visit_date, at: intake.visit_date, label: Visit, kind: date, meaning: Visit., owner: clinician, ask: When? }
          - { id: hypertension, at: intake.conditions.hypertension, label: Hypertension, kind: yes/no, meaning: Pressure., owner: clinician, ask: Hypertension? }
          - { id: stroke, at: intake.conditions.stroke, label: Stroke, kind: yes/no, meaning: Stroke., owner: clinician, ask: Stroke? }
          - { id: insomnia, at: intake.conditions.insomnia, label: Insomnia, kind: yes/no, meaning: Insomnia., owner: clinician, ask: Insomnia? }
          - { id: snoring, at: intake.symptoms.snoring, label: Snoring, kind: yes/no, meaning: Snoring., owner: patient, ask: Snoring? }
          - { id: night.date, at: nights.date, label: Night, kind: date, meaning: Night., owner: technologist, ask: Which night? }
          - { id: recording_time, at: nights.recording_time, label: Recording time, kind: duration, range: 0 h to 24 h, meaning: Recording., owner: technologist, ask: How long recorded? }
          - { id: monitoring_time, at: nights.monitoring_time, label: Monitoring time, kind: duration, range: 0 h to 24 h, meaning: Monitoring., owner: scorer, ask: How long monitored? }
          - { id: usable.airflow, at: nights.usable.airflow, label: Usable airflow, kind: duration, range: 0 h to 24 h, meaning: Airflow., owner: scorer, ask: Airflow for how long? }
          - { id: usable.oximetry, at: nights.usable.oximetry, label: Usable oximetry, kind: duration, range: 0 h to 24 h, meaning: Oximetry., owner: scorer, ask: Oximetry for how long? }
          - { id: spo2_lowest, at: nights.spo2_lowest, label: Lowest saturation, kind: number, unit: "%", range: 0 % to 100 %, meaning: Saturation., owner: scorer, ask: Which lowest? }
          - { id: channel_airflow, at: nights.channels.airflow, label: Airflow channel, kind: yes/no, meaning: Airflow., owner: technologist, ask: Airflow? }
          - { id: channel_oximetry, at: nights.channels.oximetry, label: Oximetry channel, kind: yes/no, meaning: Oximetry., owner: technologist, ask: Oximetry? }
          - id: adequate_time
            label: Adequate time
            kind: duration
            range: 0 h to 24 h
            computed: { measure: shortest of, from: [usable.airflow, usable.oximetry] }
            meaning: The shorter.
          - { id: usable_sum, label: Usable in all, kind: duration, range: 0 h to 48 h, computed: { measure: sum of, from: [usable.airflow, usable.oximetry] }, meaning: The sum. }
          - id: any_rate
            label: Any rate
            kind: number
            unit: /h
            range: 0 /h to 250 /h
            computed: { measure: first supplied, from: [rdi_payer_4, rei_4] }
            measure_type: { index: any, rule: 4 %, per: recording or monitoring time }
            meaning: The first rate supplied.
          - { id: any_events, label: Any events, kind: count, range: 0 to 4000, computed: { measure: events of, from: [rdi_payer_4, rei_4] }, meaning: Its events. }
          - { id: any_hours, label: Any hours, kind: duration, range: 0 h to 24 h, computed: { measure: time of, from: [rdi_payer_4, rei_4] }, meaning: Its time. }
          - id: any_rate_over_recording
            label: Any rate over recording
            kind: number
            unit: /h
            range: 0 /h to 250 /h
            computed: { measure: rate over, from: [any_events, recording_time] }
            measure_type: { index: any, rule: 4 %, per: recording time }
            meaning: The same events over the recording.
          - { id: document.date, at: documents.date, label: Date, kind: date, meaning: Date. }
          - { id: document.author, at: documents.author, label: Author, kind: choice, choices: [physician, dentist], meaning: Author. }
          - { id: document.signed, at: documents.signed, label: Signed, kind: date, also: yes/no, meaning: Signature. }
          - { id: document.in_person, at: documents.in_person, label: In person, kind: yes/no, meaning: In person. }
          - { id: document.pages, at: documents.pages, label: Pages, kind: count, range: 1 to 2000, meaning: Pages. }
          - { id: trial.start, at: therapy.start, label: Start, kind: date, meaning: Start. }
          - { id: trial.nightly_use, at: therapy.nightly_use, label: Use night by night, kind: durations, range: 0 min to 24 h, meaning: Use. }
          - { id: best_run, at: intake.best_run, label: Best run, kind: count, range: 0 to 3, computed: { measure: best run, from: [therapy, PAP, nightly_use], run: 3, at_least: 4 h, within: 5 }, meaning: Best three of five. }
          - { id: diagnosis_code, at: intake.diagnosis_code, label: Diagnosis code, kind: code, system: ICD-10-CM, meaning: Code., owner: clinician, ask: Which code? }
          - { id: therapy.start, label: Start of PAP, kind: date, computed: { measure: only start of, from: [therapy, PAP] }, meaning: Start of PAP. }
        indices:
          - { id: rei_4, index: REI, rule: 4 %, per: monitoring time, time: monitoring_time, label: "REI, 4 % rule", range: 0 /h to 250 /h, plausible: 0 /h to 130 /h, meaning: REI., owner: scorer, ask: Which REI at 4 %? }
          - { id: rei_3, index: REI, rule: 3 %, per: monitoring time, time: monitoring_time, label: "REI, 3 % rule", range: 0 /h to 250 /h, meaning: REI., owner: scorer, ask: Which REI at 3 %? }
          - { id: rdi_payer_4, index: payer RDI, rule: 4 %, per: recording time, time: recording_time, label: Payer RDI, range: 0 /h to 250 /h, meaning: RDI., owner: scorer, ask: Which payer RDI? }
          - { id: odi_4, index: ODI, rule: 4 %, per: oximetry time, time: usable.oximetry, label: "ODI, 4 % rule", range: 0 /h to 250 /h, meaning: ODI., owner: scorer, ask: Which ODI? }
        """;

    /// <summary>A new reading of the vocabulary; tests may share <see cref="Vocabulary"/>.</summary>
    public static SourceFile VocabularyFile => Texts.File("vocabulary/tiny.yaml", VocabularyText);

    public static Vocabulary Vocabulary { get; } = ReadVocabulary();

    public static CaseReading Read(string text, string name = "case.yaml", Vocabulary? vocabulary = null) =>
        new CaseReader(vocabulary ?? Vocabulary).Read(Texts.File(name, text));

    /// <summary>The case, which must read without a problem of any weight.</summary>
    public static Case Case(string text, Vocabulary? vocabulary = null)
    {
        var reading = Read(text, vocabulary: vocabulary);
        reading.Problems.ShouldSay();
        return reading.Case!;
    }

    /// <summary>The facts of the only night of a case.</summary>
    public static FactSet Night(string night)
    {
        var reading = Read("case: T-1\nnights:\n  - " + night.ReplaceLineEndings("\n    "));
        reading.Problems.Where(problem => problem.Severity == Severity.Error).ShouldBeEmpty();
        return reading.Case!.Nights.ShouldHaveSingleItem().Facts;
    }

    private static Vocabulary ReadVocabulary()
    {
        var bag = new DiagnosticBag();
        var vocabulary = Core.Facts.Vocabulary.Read([VocabularyFile], bag);
        bag.Ordered().ShouldSay();
        return vocabulary!;
    }
}

using System.Globalization;
using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Logic;
using Criteria.Core.Reading;
using Criteria.Engine.Findings;

namespace Criteria.Benchmarks;

/// <summary>A made-up case for each number: age, weight, night, indices and documents vary with it, and nothing is random.</summary>
internal static class NumberedCase
{
    /// <summary>The date whose rules count.</summary>
    public static readonly DateOnly Date = new(2026, 6, 18);

    /// <summary>The case file of a number.</summary>
    public static SourceFile File(int number) => new($"case-{number}.yaml", Encoding.UTF8.GetBytes(Text(number)));

    /// <summary>The case of a number.</summary>
    public static Case Read(CaseReader reader, int number)
    {
        var reading = reader.Read(File(number));
        return reading.Case ?? throw new InvalidOperationException(string.Join("; ", reading.Problems));
    }

    /// <summary>Refuses an assessment that does not give the grade its events and hours make.</summary>
    public static void Check(Assessment assessment, int number) =>
        Require.Finding(assessment, "severity.rei-4", Standing.Met, Events(number) switch
        {
            < 5 * Hours => "below 5",
            < 15 * Hours => "mild",
            < 30 * Hours => "moderate",
            _ => "severe",
        });

    private const int Hours = 7;

    private static int Events(int number) => number * 7 % 420;

    private static string Text(int number) => string.Create(CultureInfo.InvariantCulture, $$"""
        case: B-{{number}}
        assessed_on: 2026-06-18
        patient: { age: {{20 + (number % 60)}} years, sex: {{(number % 2 == 0 ? "male" : "female")}} }
        intake:
          height: {{155 + (number % 40)}} cm
          weight: {{55 + (number % 90)}} kg
          neck: {{34 + (number % 14)}} cm
          epworth_total: {{number % 25}}
          symptoms:
            habitual_snoring: {{YesNo(number % 3)}}
            daytime_sleepiness: {{YesNo(number % 4)}}
            witnessed_apneas: unknown
          conditions:
            hypertension: { value: {{YesNo(number % 5)}}, from: visit-note p.2 }
            others: no
            reviewed_by: clinician on 2026-05-20
        nights:
          - date: 2026-06-03
            recorder: type III
            channels: [nasal_pressure, thoracic_effort, abdominal_effort, oximetry, heart_rate, position, snore]
            scoring: {{(number % 7 == 0 ? "automatic" : "manual")}}
            raw_data_reviewed: yes
            interpreter_qualified: yes
            recording_time: 7 h 40 min
            monitoring_time: {{Hours}} h
            usable: { airflow: {{Hours}} h, oximetry: {{Hours}} h }
            covers_usual_sleep: yes
            recording_in_fragments: no
            pap_used: no
            indices:
              - { index: REI, hypopnea: 4 %, events: {{Events(number)}} }
              - { index: REI, hypopnea: 3 %, events: {{Events(number) + 30 + (number % 11)}} }
            predominantly_obstructive: yes
            spo2_lowest: {{70 + (number % 20)}} %
            spo2_mean: {{91 + (number % 6)}} %
            technically_adequate: yes
            called_inconclusive: no
        documents:
          - { id: visit-note, kind: clinical evaluation, date: 2026-05-20, author: physician, in_person: yes, signed: 2026-05-20, pages: 3 }
          - { others: no, reviewed_by: billing staff on 2026-06-18 }
        coverage: { payer: medicare, item: pap, service_date: 2026-06-18 }

        """);

    private static string YesNo(int number) => number == 0 ? "yes" : "no";
}

using System.Globalization;
using System.Text;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Benchmarks;

/// <summary>A ruleset of any size over the shipped vocabulary. Of four criteria three compare facts and one reads two others.</summary>
internal static class MadeUpRules
{
    /// <summary>The vocabulary, the sources and one ruleset of that many criteria.</summary>
    public static SourceFile[] Files(int criteria) => With(Text(criteria));

    /// <summary>The vocabulary, the sources and a ruleset of that text.</summary>
    public static SourceFile[] With(string ruleset) =>
    [
        .. ShippedRules.Files().Where(file => file.Name.Contains("vocabulary/", StringComparison.Ordinal) || file.Name.EndsWith("sources.yaml", StringComparison.Ordinal)),
        new SourceFile("made-up.yaml", Encoding.UTF8.GetBytes(ruleset)),
    ];

    /// <summary>The last criterion of the third kind; every numbered case meets it by its mean saturation.</summary>
    public static string LastMet(int criteria) => Id(criteria - 1 - ((criteria - 3) % 4));

    /// <summary>The head of a made-up ruleset.</summary>
    public const string Header = """
        ruleset: made-up
        title: Made-up criteria
        heading: Made up
        order: 1
        function: clinical
        version: 1.0
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }
        review_by: 2027-06-30
        criteria:

        """;

    private static string Text(int criteria)
    {
        var text = new StringBuilder(Header);
        for (var i = 0; i < criteria; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"""
                  - id: {Id(i)}
                    title: Made-up criterion {i}
                    when:
                      {(i % 4 == 3 ? $"all: [{Id(i - 1)}, {Id(i - 2)} is not met]" : Comparison(i))}
                    cites: [bbp-osa "criteria"]

                """);
        }

        return text.ToString();
    }

    private static string Comparison(int number) => (number % 4) switch
    {
        0 => $"all: [bmi >= {15 + (number % 30)} kg/m2, neck >= {30 + (number % 20)} cm, spo2_lowest < {70 + (number % 25)} %]",
        1 => $"any: [epworth_total >= {1 + (number % 20)}, habitual_snoring, {{ all: [hypertension, neck > {30 + (number % 15)} cm] }}]",
        _ => $"any: [spo2_mean <= {100 - (number % 4)} %, {{ at_least: 2, of: [habitual_snoring, hypertension, witnessed_apneas] }}]",
    };

    private static string Id(int number) => string.Create(CultureInfo.InvariantCulture, $"made-up.c{number}");
}

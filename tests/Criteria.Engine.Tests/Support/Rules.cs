using System.Collections.Concurrent;
using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;

namespace Criteria.Engine.Tests.Support;

/// <summary>One change of a local overlay, for tests.</summary>
/// <param name="Extends">The ruleset that it changes.</param>
/// <param name="Change">The change, without reason and approval.</param>
internal sealed record Overlay(string Extends, string Change)
{
    public SourceFile File(int number) => Rules.File($"local/overlay-{number}.yaml", $$"""
        overlay: test-{{number}}
        extends: {{Extends}}
        version: "1"
        changes:
          - { {{Change}}, reason: a test, approved_by: nobody, approved_on: 2026-01-10 }
        """);
}

/// <summary>The shipped rules, loaded once for all tests.</summary>
internal static class Rules
{
    /// <summary>The date of every assessment, unless a case has a date of service.</summary>
    public static readonly DateOnly Date = new(2026, 6, 18);

    // Several tests share an overlay, and loading is the dear part.
    private static readonly ConcurrentDictionary<string, (RulesetLibrary Library, Assessor Assessor)> Loaded = new(StringComparer.Ordinal);

    public static RulesetLibrary Library => With().Library;

    public static Assessor Assessor => With().Assessor;

    /// <summary>The shipped rules with changes of overlays.</summary>
    public static (RulesetLibrary Library, Assessor Assessor) With(params Overlay[] overlays) =>
        Loaded.GetOrAdd(string.Join('\n', overlays.Select(overlay => overlay.ToString())), _ => Load(overlays));

    public static RulesetLibrary Load(IEnumerable<SourceFile> files)
    {
        var loading = RulesetLibrary.Load(files);

        return loading.Library ?? throw new InvalidOperationException(string.Join('\n', loading.Problems));
    }

    public static SourceFile File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    /// <summary>A clinical ruleset for a test: its criteria under the head that every ruleset has.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="criteria">The list under <c>criteria:</c>, two spaces in.</param>
    /// <param name="rounding">How it takes rounded figures.</param>
    public static string Ruleset(string id, string criteria, string rounding = "none") => $$"""
        ruleset: {{id}}
        title: Criteria of a test
        heading: Test
        order: 1
        function: clinical
        version: 1.0
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: {{rounding}} }
        review_by: 2027-06-30
        criteria:

        """ + criteria;

    public static Case Read(string yaml, RulesetLibrary? library = null) => Read(File("case.yaml", yaml), library);

    public static Case Read(SourceFile file, RulesetLibrary? library = null)
    {
        var reading = new CaseReader((library ?? Library).Vocabulary).Read(file);

        return reading.Case ?? throw new InvalidOperationException(string.Join('\n', reading.Problems) + '\n' + Encoding.UTF8.GetString(file.Content.Span));
    }

    public static FindingTable Assess(CaseText text, params Overlay[] overlays)
    {
        var (library, assessor) = With(overlays);
        var subject = Read(text.Yaml, library);

        return new FindingTable(assessor.Assess(subject, subject.ServiceDate ?? Date));
    }

    private static (RulesetLibrary Library, Assessor Assessor) Load(Overlay[] overlays)
    {
        var library = Load(ShippedRules.With([.. overlays.Select((overlay, number) => overlay.File(number))]));

        return (library, new Assessor(library));
    }
}

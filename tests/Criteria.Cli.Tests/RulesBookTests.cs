using System.Text.Json.Nodes;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>The policy book shows the rules that count, and its digest is that of the rules an assessment uses.</summary>
public sealed class RulesBookTests
{
    private const string Ruleset = """
        ruleset: r
        title: Rules of adults
        heading: R
        order: 1
        function: clinical
        version: 3
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }
        review_by: 2027-06-30
        settings:
          - PLACE
        criteria:
          - { id: r.adult, title: Adult, when: { any: [age >= 18 years, emancipated] }, rests_on: [A-01], cites: [s-1 "part 2"] }

        """;

    private const string Vocabulary = """
        facts:
          - { id: age, at: patient.age, label: Age, kind: number, unit: years, range: 0 years to 120 years, meaning: M., owner: clinician, ask: A? }
          - { id: emancipated, at: patient.emancipated, label: Of age by law, kind: yes/no, meaning: M., owner: clinician, ask: E? }

        """;

    private const string Tests = """
        tests_of: r
        begin_with: nothing
        with: { case: T, assessed_on: 2026-07-01 }
        tests:
          - { criterion: r.adult, vary: patient.age, rows: { 18 years: met, unknown: undetermined } }

        """;

    private const string Overlay = """
        overlay: clinic
        extends: r
        version: 1
        changes:
          - { set: limit, to: late, reason: as agreed, approved_by: the board, approved_on: 2026-02-03 }

        """;

    [Fact]
    public void Digest_OfTheBook_IsThatOfTheListAndOfAnAssessment()
    {
        using var folder = Folder(Tests, Overlay);
        var path = folder.Write("case.json", """{ "case": "T", "assessed_on": "2026-07-01", "patient": { "age": "40 years" } }""");

        var assessed = JsonNode.Parse(Command.Run("assess", path, "--format", "json", "--rulesets", folder.Path).Out)!["rules_digest"]!.GetValue<string>();
        var book = Command.Run("rules", "book", folder.Path, "--on", "2026-07-01", "--format", "markdown");
        var list = Command.Run("rules", "list", "--on", "2026-07-01", "--rulesets", folder.Path).Out;

        assessed.ShouldStartWith("sha256:");
        book.Code.ShouldBe(0);
        book.Out.ShouldContain($"**Digest of this set:** {assessed}");
        book.Out.ShouldContain($"Rules: digest {assessed}.");
        list.ShouldContain($"digest of these rulesets and the vocabulary: {assessed}");
    }

    [Fact]
    public void Digest_OfTheBook_ChangesWithALocalChange()
    {
        using var plain = Folder(Tests, overlay: null);
        using var local = Folder(Tests, Overlay);

        Digest(plain).ShouldNotBe(Digest(local));
        Digest(plain).ShouldBe(Digest(plain));
    }

    [Fact]
    public void Book_OfARuleset_NamesVersionSettingsChangesWordsSourcesAndTests()
    {
        using var folder = Folder(Tests, Overlay);

        // Lines break where they may.
        var book = string.Join(' ', Command.Run("rules", "book", folder.Path, "--on", "2026-07-01").Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        book.ShouldContain("RULES OF ADULTS (R 3", Case.Sensitive);
        book.ShouldContain("from 1 January 2024");
        book.ShouldContain("30 June 2027");
        book.ShouldContain("early, late");
        book.ShouldContain("Reason: As agreed. Approved by the board on 3 February 2026.");
        book.ShouldContain("Adult [r.adult]");
        book.ShouldContain("* Any of these");
        book.ShouldContain("* Age >= 18 years");
        book.ShouldContain("* Of age by law");
        book.ShouldContain("part 2 (read)");
        book.ShouldContain("Rests on: A-01, adults are treated (read).");
        book.ShouldContain("Tests: 2 outcomes compared, all as expected.");
    }

    [Fact]
    public void Book_OfRulesWhoseTestFails_SaysWhichOutcomeIsNotAsExpected()
    {
        using var folder = Folder(Tests.Replace("18 years: met", "18 years: not met", StringComparison.Ordinal), overlay: null);

        var book = Command.Run("rules", "book", folder.Path).Out;

        book.ShouldContain("Tests: 2 outcomes compared, 1 not as expected.");
        book.ShouldContain("expected not met, found met");
    }

    [Fact]
    public void Book_OnADateBeforeTheRules_NamesThemAsNotInThisSet()
    {
        using var folder = Folder(Tests, overlay: null);

        var book = Command.Run("rules", "book", folder.Path, "--on", "2023-12-31").Out;

        book.ShouldContain("LOADED AND NOT IN THIS SET");
        book.ShouldNotContain("[r.adult]");
    }

    [Theory]
    [InlineData("pdf", "%PDF-")]
    [InlineData("docx", "PK")]
    [InlineData("html", "<!DOCTYPE html>")]
    public void Book_InAFile_IsWrittenInThatFormatAndTheSameEachTime(string format, string begins)
    {
        using var folder = Folder(Tests, Overlay);
        using var output = new TemporaryFolder();
        byte[] Written(string name)
        {
            var path = Path.Combine(output.Path, name);
            Command.Run("rules", "book", folder.Path, "--on", "2026-07-01", "--format", format, "--out", path).Code.ShouldBe(0);
            return File.ReadAllBytes(path);
        }

        var once = Written("one");

        System.Text.Encoding.Latin1.GetString(once).ShouldStartWith(begins, Case.Insensitive);
        Written("two").ShouldBe(once);
    }

    [Theory]
    [InlineData("--format pdf", "add --out FILE")]
    [InlineData("--payer medicare,pap", "add --on DATE")]
    [InlineData("--on 2026-07-01 --payer medicare,pop", "did you mean `medicare,pap`?")]
    [InlineData("--on 1.7.2026", "is not a date")]
    public void Book_AskedForInWordsThatAreNone_SaysSo(string options, string says)
    {
        var run = Command.Run(["rules", "book", .. options.Split(' ')]);

        run.Code.ShouldBe(2);
        run.Error.ShouldContain(says);
        run.Out.ShouldBeEmpty();
    }

    private static string Digest(TemporaryFolder folder) =>
        Command.Run("rules", "book", folder.Path, "--format", "markdown").Out.Split("**Digest of this set:** ")[1].Split('\n')[0];

    private static TemporaryFolder Folder(string tests, string? overlay)
    {
        var folder = new TemporaryFolder();
        folder.Write("vocabulary/v.yaml", Vocabulary);
        folder.Write("sources.yaml", "sources:\n  - { id: s-1, issuer: A society, title: A guideline, verified: read }\n");
        folder.Write("published-facts.yaml", "published_facts:\n  - { id: A-01, says: adults are treated, verified: read, sources: [s-1] }\n");
        folder.Write("r.yaml", Ruleset.Replace("  - PLACE\n", "  limit: { is: early, allowed: [early, late], why: Texts differ., cites: [s-1] }\n", StringComparison.Ordinal));
        folder.Write("r.tests.yaml", tests);
        if (overlay is not null)
        {
            folder.Write("clinic.yaml", overlay);
        }

        return folder;
    }
}

using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

public sealed class RulesBasisTests
{
    // Registers nothing but two rows, one of which nothing rests on.
    private const string OneRuleset = """
        ruleset: r
        title: R
        heading: R
        order: 1
        function: clinical
        version: 1
        status: active
        effective: { from: 2024-01-01 }
        conventions: { rounding: none }
        criteria:
          - { id: c, title: C, when: age >= 18 years, rests_on: [A-01], cites: [s-1] }
          - { id: d, title: D, when: c, cites: [s-1] }

        """;

    private const string Vocabulary = """
        facts:
          - { id: age, at: patient.age, label: Age, kind: number, unit: years, range: 0 years to 120 years, meaning: M., owner: clinician, ask: A? }

        """;

    private const string Sources = "sources:\n  - { id: s-1, issuer: A society, title: A guideline, verified: read, review_by: 2027-01-31 }\n";

    [Fact]
    public void Page_OfCoverage_IsWhatTheRulesGive() =>
        Repository.ShouldBeApproved(Command.Run("rules", "basis", "--format", "markdown").Out, "docs", "coverage-of-sources.md");

    [Fact]
    public void Basis_OfTwoRows_StartsWithTotals()
    {
        using var folder = Folder("""
            published_facts:
              - { id: A-01, says: from eighteen on, verified: read, in_part: memory, sources: [s-1] }
              - { id: A-02, says: younger, verified: memory }

            """);

        Command.Run("rules", "basis", "--rulesets", folder.Path).Out.ShouldBe("""
            2 published facts: 1 with criteria, 0 used otherwise, 0 carried by other rows, 0
            set aside with a reason, 1 open.
            Verified: 1 read, 0 restated, 1 memory, 0 derived, 0 common practice.

            A-01    from eighteen on (read, in part memory)
                    criteria: c

            A-02    younger (memory)
                    open

            """);
    }

    [Fact]
    public void Basis_AsMarkdown_ListsCriteriaWithoutARowAndSourcesWithTheirDates()
    {
        using var folder = Folder("published_facts: [{ id: A-01, says: from eighteen on, verified: read, sources: [s-1] }]\n");

        var page = Command.Run("rules", "basis", "--format", "markdown", "--rulesets", folder.Path).Out;

        page.ShouldContain("| A-01 | from eighteen on | read | s-1 | criteria: c |\n");
        page.ShouldContain("| d | D | s-1 |\n");
        page.ShouldContain("| s-1 | A society, A guideline | read |  | 2027-01-31 | 1 |\n");
    }

    [Theory]
    [InlineData("A-01", "A-01")]
    [InlineData("a-01", "A-01")]
    [InlineData("A", "A-01 A-02")]
    public void Basis_OfARowOrAGroup_ShowsThoseOnly(string row, string shown)
    {
        using var folder = Folder("published_facts: [{ id: A-01, says: x, verified: read }, { id: A-02, says: x, verified: read }, { id: AB-01, says: x, verified: read }]\n");

        var lines = Command.Run("rules", "basis", row, "--rulesets", folder.Path).Out.Split('\n');

        string.Join(' ', lines.Where(line => line.StartsWith('A')).Select(line => line.Split(' ')[0])).ShouldBe(shown);
    }

    [Fact]
    public void Basis_OfAnUnknownRow_NamesTheNearest()
    {
        var result = Command.Run("rules", "basis", "SEV-1");

        result.Code.ShouldBe(2);
        result.Error.ShouldBe("There is no published fact `SEV-1`. Did you mean `SEV-01`?\n");
    }

    [Fact]
    public void Basis_OfRulesWithoutARegister_SaysSo()
    {
        using var folder = Folder(null);

        var result = Command.Run("rules", "basis", "--rulesets", folder.Path);

        result.Code.ShouldBe(2);
        result.Error.ShouldBe("These rules have no register of published facts (published-facts.yaml).\n");
    }

    private static TemporaryFolder Folder(string? register)
    {
        var folder = new TemporaryFolder();
        folder.Write("vocabulary/v.yaml", Vocabulary);
        folder.Write("sources.yaml", Sources);
        folder.Write("r.yaml", OneRuleset);
        if (register is not null)
        {
            folder.Write("published-facts.yaml", register);
        }

        return folder;
    }
}

using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

public sealed class WriteCommandTests
{
    private static readonly string Case = Command.Example("oral-appliance-mild");

    [Fact]
    public void List_NamesEveryDocumentWithASentence()
    {
        var result = Command.Run("write", "--list");

        result.Code.ShouldBe(0);
        result.Out.ShouldContain("checklist  (coverage)\n    Is the file ready for this payer and item?");
        result.Out.ShouldContain("impression  (clinical)\n");
    }

    [Theory]
    [InlineData("--document", "impresion", "--document: there is no `impresion`; did you mean `impression`?\n")]
    [InlineData("--document", "impression,checklist", "Several documents need a folder: add --out DIR.\n")]
    [InlineData("--format", "text", "Name what to write with --document; `criteria write --list` shows the documents.\n")]
    [InlineData("--paper", "a5", "Argument 'a5' not recognized.")]
    public void Write_OfSomethingThatIsNotThere_SaysWhat(string option, string value, string message)
    {
        var result = Command.Run("write", Case, option, value);

        result.Code.ShouldBe(2);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldStartWith(message);
    }

    [Fact]
    public void List_NamesTheCalendarAmongTheOthersWithItsOnlyFormat() =>
        Command.Run("write", "--list").Out.ShouldMatch(@"(?s)appeal-letter .*\ncalendar  \(both\)\n    Windows and deadlines of the case as a calendar file; its only format is ics\.\nchecklist ");

    [Theory]
    [InlineData("calendar", "pdf", "--format: `calendar` is written as ics only, not as pdf. Without --format each document has its usual one.\n")]
    [InlineData("checklist,calendar", "text", "--format: `calendar` is written as ics only, not as text. Without --format each document has its usual one.\n")]
    [InlineData("checklist,calendar", "ics", "--format: ics is for `calendar` only, not for checklist. Without --format each document has its usual one.\n")]
    [InlineData("impression", "ics", "--format: ics is for `calendar` only, not for impression. Without --format each document has its usual one.\n")]
    public void Write_InAFormatThatADocumentDoesNotHave_SaysSoAndWritesNothing(string documents, string format, string message)
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Command.Example("clear-severe"), "--document", documents, "--format", format, "--out", folder.Path);

        result.Code.ShouldBe(2);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldBe(message);
        Directory.EnumerateFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Write_OfTheCalendarBesideAText_GivesEachItsUsualFormat()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Command.Example("clear-severe"), "--document", "checklist,calendar", "--out", folder.Path);

        result.Code.ShouldBe(0);
        Directory.EnumerateFiles(folder.Path).Select(Path.GetFileName).Order().ShouldBe(["HT-0401-calendar.ics", "HT-0401-checklist.txt"]);
        result.Out.ShouldMatch(@"^\S+HT-0401-checklist\.txt\n  text_digest: [0-9a-f]{64}\n\S+HT-0401-calendar\.ics\n$");
        result.Error.ShouldStartWith("examples/clear-severe/case.yaml:1:1: hint CW0009: calendar: left out, because it is open whether the case is concerned: ");
    }

    [Theory]
    [InlineData("ics")]
    [InlineData(null)]
    public void Write_OfTheCalendarAlone_PrintsIt(string? format)
    {
        var result = Command.Run(["write", Command.Example("clear-severe"), "--document", "calendar", .. format is null ? [] : new[] { "--format", format }]);

        result.Code.ShouldBe(0);
        result.Out.ShouldStartWith("BEGIN:VCALENDAR\r\nMETHOD:PUBLISH\r\n");
    }

    [Fact]
    public void Write_OfACalendarWithoutDays_MakesNoFileAndSaysSo()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Command.Example("pap-continued"), "--document", "calendar", "--out", folder.Path);

        result.Code.ShouldBe(0);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldEndWith("warning CW0010: calendar: no window or deadline of the case is open with a known date, so no calendar file is made\n");
        Directory.EnumerateFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Write_OfADeidentifiedCalendar_IsRefusedAndWritesNothing()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Command.Example("clear-severe"), "--document", "checklist,calendar", "--deidentified", "--out", folder.Path);

        result.Code.ShouldBe(1);
        result.Error.ShouldContain("error CW0011: `calendar` is made of days, and a de-identified form may hold none");
        Directory.EnumerateFiles(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Write_IntoAFolder_NamesFilesAfterCaseAndDocumentAndGivesTheDigest()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Case, "--document", "impression,checklist", "--format", "html", "--out", folder.Path);

        result.Error.ShouldBeEmpty();
        result.Code.ShouldBe(0);
        Directory.EnumerateFiles(folder.Path).Select(Path.GetFileName).Order().ShouldBe(["HT-0416-checklist.html", "HT-0416-impression.html"]);
        result.Out.ShouldMatch("(?s).*HT-0416-impression\\.html\n  text_digest: [0-9a-f]{64}\n.*");
    }

    [Fact]
    public void Write_OverAFileThatIsThere_NeedsForceAndTouchesNothing()
    {
        using var folder = new TemporaryFolder();
        var old = folder.Write("HT-0416-checklist.txt", "mine");

        var refused = Command.Run("write", Case, "--document", "impression,checklist", "--out", folder.Path);

        refused.Code.ShouldBe(2);
        refused.Error.ShouldBe($"{old}: is there already; --force overwrites it\n");
        File.ReadAllText(old).ShouldBe("mine");
        Directory.EnumerateFiles(folder.Path).Count().ShouldBe(1);
        Command.Run("write", Case, "--document", "impression,checklist", "--out", folder.Path, "--force").Code.ShouldBe(0);
        File.ReadAllText(old).ShouldStartWith("CASE HT-0416");
    }

    [Fact]
    public void Write_WhereOneDocumentIsRefused_WritesNone()
    {
        using var folder = new TemporaryFolder();

        var result = Command.Run("write", Command.Example("clear-severe"), "--document", "impression,request-sheet", "--out", folder.Path);

        result.Code.ShouldBe(1);
        result.Error.ShouldContain("CW0003");
        Directory.EnumerateFileSystemEntries(folder.Path).ShouldBeEmpty();
    }

    [Fact]
    public void Templates_CopiedAndEdited_AreUsed()
    {
        using var folder = new TemporaryFolder();
        Command.Run("write", "--copy-templates", folder.Path).Code.ShouldBe(0);
        Command.Run("write", "--copy-templates", folder.Path).Code.ShouldBe(2);
        var path = Path.Combine(folder.Path, "impression.md.liquid");
        File.WriteAllText(path, File.ReadAllText(path).Replace("### Oxygen", "### Saturation", StringComparison.Ordinal));

        var result = Command.Run("write", Case, "--document", "impression", "--templates", folder.Path);

        result.Error.ShouldBeEmpty();
        result.Out.ShouldContain("\nSaturation\n");
        result.Out.ShouldNotContain("\nOxygen\n");
    }

    [Fact]
    public void Templates_WithAFault_AreReportedWithTheirPlaceAndNothingIsWritten()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("impression.md.liquid", "---\ntitle: T\nsummary: S.\n---\n{{ case_kee }}\n");

        var result = Command.Run("write", Case, "--document", "impression", "--templates", folder.Path);

        result.Code.ShouldBe(2);
        result.Out.ShouldBeEmpty();
        result.Error.ShouldBe($"{path}:5:4: error CT0002: unknown name `case_kee`; did you mean `case_key`?\nThe templates do not load, so nothing was written.\n");
    }
}

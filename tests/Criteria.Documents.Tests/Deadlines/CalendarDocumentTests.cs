using System.Globalization;
using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Tests.Support;
using Criteria.Engine;

namespace Criteria.Documents.Tests.Deadlines;

/// <summary>The calendar holds what is not done yet, on the right days, and nothing that it should not say.</summary>
public sealed class CalendarDocumentTests
{
    private const string Visit = "In-person re-evaluation visit for PAP";
    private const string Nights = "Nights whose use of PAP counts";
    private const string SecondVisit = "- id: second-visit";

    private static readonly string Started = Written.ExampleText("clear-severe");
    private static readonly string Continued = Written.ExampleText("pap-continued");

    [Theory]
    [InlineData("2024-01-30", "2024-03-01", "2024-04-30", "2024-04-28")] // over a leap day: day 30 is 29 February
    [InlineData("2025-01-30", "2025-03-02", "2025-05-01", "2025-04-29")]
    [InlineData("2026-12-01", "2027-01-01", "2027-03-02", "2027-02-28")] // over the end of a year
    [InlineData("2027-11-30", "2027-12-31", "2028-02-29", "2028-02-27")] // the last day is a leap day
    [InlineData("2031-12-31", "2032-01-31", "2032-03-31", "2032-03-29")]
    public void Days_OfPap_AreCountedFromItsStart(string start, string first, string last, string lastNight)
    {
        var days = Days(Started.Replace("start: 2026-03-17", $"start: {start}", StringComparison.Ordinal));

        days.ShouldContain((first, $"{Visit}: first day"));
        days.ShouldContain((last, $"{Visit}: last day"));
        days.ShouldContain((lastNight, $"{Nights}: last day"));
    }

    [Fact]
    public void Days_OfEveryExample_ReadBackAsWholeDaysInOrder()
    {
        foreach (var example in Written.Examples)
        {
            if (Write(Written.ExampleText(example)) is not { File.IsEmpty: false } written)
            {
                continue;
            }

            var (head, events) = IcsText.Read(written.File);
            head.ShouldBe(["METHOD:PUBLISH", "PRODID:-//Criteria//Windows and deadlines//EN", "VERSION:2.0"]);
            events.Select(one => one["UID"]).ShouldBeUnique();
            events.Select(one => one["DTSTART;VALUE=DATE"]).ShouldBeInOrder();
            var stamp = Written.CaseOf(Written.ExampleText(example)).RulesDate!.Value.ToString("yyyyMMdd", CultureInfo.InvariantCulture);
            events.ShouldAllBe(one => one["DTSTAMP"] == $"{stamp}T000000Z" && one["CLASS"] == "PRIVATE" && one["TRANSP"] == "TRANSPARENT");
            events.ShouldAllBe(one => one["SUMMARY"].EndsWith(": first day", StringComparison.Ordinal) || one["SUMMARY"].EndsWith(": last day", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Day_SaysWhatWhoHowAndWhy()
    {
        var one = Events(Started).Single(one => one["SUMMARY"] == $"HT-0401: {Visit}: last day");

        one["CATEGORIES"].ShouldBe("Coverage check");
        one["DESCRIPTION"].Split('\n')[..2].ShouldBe([$"Coverage check. {Visit}: 16 June 2026 is the last day, and 17 April 2026 the first.", "Who acts: ordering clinician."]);
        one["DESCRIPTION"].ShouldContain("\nHow it is counted: within day 31 to day 91 after Start of PAP (start is day 0); Start of PAP: 17 March 2026. The first and the last day are both included.\n");
        one["DESCRIPTION"].ShouldContain("\nCriterion: Re-evaluation between day 31 and day 91 [pap.continued.visit], medicare-pap-continued 2026.1.\nSources: DME MACs (CMS), L33718 (R11), continued coverage (read).");
        one["DESCRIPTION"].ShouldEndWith("\nThe payer's current text rules; this reminder does not take its place, and says nothing of what is medically right.");
    }

    [Fact]
    public void Window_OfAVisitThatTookPlace_IsLeftOut()
    {
        var written = Write(Continued);

        written.File.IsEmpty.ShouldBeTrue();
        written.Problems.Select(problem => problem.Code).ShouldBe(["CW0009", "CW0010"]);
        Days(Continued.Replace("records_improvement: yes", "records_improvement: no", StringComparison.Ordinal)).ShouldBe([
            ("2026-05-02", $"{Visit}: first day"), ("2026-07-01", $"{Visit}: last day"),
        ]);
    }

    // The claim is the first one, so that the criterion on the visit does not apply yet: the visit is there all the same.
    [Fact]
    public void Window_OfAVisitThatALaterClaimWillNeed_IsLeftOutOnceItTookPlace()
    {
        var note = "id: again, kind: clinical evaluation, date: DAY, author: physician, in_person: yes, telehealth: no, signed: yes, records_improvement: yes, reviews_adherence: yes";
        string With(string day) => Started.Replace("documents:\n", $"documents:\n  - {{ {note.Replace("DAY", day, StringComparison.Ordinal)} }}\n", StringComparison.Ordinal);

        Days(With("2026-05-05")).ShouldNotContain(day => day.What.StartsWith(Visit, StringComparison.Ordinal));
        Days(With("2026-04-02")).ShouldContain(day => day.What.StartsWith(Visit, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("device: E0601 }", "device: E0601, outcome: not tolerated }")]
    [InlineData("coverage:\n", "calendar: { closed_on: 2026-04-01 }\n\ncoverage:\n")]
    [InlineData("age: 68 years", "age: 9 years")]
    public void Case_ThatIsOverClosedOrRefused_HasNoReminder(string before, string after)
    {
        Started.ShouldContain(before);

        Write(Started.Replace(before, after, StringComparison.Ordinal)).File.IsEmpty.ShouldBeTrue();
    }

    [Fact]
    public void Window_WithoutItsStart_IsNamedWithWhatIsMissing()
    {
        var written = Write(Started.Replace(", start: 2026-03-17", "", StringComparison.Ordinal));

        written.Problems.Select(problem => problem.ToString()).ShouldContain(
            $"case:1:1: hint CW0009: calendar: left out, because no date can be told: `{Visit}` and `{Nights}`; missing: start of PAP; On which date did the patient start PAP?");
        written.File.IsEmpty.ShouldBeTrue();
    }

    [Fact]
    public void Day_ThatHasPassed_SaysSo() => Events(Written.ExampleText("visit-after-test")).Single(one => one["SUMMARY"] == "HT-0411: In-person visit before the sleep test: last day")["DESCRIPTION"]
        .ShouldContain("\nThat day lies before 11 May 2026, for which this was made, and the case does not show that it was done.\n");

    [Fact]
    public void Days_OfSupplies_AreCountedBackFromTheirEndAndOnFromTheLastRecord()
    {
        var text = Continued.Replace("  stage: continued\n", "  stage: continued\n  supplies_billed: yes\n  supply_ends: 2028-03-30\n", StringComparison.Ordinal);

        Days(text).ShouldBe([
            ("2027-07-03", "Record of need and use of PAP supplies counts for a claim: last day"), // twelve months after the report on use
            ("2028-02-29", "Refill of PAP supplies may be asked for: first day"), // thirty days before, over a leap day
            ("2028-03-20", "Refill of PAP supplies may be delivered: first day"), // ten days before
        ]);
    }

    [Theory]
    [InlineData("2026-01-31", "2027-01-31")]
    [InlineData("2028-02-29", "2029-02-28")] // twelve months before 1 March 2029 is 1 March 2028
    [InlineData("2027-02-28", "2028-02-29")] // twelve months before 29 February 2028 is 28 February 2027
    public void Day_UpToWhichATestCounts_IsTheLastThatThePlanAccepts(string night, string last) =>
        Days(Written.ExampleText("another-payer").Replace("- date: 2025-06-24", $"- date: {night}", StringComparison.Ordinal))
            .ShouldContain((last, "Sleep test counts for the date of service: last day"));

    [Fact]
    public void Window_OfEachOfTwoNights_NamesItsNight()
    {
        var text = Written.ExampleText("visit-after-test");
        var night = text[text.IndexOf("  - date: ", StringComparison.Ordinal)..text.IndexOf("\ndocuments:", StringComparison.Ordinal)];

        var days = Days(text.Replace(night, $"{night}\n  - {{ date: 2026-05-09, recorder: type III }}\n", StringComparison.Ordinal));

        days.Where(day => day.What.StartsWith("In-person visit before", StringComparison.Ordinal)).ShouldBe([
            ("2026-04-13", "In-person visit before the sleep test (night of 14 April 2026): last day"),
        ]);
    }

    [Fact]
    public void Number_ThatAnOverlayChanges_MovesTheCalendarAndIsSaid()
    {
        const string Overlay = """
            overlay: clinic
            extends: medicare-pap-continued
            version: 1
            changes:
              - replace: pap.continued.visit
                with:
                  id: pap.continued.visit
                  title: Early re-evaluation
                  applies_when: { all: [pap.started-before, coverage.stage is continued] }
                  when: { document: clinical evaluation, in_person: yes, signed: yes, dated: within day 20 to day 60 after therapy.start }
                  cites: [lcd-l33718 "continued coverage"]
                reason: The clinic sees patients earlier.
                approved_by: A. Approver
                approved_on: 2026-01-10
            """;
        var library = RulesetLibrary.Load([.. ShippedRules.Files().Where(file => !file.Name.EndsWith(".tests.yaml", StringComparison.Ordinal) && !file.Name.Contains("/cases/", StringComparison.Ordinal)), new SourceFile("local/clinic.yaml", Encoding.UTF8.GetBytes(Overlay))]);
        library.Problems.ShouldBeEmpty();

        var subject = new CaseReader(library.Library!.Vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(Started))).Case!;
        var moved = IcsText.Read(CalendarDocument.Write(subject, new Assessor(library.Library).Assess(subject, subject.RulesDate!.Value)).File).Events;

        moved.Where(one => one["SUMMARY"].Contains(Visit, StringComparison.Ordinal)).Select(one => one["DTSTART;VALUE=DATE"]).ShouldBe(["20260406", "20260516"]);
        moved[0]["DESCRIPTION"].ShouldContain("\nLocal rule: pap.continued.visit is replaced. The clinic sees patients earlier. Approved by A. Approver on 10 January 2026.\n");
        moved.Select(one => one["UID"]).ShouldBe(Events(Started).Select(one => one["UID"]), ignoreOrder: true);
    }

    [Fact]
    public void Uid_WhenADateIsCorrected_StaysAndHidesTheKey()
    {
        var before = Events(Started).Select(one => one["UID"]).ToArray();

        Events(Started.Replace("start: 2026-03-17", "start: 2026-03-18", StringComparison.Ordinal)).Select(one => one["UID"]).ShouldBe(before, ignoreOrder: true);
        Events(Started.Replace("HT-0401", "HT-0402", StringComparison.Ordinal)).Select(one => one["UID"]).Intersect(before).ShouldBeEmpty();
        before.ShouldAllBe(uid => uid.Length == 64 && uid.All(char.IsAsciiHexDigitLower));
    }

    [Theory]
    [InlineData("A,B;C:D\\n\"E\"")]
    [InlineData("A\nEND:VEVENT\nBEGIN:VEVENT\nSUMMARY:B")]
    [InlineData("A\r\nSUMMARY:B")]
    [InlineData("Ä – 東京 🛌 and then a key that is much longer than any line of such a file may be, so that it is folded, perhaps within a sign")]
    public void Key_WithWhatCouldBecomeALine_StaysText(string key)
    {
        var subject = Written.CaseOf(Started) with { Key = key };

        var events = IcsText.Read(CalendarDocument.Write(subject, Written.Assess(subject)).File).Events;

        events.Count.ShouldBe(Events(Started).Count);
        events.ShouldAllBe(one => one["SUMMARY"].ReplaceLineEndings("\n").StartsWith($"{key.ReplaceLineEndings("\n")}: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Identity_IsNotCarriedBeyondTheKey()
    {
        const string Planted = "identity: { patient_name: Planted Name, birth_date: 1971-02-03, record_number: PLANTED-1, member_id: PLANTED-2, practice_name: Planted Practice, reader_name: Planted Reader }\n";
        var text = Started.Replace("coverage:\n", $"{Planted}\ncoverage:\n", StringComparison.Ordinal);

        var file = Encoding.UTF8.GetString(Write(text).File.Span).Replace("\r\n ", "", StringComparison.Ordinal);

        file.ShouldBe(Encoding.UTF8.GetString(Write(Started).File.Span).Replace("\r\n ", "", StringComparison.Ordinal));
        file.ShouldNotContain("planted", Shouldly.Case.Insensitive);
    }

    [Fact]
    public void Calendar_OfASharedCase_IsRefused()
    {
        var subject = Written.CaseOf(Started);

        var written = CalendarDocument.Write(subject, Written.Assess(subject), shared: true);

        written.File.IsEmpty.ShouldBeTrue();
        written.Problems.ShouldHaveSingleItem().Code.ShouldBe("CW0011");
    }

    [Fact]
    public void Calendar_WrittenTwiceUnderOtherCultures_HasTheSameBytes()
    {
        var usual = Write(Started).File.ToArray();
        var before = CultureInfo.CurrentCulture;
        try
        {
            var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            other.NumberFormat.NegativeSign = "~";
            other.DateTimeFormat.DateSeparator = ".";
            other.DateTimeFormat.ShortDatePattern = "dd.MM.yy";
            other.DateTimeFormat.MonthNames = [.. Enumerable.Repeat("month", 13)];
            CultureInfo.CurrentCulture = other;

            Write(Started).File.ToArray().ShouldBe(usual);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static WrittenCalendar Write(string text)
    {
        var subject = Written.CaseOf(text);
        return CalendarDocument.Write(subject, Written.Assess(subject));
    }

    private static IReadOnlyList<IReadOnlyDictionary<string, string>> Events(string text) => IcsText.Read(Write(text).File).Events;

    private static (string Day, string What)[] Days(string text) =>
    [
        .. Events(text).Select(one => (
            DateOnly.ParseExact(one["DTSTART;VALUE=DATE"], "yyyyMMdd", CultureInfo.InvariantCulture).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            one["SUMMARY"][(one["SUMMARY"].IndexOf(": ", StringComparison.Ordinal) + 2)..])),
    ];
}

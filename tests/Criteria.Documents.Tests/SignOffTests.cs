using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>Draft, final, addendum; and a reader who differs.</summary>
public sealed class SignOffTests
{
    private static readonly string Example = Written.ExampleText("oral-appliance-mild");

    private static readonly string Digest = Written.Document(Example, "impression").TextDigest;

    [Fact]
    public void Document_WithoutASignOff_IsADraft()
    {
        var page = Written.Document(Example, "impression").Page!;

        (page.State, page.StateWords).ShouldBe((DocumentState.Draft, "DRAFT, not signed"));
        page.Markdown.ShouldContain("Not reviewed. This is a draft until a named reviewer signs it off; the program does not sign.");
    }

    [Theory]
    [InlineData("reviewed_by: R. Example")]
    [InlineData("reviewed_on: 2026-06-20")]
    public void Document_WithHalfASignOff_StaysADraft(string half) =>
        Written.Document(Signed($"{half}, text_digest: {Digest}"), "impression").Page!.State.ShouldBe(DocumentState.Draft);

    [Fact]
    public void Document_ForAReader_IsNoLessADraftWhenSomebodyReleasedIt() =>
        Written.Document(Signed("released_by: R. Example, released_on: 2026-06-20"), "impression").Page!.StateWords.ShouldBe("DRAFT, not signed");

    [Fact]
    public void Document_ReviewedAndNotLocked_IsADraftThatNamesItsReviewer()
    {
        var page = Written.Document(Signed("reviewed_by: R. Example, reviewed_on: 2026-06-20"), "impression").Page!;

        (page.State, page.StateWords).ShouldBe((DocumentState.Draft, "DRAFT, reviewed by R. Example, not final"));
        page.Markdown.ShouldContain("Reviewed by R. Example on 20 June 2026. The text is not locked yet.");
    }

    [Fact]
    public void Document_ReviewedWithItsDigest_IsFinal()
    {
        var written = Written.Document(Signed($"reviewed_by: R. Example, reviewed_on: 2026-06-20, text_digest: {Digest}"), "impression");

        (written.Page!.State, written.Page.StateWords).ShouldBe((DocumentState.Final, "FINAL, reviewed by R. Example"));
        written.TextDigest.ShouldBe(Digest);
    }

    [Fact]
    public void FinalDocument_WhoseFactsChanged_IsRefusedAndOffersAnAddendum()
    {
        var changed = Signed($"reviewed_by: R. Example, reviewed_on: 2026-06-20, text_digest: {Digest}").Replace("spo2_lowest: 83 %", "spo2_lowest: 82 %", StringComparison.Ordinal);

        var written = Written.Document(changed, "impression");

        written.Page.ShouldBeNull();
        var problem = written.Problems.ShouldHaveSingleItem();
        problem.Code.ShouldBe("CW0001");
        problem.Help!.ShouldContain("`addenda`");
    }

    [Fact]
    public void FinalDocument_WithAnAddendum_ShowsBoth()
    {
        var text = Signed($"reviewed_by: R. Example, reviewed_on: 2026-06-20, text_digest: {Digest}")
            + "addenda:\n  - { id: a1, kind: impression, text: The record number was corrected., by: R. Example, on: 2026-06-25 }\n";

        var page = Written.Document(text, "impression").Page!;

        page.State.ShouldBe(DocumentState.Addendum);
        page.Markdown.ShouldContain("Lowest saturation 83 %");
        page.Markdown.ShouldContain("### Addendum of 25 June 2026, R. Example\n\nThe record number was corrected.");
    }

    [Fact]
    public void Draft_WithAnAddendum_DoesNotPrintIt() =>
        Written.Document(Example + "addenda:\n  - { id: a1, kind: impression, text: Too early., by: R. Example, on: 2026-06-25 }\n", "impression").Page!.Markdown.ShouldNotContain("Too early");

    [Fact]
    public void Override_OfAFinding_StandsBesideItAndNotInstead()
    {
        var text = Example + "overrides:\n  - { id: o1, kind: finding, of: severity.rei-4, reads: moderate, reason: scored again, note: Two events added by hand, by: R. Example, on: 2026-06-20 }\n";

        var before = Written.Assess(Written.CaseOf(Example)).Of("severity.rei-4").Single();
        var after = Written.Assess(Written.CaseOf(text)).Of("severity.rei-4").Single();
        var printed = Written.Text(text, "impression", "markdown");

        printed.ShouldContain("- **Mild** by REI, 4 % rule, per hour of monitoring time: 10.8/h, 72 events in 6 h 40 min.[^5] The reader differs: moderate (scored again; Two events added by hand), R. Example, 20 June 2026.");
        (after.Standing, after.Value!.Band).ShouldBe((before.Standing, before.Value!.Band));
    }

    [Fact]
    public void Override_WhoseReasonIsWithheld_IsPrintedWithoutIt()
    {
        var text = Example + "overrides:\n  - { id: o1, kind: finding, of: severity.rei-4, reads: moderate, reason: scored again, note: private, print_reason: no, by: R. Example, on: 2026-06-20 }\n";

        Written.Text(text, "impression", "markdown").ShouldContain("The reader differs: moderate, R. Example, 20 June 2026.");
    }

    [Theory]
    [InlineData("of: severity.rei-4, reads: moderate, by: R. Example", "CW0006: the override `o1` lacks `reason` and `on`")]
    [InlineData("of: severity.rei4, reads: moderate, reason: other, by: R. Example, on: 2026-06-20", "CW0007: the override `o1` is about `severity.rei4`, and the case has no such finding; did you mean `severity.rei-4`?")]
    public void Override_ThatCannotBeShown_IsAnError(string parts, string message) =>
        Written.Document(Example + $"overrides:\n  - {{ id: o1, kind: finding, {parts} }}\n", "impression").Problems.ShouldHaveSingleItem().ToString().ShouldContain(message);

    private static string Signed(string parts) => Example + $"sign_offs:\n  - {{ id: s1, kind: impression, {parts} }}\n";
}

using Criteria.Core.Logic;
using Criteria.Core.Tests.Support;
using static Criteria.Core.Logic.Truth;

namespace Criteria.Core.Tests.Logic;

/// <summary>A document looked for: one that fits wholly settles it; none is a no only when the list is closed.</summary>
public sealed class RecordLeafTests
{
    private const string Closed = "{ others: no, reviewed_by: staff }";
    private const string Fits = "{ id: a, kind: visit note, signed: 2026-05-20, date: 2026-05-20 }";
    private const string Unsigned = "{ id: b, kind: visit note, signed: no, date: 2026-05-20 }";
    private const string SignatureUnknown = "{ id: c, kind: visit note, signed: unknown, date: 2026-05-20 }";
    private const string SignatureAbsent = "{ id: d, kind: visit note, date: 2026-05-20 }";
    private const string SignedSomeDay = "{ id: e, kind: visit note, signed: yes, date: 2026-05-20 }";
    private const string TooLate = "{ id: f, kind: visit note, signed: yes, date: 2026-06-03 }";
    private const string DateUnknown = "{ id: g, kind: visit note, signed: yes, date: unknown }";
    private const string Other = "{ id: h, kind: order, signed: yes, date: 2026-05-20 }";

    [Theory]
    [InlineData("", Unknown)]
    [InlineData(Closed, NotMet)]
    [InlineData(Fits, Met)]
    [InlineData(SignedSomeDay, Met)]
    [InlineData(Fits + ", " + Closed, Met)]
    [InlineData(Unsigned, Unknown)] // another may exist
    [InlineData(Unsigned + ", " + Closed, NotMet)]
    [InlineData(SignatureUnknown + ", " + Closed, Unknown)]
    [InlineData(SignatureAbsent + ", " + Closed, Unknown)]
    [InlineData(SignatureUnknown + ", " + Fits, Met)]
    [InlineData(SignatureUnknown + ", " + Unsigned + ", " + Closed, Unknown)]
    [InlineData(TooLate + ", " + Closed, NotMet)]
    [InlineData(DateUnknown + ", " + Closed, Unknown)]
    [InlineData(DateUnknown, Unknown)]
    [InlineData(Other, Unknown)]
    [InlineData(Other + ", " + Closed, NotMet)]
    // No one document is both signed and early enough, though each part is found somewhere.
    [InlineData(Unsigned + ", " + TooLate + ", " + Closed, NotMet)]
    public void Evaluate_OverTheDocuments_IsKleenes(string documents, Truth expected)
    {
        Evaluate(documents).ShouldBe(expected);
    }

    [Theory]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: 2026-05-20 }", true, Met)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: 2026-05-21 }", true, Met)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: 2026-05-19 }", true, NotMet)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: no, date: 2026-05-21 }", true, NotMet)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: unknown }", true, Unknown)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, date: 2026-05-21 }", true, Unknown)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: 2026-05-19 }", false, Unknown)] // another order may exist
    [InlineData("{ id: a, kind: visit note, date: unknown }, { id: b, kind: order, signed: yes, date: 2026-05-21 }", true, Unknown)]
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }", true, NotMet)]
    // One pair that fits is enough.
    [InlineData("{ id: a, kind: visit note, date: 2026-05-20 }, { id: b, kind: order, signed: yes, date: 2026-05-19 }, { id: c, kind: order, signed: yes, date: 2026-05-22 }", true, Met)]
    public void Evaluate_OfADateAgainstAnotherDocument_LooksForAPair(string documents, bool closed, Truth expected) =>
        Rules.One("when: { document: visit note, dated: { on or before: { document: order, signed: yes } } }")
            .Evaluate($"documents: [{documents}{(closed ? ", " + Closed : "")}]").Truth.ShouldBe(expected);

    [Fact]
    public void Missing_OfADateAgainstAnotherDocument_NamesTheOtherDocument()
    {
        var rules = Rules.One("when: { document: visit note, dated: { on or before: { document: order, signed: yes } } }");

        var view = rules.Conclude($"documents: [{{ id: a, kind: visit note, date: 2026-05-20 }}, {{ id: b, kind: order, date: 2026-05-21 }}, {Closed}]");

        view[0].Missing.Select(fact => fact.Fact).ShouldBe(["b: document.signed"]);
    }

    [Theory]
    [InlineData("{ on or before: 2026-01-01 }")]
    [InlineData("{ on or before: { paper: order } }")]
    [InlineData("{ near: { document: order } }")]
    [InlineData("{ before: { document: order, its: delivered } }")]
    [InlineData("{ before: { document: order }, after: { document: order } }")]
    public void Load_OfAFaultyDateAgainstAnotherDocument_IsRefused(string relation) =>
        Rules.Load($"criteria:\n  - {{ id: c, title: C, cites: [s-1], when: {{ document: visit note, dated: {relation} }} }}").Library.ShouldBeNull();

    [Theory]
    [InlineData("{ id: a, kind: visit note, pages: 1 }", NotMet)]
    [InlineData("{ id: a, kind: visit note, pages: 2 }", Met)]
    [InlineData("{ id: a, kind: visit note }", Unknown)]
    public void Evaluate_OfANumberAttribute_ComparesIt(string document, Truth expected) =>
        Evaluate(document + ", " + Closed, "pages: '>= 2'").ShouldBe(expected);

    [Theory]
    [InlineData("{ id: a, kind: visit note, author: physician }", Met)]
    [InlineData("{ id: a, kind: visit note, author: dentist }", NotMet)]
    [InlineData("{ id: a, kind: visit note }", Unknown)]
    public void Evaluate_OfAWordAttribute_ReadsIt(string document, Truth expected) =>
        Evaluate(document + ", " + Closed, "author: physician").ShouldBe(expected);

    [Theory]
    [InlineData("{ id: a, kind: visit note, in_person: not applicable }", "in_person: yes", NotMet)]
    [InlineData("{ id: a, kind: visit note, in_person: not applicable }", "in_person: no", Met)]
    [InlineData("{ id: a, kind: visit note, signed: 2026-05-20 }", "signed: no", NotMet)]
    [InlineData("{ id: a, kind: visit note, signed: yes }", "signed: before 2026-06-01", Unknown)] // signed, on a day nobody can read
    [InlineData("{ id: a, kind: visit note, signed: no }", "signed: before 2026-06-01", NotMet)]
    [InlineData("{ id: a, kind: visit note, signed: no }", "signed: on or after 2026-06-01", NotMet)]
    public void Evaluate_OfAYesNoAttribute_KeepsItsStatesApart(string document, string test, Truth expected) =>
        Evaluate(document + ", " + Closed, test).ShouldBe(expected);

    [Fact]
    public void Missing_WhenADocumentIsOpen_NamesItsAttribute()
    {
        var rules = Rules.One("when: { document: visit note, signed: yes }\nowner: billing staff\nask: A signed visit note.");

        var conclusion = rules.Conclude(Documents(SignatureUnknown + ", " + Closed))[0];

        conclusion.Missing.Single().ShouldBe(new MissingFact("c: document.signed", "Signed of c", "A signed visit note.", "billing staff"));
    }

    [Fact]
    public void Missing_WhenNoDocumentIsListed_AsksWhatTheCriterionAsks()
    {
        var rules = Rules.One("when: { document: visit note, signed: yes }\nowner: billing staff\nask: A signed visit note.");

        var conclusion = rules.Conclude(Documents(""))[0];

        conclusion.Missing.Single().ShouldBe(
            new MissingFact("documents: visit note", "Document on file: visit note (Signed: yes)", "A signed visit note.", "billing staff"));
    }

    private static Truth Evaluate(string documents, string test = "signed: yes\n  dated: before 2026-06-03") =>
        Rules.One($"when:\n  document: visit note\n  {test}").Evaluate(Documents(documents)).Truth;

    private static string Documents(string documents) => $"documents: [{documents}]";
}

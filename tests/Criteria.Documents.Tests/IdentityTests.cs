using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>A document carries the identity that it declares, and no other.</summary>
public sealed class IdentityTests
{
    private static readonly string[] Names = [.. Written.Library.Vocabulary.Facts.Where(fact => fact.At?.StartsWith("identity.", StringComparison.Ordinal) == true && fact.Kind == Core.Facts.FactKind.Text).Select(fact => fact.At!["identity.".Length..])];

    public static TheoryData<string> Documents => [.. Written.Templates.Documents.Select(document => document.Name)];

    [Theory]
    [MemberData(nameof(Documents))]
    public void Document_OfACaseFullOfIdentifiers_PrintsOnlyThoseItDeclares(string document)
    {
        var planted = Written.ExampleText("oral-appliance-mild")
            + "identity:\n" + string.Concat(Names.Select(name => $"  {name}: Planted-{name}\n")) + "  birth_date: 1899-12-31\n"
            + "recipients:\n" + string.Concat(Written.Library.Vocabulary.Record("recipients")!.Kinds.Select((kind, i) => $"  - {{ id: r{i}, kind: {kind}, name: Planted-recipient-{i}, fax: Planted-fax-{i} }}\n"))
            + $"sign_offs:\n  - {{ id: s1, kind: {document}, released_by: R. Example, released_on: 2026-06-20 }}\n";
        var head = Written.Templates.Find(document)!.Head;
        var subject = Written.CaseOf(planted);
        var kinds = Written.Library.Vocabulary.Record("recipients")!.Kinds;
        var to = head.To.IsEmpty ? null : $"r{kinds.IndexOf(head.To[0])}";

        var text = Written.Text(Written.Document(subject, document, to), "markdown");

        Names.Where(name => text.Contains($"Planted-{name}", StringComparison.Ordinal) || text.Contains($"Planted-{name.Replace("_", "\\_", StringComparison.Ordinal)}", StringComparison.Ordinal))
            .Except(head.Carries).ShouldBeEmpty();
        text.Contains("1899", StringComparison.Ordinal).ShouldBe(text.Contains("31 December 1899", StringComparison.Ordinal) && head.Carries.Contains("birth_date"));
        for (var i = 0; i < kinds.Length; i++)
        {
            (text.Contains($"Planted-recipient-{i}", StringComparison.Ordinal) && $"r{i}" != to).ShouldBeFalse($"recipient {i}");
        }
    }
}

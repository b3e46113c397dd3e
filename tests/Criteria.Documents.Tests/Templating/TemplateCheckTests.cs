using System.Text;
using Criteria.Core.Reading;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests.Templating;

public sealed class TemplateCheckTests
{
    private const string Head = "---\ntitle: T\nsummary: S.\n---\n";

    [Fact]
    public void Templates_Shipped_LoadWithoutAProblem() => DocumentTemplates.Load(Written.Library).Problems.ShouldBeEmpty();

    [Theory]
    [InlineData("{{ case_kye }}", "5:4: error CT0002: unknown name `case_kye`; did you mean `case_key`?")]
    [InlineData("Text\n{% rests_on \"age\" %}{{ facts[\"age\"].txt }}{% endrests_on %}", "6:37: error CT0002: unknown name `facts[\"age\"].txt`; did you mean `text`?")]
    [InlineData("{% rests_on \"severity.rei4\" %}x{% endrests_on %}", "5:14: error CT0003: no criterion and no fact is named `severity.rei4`; did you mean `severity.rei-4`?")]
    [InlineData("{% for night in nights %}{{ night.facts[\"aeg\"].label }}{% endfor %}", "5:42: error CT0003: no criterion and no fact is named `aeg`; did you mean `age`?")]
    [InlineData("Age {{ facts[\"age\"].text }}", "5:21: error CT0004: `facts[\"age\"].text` is printed outside `rests_on`")]
    [InlineData("{% assign a = facts[\"age\"] %}{% assign b = a.text %}{{ b }}", "5:56: error CT0004: `facts[\"age\"].text` is printed outside `rests_on`")]
    [InlineData("{% for g in nights.first.grades %}{{ g.title | downcase }}{% endfor %}", "5:40: error CT0004: `g.title` is printed outside `rests_on`")]
    [InlineData("{% if findings[\"severity.rei-4\"].is_met %}It is severe.{% endif %}", "5:43: error CT0005: `It is severe.` depends on the case and stands outside `rests_on`")]
    [InlineData("{% for x in case_key %}{% endfor %}", "5:13: error CT0006: `case_key` is not a list")]
    [InlineData("{% capture x %}y{% endcapture %}", "5:4: error CT0007: `capture` is not used in these templates")]
    [InlineData("{{ case_key | upcas }}", "5:15: error CT0008: unknown filter `upcas`")]
    [InlineData("{{ identity.birth_date }}", "5:13: error CT0009: the document does not declare that it carries `birth_date`")]
    [InlineData("{{ recipient.name }}", "5:4: error CT0009: the document does not declare that it carries `recipient`")]
    [InlineData("{% rests_on case_key %}x{% endrests_on %}", "5:13: error CT0015: `rests_on` and `without` take names of findings and facts")]
    [InlineData("{% rests_on \"age\", opne: true %}x{% endrests_on %}", "5:20: error CT0002: unknown name `opne`; did you mean `open`?")]
    [InlineData("{% nosuch %}", "error CT0001: the template cannot be read: unknown tag `nosuch`")]
    [InlineData("a\n{% if in_scope %}b", "6:")]
    public void Template_WithAFault_IsRefusedWithItsPlace(string body, string message) => Problems(Head + body).ShouldHaveSingleItem().ToString().ShouldContain(message);

    [Theory]
    [InlineData("no head", "CT0011")]
    [InlineData("---\ntitel: T\nsummary: S.\n---\n", "CT0012", "CT0014")]
    [InlineData("---\ntitle: T\nsummary: S.\npart: legal\n---\n", "CT0013")]
    [InlineData("---\ntitle: T\nsummary: S.\ncarries: member_id, patent_name\n---\n", "CT0002")]
    [InlineData("---\ntitle: T\nsummary: S.\ncarries: practice_fax\n---\n", "CT0010")]
    public void Head_WithAFault_IsRefused(string template, params string[] codes) => Problems(template).Select(problem => problem.Code).ShouldBe(codes, ignoreOrder: true);

    [Fact]
    public void Template_WithManyFaults_HasThemAllReportedInOrder() =>
        Problems(Head + "{{ a }}\n{{ b }}\n{% rests_on \"c\" %}{{ d }}{% endrests_on %}\n").Select(problem => (problem.Span.Line, problem.Span.Column)).ShouldBe([(5, 4), (6, 4), (7, 14), (7, 22)]);

    [Fact]
    public void Template_NamedLikeNoDocument_IsRefused() =>
        DocumentTemplates.Load(Written.Library, new SourceFile("own/impresion.md.liquid", Encoding.UTF8.GetBytes(Head + "x"))).Problems.ShouldHaveSingleItem().ToString()
            .ShouldContain("CT0016: there is no document `impresion`; did you mean `impression`?");

    [Fact]
    public void Template_OfAClinic_TakesThePlaceOfTheShippedOne()
    {
        var loading = Load(Head + "## Ours\n\n{% rests_on \"age\" %}Age {{ facts[\"age\"].text }}.{% endrests_on %}\n");

        var page = Written.Document(Written.CaseOf(Written.ExampleText("oral-appliance-mild")), "impression", templates: loading.Templates).Page!;

        page.Markdown.ShouldStartWith("## Ours\n\nAge 67 years.[^1]\n");
    }

    private static IReadOnlyList<Diagnostic> Problems(string template) => Load(template).Problems;

    private static TemplatesLoading Load(string template) => DocumentTemplates.Load(Written.Library, new SourceFile("own/impression.md.liquid", Encoding.UTF8.GetBytes(template)));
}

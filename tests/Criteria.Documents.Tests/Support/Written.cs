using System.Text;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Renderers;
using Criteria.Engine;
using Criteria.Engine.Findings;

namespace Criteria.Documents.Tests.Support;

/// <summary>Documents of example cases, as the command line writes them.</summary>
internal static class Written
{
    public static RulesetLibrary Library { get; } = ShippedRules.Loading.Library!;

    public static DocumentTemplates Templates { get; } = DocumentTemplates.Load(Library).Templates ?? throw new InvalidOperationException("the shipped templates do not load");

    private static readonly Assessor Assessor = new(Library);

    private static readonly string Root = FindRoot();

    public static string RepositoryRoot => Root;

    public static IEnumerable<string> Examples { get; } =
        [.. Directory.EnumerateDirectories(Path.Combine(Root, "examples")).Where(folder => File.Exists(Path.Combine(folder, "case.yaml"))).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal)];

    public static string ExampleText(string name) => File.ReadAllText(Path.Combine(Root, "examples", name, "case.yaml"));

    public static Case CaseOf(string text, RulesetLibrary? library = null)
    {
        var reading = new CaseReader((library ?? Library).Vocabulary).Read(new SourceFile("case.yaml", Encoding.UTF8.GetBytes(text)));
        return reading.Case ?? throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }

    public static Assessment Assess(Case subject) => Assessor.Assess(subject, subject.RulesDate!.Value);

    public static WrittenDocument Document(Case subject, string document, string? recipient = null, DocumentTemplates? templates = null) =>
        new DocumentWriter(templates ?? Templates, subject, Assess(subject)).Write(new DocumentOrder(document, recipient));

    /// <summary>A document of the de-identified form.</summary>
    public static WrittenDocument Shared(Case subject, string document)
    {
        var shared = Documents.Sharing.Deidentified.Of(subject);
        return new DocumentWriter(Templates, shared, Assessor.Assess(shared, shared.RulesDate!.Value)).Write(new DocumentOrder(document, YearsOnly: true));
    }

    public static WrittenDocument Document(string caseText, string document) => Document(CaseOf(caseText), document);

    /// <summary>A document of a case file under other rules.</summary>
    public static WrittenDocument Document(string caseText, string document, RulesetLibrary library)
    {
        var subject = CaseOf(caseText, library);
        var assessment = ReferenceEquals(library, Library) ? Assess(subject) : new Assessor(library).Assess(subject, subject.RulesDate!.Value);
        return new DocumentWriter(Templates, subject, assessment).Write(new DocumentOrder(document));
    }

    /// <summary>The text of a document of a case file.</summary>
    public static string Text(string caseText, string document, string format = "text", bool ascii = false)
    {
        var written = Document(caseText, document);
        written.Problems.ShouldBeEmpty();
        return Text(written, format, ascii);
    }

    public static string Text(WrittenDocument written, string format = "text", bool ascii = false) =>
        Encoding.UTF8.GetString(DocumentFormats.Render(written.Page!, format, ascii).Span);

    /// <summary>The case without one fact, in the case and in every night.</summary>
    public static Case Without(this Case subject, FactDefinition fact)
    {
        FactSet Cut(FactSet facts) => facts.With(Fact.Absent(fact));
        return subject with { Facts = fact.Scope == FactScope.Case ? Cut(subject.Facts) : subject.Facts, Nights = [.. subject.Nights.Select(night => night with { Facts = Cut(night.Facts) })] };
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Criteria.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("no Criteria.sln above the tests");
        }

        return folder.FullName;
    }
}

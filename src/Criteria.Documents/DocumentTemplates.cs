using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Model;
using Criteria.Documents.Templating;

namespace Criteria.Documents;

/// <summary>One document that can be written.</summary>
/// <param name="Name">Its name on the command line.</param>
/// <param name="Title">Its title.</param>
/// <param name="Summary">One sentence.</param>
/// <param name="Part"><c>clinical</c>, <c>coverage</c> or <c>both</c>.</param>
public sealed record DocumentKind(string Name, string Title, string Summary, string Part);

/// <summary>The templates, or null; and every problem found.</summary>
public sealed record TemplatesLoading(DocumentTemplates? Templates, ImmutableArray<Diagnostic> Problems);

/// <summary>The checked templates of all documents.</summary>
/// <remarks>Thread-safe once loaded.</remarks>
public sealed class DocumentTemplates
{
    private readonly ImmutableArray<Template> _templates;

    private DocumentTemplates(ImmutableArray<Template> templates) => _templates = templates;

    /// <summary>The documents, in the order of their names.</summary>
    public IReadOnlyList<DocumentKind> Documents =>
        [.. _templates.Select(template => new DocumentKind(template.Name, template.Head.Title, template.Head.Summary, template.Head.Part switch
        {
            DocumentPart.Coverage => "coverage",
            DocumentPart.Both => "both",
            _ => "clinical",
        }))];

    /// <summary>The templates that ship with the program, to be copied and edited.</summary>
    public static ImmutableArray<SourceFile> Shipped()
    {
        var assembly = typeof(DocumentTemplates).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames().Where(name => name.EndsWith(Template.Extension, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
                .Select(name => new SourceFile(name, Content(name))),
        ];

        ReadOnlyMemory<byte> Content(string name)
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
    }

    /// <summary>Loads the shipped templates, and in the place of some of them those of a clinic.</summary>
    /// <param name="library">The rules whose names the templates use.</param>
    /// <param name="own">The clinic's templates, named as the shipped ones; a folder before the name does not matter.</param>
    public static TemplatesLoading Load(RulesetLibrary library, params IReadOnlyCollection<SourceFile> own)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(own);
        var known = Known(library);
        var problems = new List<Diagnostic>();
        var shipped = Shipped().ToDictionary(file => NameOf(file.Name), file => Template.Read(NameOf(file.Name), file, known, problems), StringComparer.Ordinal);
        foreach (var file in own.OrderBy(file => file.Name, StringComparer.Ordinal))
        {
            var name = NameOf(file.Name);
            if (!shipped.TryGetValue(name, out var replaced))
            {
                problems.Add(TemplateDiagnostics.UnknownDocument(name, NearestName.Of(name, shipped.Keys), shipped.Keys.Order(StringComparer.Ordinal), SourceSpan.StartOf(file.Name)));
                continue;
            }

            var template = Template.Read(name, file, known, problems);
            problems.AddRange((template?.Head.Carries ?? []).Except(replaced?.Head.Carries ?? []).Select(more => TemplateDiagnostics.CarriesMore(more, SourceSpan.StartOf(file.Name))));
            shipped[name] = template;
        }

        return problems.Count > 0
            ? new TemplatesLoading(null, [.. problems.OrderBy(problem => problem.Span.File, StringComparer.Ordinal).ThenBy(problem => problem.Span.Line).ThenBy(problem => problem.Span.Column)])
            : new TemplatesLoading(new DocumentTemplates([.. shipped.Values.OfType<Template>().OrderBy(template => template.Name, StringComparer.Ordinal)]), []);
    }

    internal Template? Find(string name) => _templates.FirstOrDefault(template => template.Name == name);

    private static string NameOf(string file)
    {
        var name = file.Replace('\\', '/').Split('/')[^1];
        return name.EndsWith(Template.Extension, StringComparison.Ordinal) ? name[..^Template.Extension.Length] : name;
    }

    private static KnownNames Known(RulesetLibrary library) => new(
        library.All.Criteria.Select(criterion => criterion.Id).ToHashSet(StringComparer.Ordinal),
        library.Vocabulary.Facts.Where(fact => !IsIdentity(fact)).Select(fact => fact.Id).ToHashSet(StringComparer.Ordinal),
        library.Vocabulary.Facts.Where(IsIdentity).Select(fact => fact.At![(IdentityTable.Place.Length + 1)..]).ToHashSet(StringComparer.Ordinal),
        library.Vocabulary.Facts.Where(fact => !IsIdentity(fact) && fact.At is not null).SelectMany(fact => Sections(fact.At!)).ToHashSet(StringComparer.Ordinal));

    private static IEnumerable<string> Sections(string place)
    {
        for (var dot = place.LastIndexOf('.'); dot > 0; dot = place.LastIndexOf('.', dot - 1))
        {
            yield return place[..dot];
        }
    }

    private static bool IsIdentity(FactDefinition fact) => fact.At?.StartsWith(IdentityTable.Place + ".", StringComparison.Ordinal) == true;
}

using System.Text;
using System.Text.RegularExpressions;
using Criteria.Core.Reading;
using Criteria.Documents.Model;
using Fluid;
using Fluid.Parser;

namespace Criteria.Documents.Templating;

/// <summary>One template, checked.</summary>
internal sealed partial class Template
{
    private readonly FluidTemplate _template;

    private Template(string name, TemplateHead head, FluidTemplate template) => (Name, Head, _template) = (name, head, template);

    /// <summary>The end of a template's file name.</summary>
    public const string Extension = ".md.liquid";

    /// <summary>The document's name: the file's name without its end.</summary>
    public string Name { get; }

    /// <summary>What it is and what it may carry.</summary>
    public TemplateHead Head { get; }

    /// <summary>Reads and checks a template; null when it has a problem.</summary>
    public static Template? Read(string name, SourceFile file, KnownNames known, List<Diagnostic> problems)
    {
        var before = problems.Count;
        var text = Encoding.UTF8.GetString(file.Content.Span).ReplaceLineEndings("\n");
        var (head, body) = TemplateHead.Read(file.Name, text, problems);
        foreach (var carried in head.Carries.Where(carried => !known.Identity.Contains(carried)))
        {
            problems.Add(TemplateDiagnostics.UnknownName($"identity.{carried}", NearestName.Of(carried, known.Identity), known.Identity, new TemplateText(file.Name, text).Next(carried)));
        }

        if (!TemplateParser.Instance.TryParse(Tidy.LinesOfTags(body), out var template, out var error))
        {
            problems.Add(SyntaxOf(error, file.Name));
            return null;
        }

        TemplateChecker.Check((FluidTemplate)template, file.Name, body, head, known, problems);
        return problems.Count > before ? null : new Template(name, head, (FluidTemplate)template);
    }

    /// <summary>The Markdown of the template for a case.</summary>
    public string Render(CaseModel model, TraceNotes notes)
    {
        var context = new TemplateContext(TemplateNames.Options);
        foreach (var (member, property) in TemplateNames.Of(typeof(CaseModel)))
        {
            context.SetValue(member, Fluid.Values.FluidValue.Create(property.GetValue(model), TemplateNames.Options));
        }

        context.AmbientValues[TraceNotes.Key] = notes;
        context.AmbientValues[nameof(FindingTable)] = model.Findings;
        context.AmbientValues[nameof(FactTable)] = model.Facts;
        return Tidy.Up(_template.Render(context, MarkdownEncoder.Instance, isolateContext: false));
    }

    // "Unknown tag 'nosuch' at (1:10)", and the source below it.
    private static Diagnostic SyntaxOf(string error, string file)
    {
        var match = Place().Match(error);
        if (!match.Success)
        {
            return TemplateDiagnostics.Syntax(error.Split('\n')[0], SourceSpan.StartOf(file));
        }

        var (line, column) = (int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[3].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        var message = match.Groups[1].Value.Replace('\'', '`');
        return TemplateDiagnostics.Syntax(char.ToLowerInvariant(message[0]) + message[1..], new SourceSpan(file, line, column, line, column + 1));
    }

    [GeneratedRegex(@"^(.+) at \((\d+):(\d+)\)", RegexOptions.Singleline)]
    private static partial Regex Place();
}

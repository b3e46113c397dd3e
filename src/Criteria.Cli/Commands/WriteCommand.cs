using Criteria.Engine.Findings;
using Criteria.Documents.Figures;
using System.Collections.Immutable;
using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents;
using Criteria.Documents.Renderers;
using Criteria.Documents.Sharing;
using Criteria.Engine;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria write</c>: the documents that people hand on.</summary>
internal static class WriteCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "A case file; `-` reads standard input.", Arity = ArgumentArity.ZeroOrOne };
        file.Validators.Add(SharedOptions.RefuseOptions);
        var documents = new Option<string?>("--document") { Description = "The documents to write, with commas between them. `criteria write --list` shows them.", HelpName = "NAME[,NAME...]" };
        var format = SharedOptions.Format([.. DocumentFormats.All, CalendarDocument.Format]);
        var folder = new Option<string?>("--out") { Description = "Write each document into this folder. Without it, one document is printed.", HelpName = "DIR" };
        var paper = new Option<string>("--paper") { Description = "One of letter, a4.", DefaultValueFactory = _ => "letter", HelpName = "letter|a4" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var ascii = new Option<bool>("--ascii") { Description = "In plain text: characters of seven bits only, for chart boxes that know no others." };
        var force = SharedOptions.Force();
        var to = new Option<string?>("--to") { Description = "The id of the recipient in the case, when a document could go to several.", HelpName = "ID" };
        var templates = new Option<string?>("--templates") { Description = "A folder with templates of your own; each takes the place of the shipped one of its name.", HelpName = "DIR" };
        var copy = new Option<string?>("--copy-templates") { Description = "Copy the shipped templates into this folder, to be edited.", HelpName = "DIR" };
        var shared = new Option<bool>("--deidentified") { Description = "For sharing: without names, numbers, free text and days (Safe Harbor classes)." };
        var list = new Option<bool>("--list") { Description = "List the documents." };
        var asOf = SharedOptions.AsOf();
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("write", "Write documents of a case: impression, checklist, letters. Drafts until a named reviewer signs them off; never signed by the program.")
        {
            file, documents, format, folder, paper, ascii, shared, force, to, templates, copy, list, asOf, rulesets,
        };
        command.SetAction(parsed => Run(terminal, new WriteRequest(
            parsed.GetValue(file), parsed.GetValue(documents), parsed.GetResult(format) is { Implicit: false } ? parsed.GetValue(format) : null, parsed.GetValue(folder), parsed.GetValue(paper) == "a4" ? Paper.A4 : Paper.Letter,
            parsed.GetValue(ascii), parsed.GetValue(force), parsed.GetValue(to), parsed.GetValue(templates), parsed.GetValue(copy), parsed.GetValue(list), parsed.GetValue(shared), parsed.GetValue(asOf), parsed.GetValue(rulesets))));
        return command;
    }

    private static int Run(Terminal terminal, WriteRequest request)
    {
        if (request.CopyTemplates is { } target)
        {
            return TemplateFiles.Copy(target, request.Force, terminal);
        }

        if (!request.List && (request.File is null || request.Documents is null))
        {
            terminal.Error.WriteLine(request.File is null ? "Name a case file, or give --list or --copy-templates." : "Name what to write with --document; `criteria write --list` shows the documents.");
            return ExitCode.Usage;
        }

        if (RulesLoader.Load(request.Rulesets, terminal, out var code) is not { } library || TemplateFiles.Load(request.Templates, library, terminal, out code) is not { } loaded)
        {
            return code;
        }

        return request.List ? List(terminal, loaded) : Write(terminal, request, library, loaded);
    }

    private static int List(Terminal terminal, DocumentTemplates templates)
    {
        foreach (var document in Kinds(templates))
        {
            terminal.Out.WriteLine($"{document.Name}  ({document.Part})");
            terminal.Out.WriteLine($"    {document.Summary}");
        }

        return ExitCode.Done;
    }

    // The calendar has no template; it stands among the others by its name.
    private static IEnumerable<DocumentKind> Kinds(DocumentTemplates templates) =>
        templates.Documents.Append(CalendarDocument.Kind).OrderBy(document => document.Name, StringComparer.Ordinal);

    private static int Write(Terminal terminal, WriteRequest request, RulesetLibrary library, DocumentTemplates templates)
    {
        var names = request.Documents!.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct(StringComparer.Ordinal).ToArray();
        var known = Kinds(templates).Select(document => document.Name).ToArray();
        foreach (var name in names.Except(known))
        {
            var near = NearestName.Of(name, known);
            terminal.Error.WriteLine($"--document: there is no `{name}`; {(near is null ? $"there are {string.Join(", ", known)}" : $"did you mean `{near}`?")}");
        }

        if (names.Length == 0 || names.Except(known).Any())
        {
            return ExitCode.Usage;
        }

        if (!HaveFormat(terminal, request, names))
        {
            return ExitCode.Usage;
        }

        if (request.Folder is null && names.Length > 1)
        {
            terminal.Error.WriteLine("Several documents need a folder: add --out DIR.");
            return ExitCode.Usage;
        }

        return Documents(terminal, request, library, templates, names, out var code) is { } written
            ? DocumentFiles.Write(written, request, terminal)
            : code;
    }

    // Days are no text: each format is for one kind of document only.
    private static bool HaveFormat(Terminal terminal, WriteRequest request, string[] names)
    {
        var calendar = names.Contains(CalendarDocument.Kind.Name);
        if (calendar && request.Format is { } format && format != CalendarDocument.Format)
        {
            terminal.Error.WriteLine($"--format: `{CalendarDocument.Kind.Name}` is written as {CalendarDocument.Format} only, not as {format}. Without --format each document has its usual one.");
            return false;
        }

        if (request.Format == CalendarDocument.Format && names.Except([CalendarDocument.Kind.Name]).ToArray() is { Length: > 0 } others)
        {
            terminal.Error.WriteLine($"--format: {CalendarDocument.Format} is for `{CalendarDocument.Kind.Name}` only, not for {string.Join(", ", others)}. Without --format each document has its usual one.");
            return false;
        }

        return true;
    }

    // All documents are made before the first is written, so that a problem of one leaves nothing half done.
    private static DocumentFile[]? Documents(Terminal terminal, WriteRequest request, RulesetLibrary library, DocumentTemplates templates, string[] names, out int code)
    {
        code = ExitCode.CaseProblems;
        if (InputFiles.Read(request.File!, terminal.In, out var why) is not { } file)
        {
            terminal.Error.WriteLine(why);
            return null;
        }

        var reading = new CaseReader(library.Vocabulary).Read(file);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Case is not { } subject)
        {
            return null;
        }

        if ((request.AsOf ?? subject.RulesDate) is not { } date)
        {
            Diagnostics.Print([FileDiagnostics.NoDate(file.Name)], terminal.Error);
            return null;
        }

        // A message quotes what was entered.
        subject = request.Deidentified ? Deidentified.Of(subject) : subject;
        var assessment = new Assessor(library, CasesExpected.One).Assess(subject, date, request.Deidentified ? [] : reading.Problems);
        var format = request.Format ?? DocumentFormats.All[0];
        var writer = new DocumentWriter(templates, subject, assessment, Figures(assessment, format));
        var made = new List<DocumentFile>();
        var problems = new List<Diagnostic>();
        foreach (var name in names)
        {
            problems.AddRange(name == CalendarDocument.Kind.Name
                ? Calendar(subject, assessment, request, file.Name, made)
                : Text(writer, new DocumentOrder(name, request.Recipient, request.Paper, file.Name, request.Deidentified), format, request.Ascii, made));
        }

        Diagnostics.Print(problems.Distinct(), terminal.Error);
        code = problems.Any(problem => problem.Severity == Severity.Error) ? ExitCode.CaseProblems : ExitCode.Done;
        return code == ExitCode.Done && made.Count > 0 ? [.. made] : null;
    }

    private static ImmutableArray<Diagnostic> Text(DocumentWriter writer, DocumentOrder order, string format, bool ascii, List<DocumentFile> made)
    {
        var written = writer.Write(order);
        if (written.Page is { } page)
        {
            made.Add(new DocumentFile(page.Name, page.CaseKey, format, DocumentFormats.Render(page, format, ascii), page.State == DocumentState.Draft ? written.TextDigest : null));
        }

        return written.Problems;
    }

    private static ImmutableArray<Diagnostic> Calendar(Case subject, Assessment assessment, WriteRequest request, string file, List<DocumentFile> made)
    {
        var written = CalendarDocument.Write(subject, assessment, file, request.Deidentified);
        if (!written.File.IsEmpty)
        {
            made.Add(new DocumentFile(CalendarDocument.Kind.Name, assessment.Case, CalendarDocument.Format, written.File, null));
        }

        return written.Problems;
    }

    // The grades that stand at the top of a report. Drawing points takes time that only formats without vectors need.
    private static ImmutableArray<DocumentFigure> Figures(Assessment assessment, string format) =>
    [
        .. assessment.Findings.Where(finding => finding.Criterion.Shown == Shown.AtTheTop && finding.Standing != Core.Logic.Standing.NotApplicable)
            .Select(finding => (finding.Id, finding.Night, Figure: SeverityFigure.Of(finding)))
            .Where(one => one.Figure is not null)
            .Select(one => one.Figure!.ToDocument(one.Night is null ? one.Id : $"{one.Id}-{one.Night}", format is "pdf" or "docx")),
    ];
}

/// <summary>What <c>criteria write</c> was asked for.</summary>
internal sealed record WriteRequest(
    string? File, string? Documents, string? Format, string? Folder, Paper Paper, bool Ascii, bool Force, string? Recipient,
    string? Templates, string? CopyTemplates, bool List, bool Deidentified, DateOnly? AsOf, string? Rulesets);

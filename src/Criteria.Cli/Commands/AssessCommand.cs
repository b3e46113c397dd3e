using System.CommandLine;
using System.Text;
using System.Text.Json;
using Criteria.Cli.Files;
using Criteria.Cli.Report;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;
using Criteria.Engine;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Criteria.Engine.Output;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria assess</c>: the main job.</summary>
internal static class AssessCommand
{
    private const string Text = "text";
    private const string Json = "json";
    private const string NdJson = "ndjson";

    public static Command Create(Terminal terminal)
    {
        var files = SharedOptions.Cases();
        var format = SharedOptions.Format(Text, Json, NdJson);
        var asOf = SharedOptions.AsOf();
        var rulesets = SharedOptions.Rulesets();
        var path = SharedOptions.Out();
        var command = new Command("assess", "Assess cases: the night, the clinical draft, the coverage check, what is missing and whom to ask.")
        {
            files, format, asOf, rulesets, path,
        };
        command.SetAction(parsed => Run(
            terminal, parsed.GetValue(files)!, parsed.GetValue(format)!, parsed.GetValue(asOf), parsed.GetValue(rulesets), parsed.GetValue(path)));
        return command;
    }

    private static int Run(Terminal terminal, string[] names, string format, DateOnly? asOf, string? rulesets, string? path)
    {
        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (path is not null && names.Any(name => name != InputFiles.StandardInput && OutputFile.IsSame(name, path)))
        {
            terminal.Error.WriteLine($"{path}: is one of the cases, and the report would overwrite it");
            return ExitCode.Usage;
        }

        return path is null
            ? Assess(terminal, names, format, asOf, library, terminal.Out)
            : OutputFile.Write(path, terminal, writer => Assess(terminal, names, format, asOf, library, writer));
    }

    private static int Assess(Terminal terminal, string[] names, string format, DateOnly? asOf, RulesetLibrary library, TextWriter output)
    {
        var reader = new CaseReader(library.Vocabulary);
        var assessor = new Assessor(library, names.Length == 1 ? CasesExpected.One : CasesExpected.Many);
        var progress = new Progress(terminal, names.Length);
        var printer = Printer(format, output, names.Length);
        var worst = ExitCode.Done;
        printer.Begin();
        foreach (var name in names)
        {
            var (subject, assessment, problems) = One(name, terminal, reader, assessor, asOf);
            if (assessment is null)
            {
                progress.Clear();
                Diagnostics.Print(problems, terminal.Error);
                worst = ExitCode.CaseProblems;
                printer.Unread(problems);
            }
            else
            {
                printer.Print(assessment, printer.WantsOutlook ? assessor.OutlookOf(subject!, assessment) : null);
            }

            progress.Step();
        }

        printer.End();
        progress.Clear();
        return worst;
    }

    private static (Case? Subject, Assessment? Assessment, IReadOnlyList<Diagnostic> Problems) One(string name, Terminal terminal, CaseReader reader, Assessor assessor, DateOnly? asOf)
    {
        if (InputFiles.Read(name, terminal.In, out var why) is not { } file)
        {
            return (null, null, [FileDiagnostics.Unreadable(name, why!)]);
        }

        var reading = reader.Read(file);
        if (reading.Case is not { } subject)
        {
            return (null, null, reading.Problems);
        }

        if ((asOf ?? subject.RulesDate) is not { } date)
        {
            return (null, null, [.. reading.Problems, FileDiagnostics.NoDate(file.Name)]);
        }

        return (subject, assessor.Assess(subject, date, reading.Problems), reading.Problems);
    }

    private static AssessmentPrinter Printer(string format, TextWriter output, int cases) => format switch
    {
        Json => new JsonPrinter(output, asArray: cases > 1),
        NdJson => new NdJsonPrinter(output),
        _ => new TextPrinter(output),
    };

    /// <summary>Prints assessments one after the other, so that memory does not grow with their number.</summary>
    private abstract class AssessmentPrinter
    {
        public virtual void Begin()
        {
        }

        /// <summary>Whether the reader is told what would change it and what is worth asking; of lines for another program, no.</summary>
        public virtual bool WantsOutlook => true;

        public abstract void Print(Assessment assessment, Outlook? outlook);

        public abstract void Unread(IReadOnlyList<Diagnostic> problems);

        public virtual void End()
        {
        }
    }

    private sealed class TextPrinter(TextWriter output) : AssessmentPrinter
    {
        private bool _first = true;

        public override void Print(Assessment assessment, Outlook? outlook)
        {
            if (!_first)
            {
                output.WriteLine();
                output.WriteLine(new string('=', PlainText.Width));
                output.WriteLine();
            }

            _first = false;
            TextReport.Write(assessment, outlook, output);
        }

        // The problems are on standard error; the report of another case must not be mistaken for this one's.
        public override void Unread(IReadOnlyList<Diagnostic> problems)
        {
        }
    }

    private sealed class JsonPrinter(TextWriter output, bool asArray) : AssessmentPrinter
    {
        private bool _first = true;

        public override void Begin() => output.Write(asArray ? "[\n" : "");

        public override void Print(Assessment assessment, Outlook? outlook) => Put(JsonText.Of(writer => AssessmentJson.Write(writer, assessment, outlook), indented: true));

        public override void Unread(IReadOnlyList<Diagnostic> problems) => Put(JsonText.Of(writer => AssessmentJson.WriteUnread(writer, problems), indented: true));

        public override void End() => output.Write(asArray ? "\n]\n" : "\n");

        private void Put(string text)
        {
            output.Write(_first ? "" : ",\n");
            output.Write(text);
            _first = false;
        }
    }

    private sealed class NdJsonPrinter(TextWriter output) : AssessmentPrinter
    {
        public override bool WantsOutlook => false;

        public override void Print(Assessment assessment, Outlook? outlook) => output.Write(JsonText.Of(writer => AssessmentJson.Write(writer, assessment), indented: false) + "\n");

        public override void Unread(IReadOnlyList<Diagnostic> problems) =>
            output.Write(JsonText.Of(writer => AssessmentJson.WriteUnread(writer, problems), indented: false) + "\n");
    }
}

/// <summary>JSON as text.</summary>
internal static class JsonText
{
    public static string Of(Action<Utf8JsonWriter> write, bool indented)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, AssessmentJson.Options(indented)))
        {
            write(writer);
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }
}

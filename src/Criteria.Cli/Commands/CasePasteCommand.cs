using System.CommandLine;
using System.Text;
using Criteria.Cli.Files;
using Criteria.Core.Cases;
using Criteria.Core.Pasted;
using Criteria.Core.Reading;
using Criteria.Core.Rulesets;
using Humanizer;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria case paste</c>: reads figures out of a pasted summary; a person confirms each.</summary>
internal static class CasePasteCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("TEXT-FILE") { Description = "A plain text with the pasted summary; `-` reads standard input." };
        file.Validators.Add(SharedOptions.RefuseOptions);
        var into = new Option<string?>("--into") { Description = "A case file that receives what is confirmed. Remarks in it are not kept.", HelpName = "CASE" };
        var proposal = new Option<bool>("--proposal") { Description = "Ask nothing; write a case file in which every value stands behind a `#` until you take it away." };
        var path = SharedOptions.Out();
        var force = SharedOptions.Force();
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("paste", "Read figures out of a pasted summary. Each is shown with its line and asked about; nothing enters a case unseen. Away from a terminal, a proposal is written.")
        {
            file, into, proposal, path, force, rulesets,
        };
        command.SetAction(parsed => Run(terminal, new Request(
            parsed.GetValue(file)!, parsed.GetValue(into), parsed.GetValue(proposal), parsed.GetValue(path), parsed.GetValue(force), parsed.GetValue(rulesets))));
        return command;
    }

    private sealed record Request(string Text, string? Into, bool Proposal, string? Out, bool Force, string? Rulesets);

    private static int Run(Terminal terminal, Request request)
    {
        if (RulesLoader.Load(request.Rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (Read(request.Text, terminal) is not { } file)
        {
            return ExitCode.CaseProblems;
        }

        var reading = new PastedTextReader(library.Vocabulary).Read(file);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Text is not { } text || text.Values.IsEmpty)
        {
            return ExitCode.CaseProblems;
        }

        Case? into = null;
        if (request.Into is { } name)
        {
            into = ReadCase(name, library, terminal);
            if (into is null)
            {
                return ExitCode.CaseProblems;
            }
        }

        var asks = terminal.CanAsk && !request.Proposal && request.Text != InputFiles.StandardInput;

        // A proposal is to be looked at: it never takes the place of the case.
        var target = request.Out ?? (asks ? request.Into : null);
        if (target is not null && !OutputFile.MayWrite([target], request.Force, terminal))
        {
            return ExitCode.Usage;
        }

        return asks ? Ask(terminal, library, text, into, target) : Propose(terminal, text, into, target);
    }

    private static int Propose(Terminal terminal, PastedText text, Case? into, string? target)
    {
        var code = Put(terminal, PastedProposal.Write(text, into?.Key), target);
        var open = text.Values.Count(value => !value.IsClear);
        terminal.Error.WriteLine($"{"value".ToQuantity(text.Values.Length)} proposed, {open} of them with a question; none counts before you take its `#` away.");
        return code;
    }

    private static int Ask(Terminal terminal, RulesetLibrary library, PastedText text, Case? into, string? target)
    {
        using var answers = new StreamReader(terminal.In, Encoding.UTF8, leaveOpen: true);
        if (new PasteDialogue(answers, terminal.Error, into).Ask(text) is not { } taken)
        {
            terminal.Error.WriteLine("Nothing was written.");
            return ExitCode.CaseProblems;
        }

        var written = CaseWriter.Write(PastedCase.With(library.Vocabulary, into, taken));
        var again = new CaseReader(library.Vocabulary).Read(new SourceFile(target ?? "case", Encoding.UTF8.GetBytes(written)));
        Diagnostics.Print(again.Problems, terminal.Error);
        if (again.Case is null)
        {
            terminal.Error.WriteLine("What was confirmed makes no case that can be read; nothing was written.");
            return ExitCode.CaseProblems;
        }

        return Put(terminal, written, target);
    }

    private static int Put(Terminal terminal, string text, string? target)
    {
        if (target is not null)
        {
            return OutputFile.Write(target, terminal, Encoding.UTF8.GetBytes(text));
        }

        terminal.Out.Write(text);
        return ExitCode.Done;
    }

    private static SourceFile? Read(string name, Terminal terminal)
    {
        var file = InputFiles.Read(name, terminal.In, out var why);
        if (file is null)
        {
            Diagnostics.Print([FileDiagnostics.Unreadable(name, why!)], terminal.Error);
        }

        return file;
    }

    private static Case? ReadCase(string name, RulesetLibrary library, Terminal terminal)
    {
        if (Read(name, terminal) is not { } file)
        {
            return null;
        }

        var reading = new CaseReader(library.Vocabulary).Read(file);
        Diagnostics.Print(reading.Problems, terminal.Error);
        return reading.Case;
    }
}

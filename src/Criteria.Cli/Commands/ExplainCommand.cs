using System.CommandLine;
using Criteria.Cli.Files;
using Criteria.Cli.Report;
using Criteria.Core.Cases;
using Criteria.Core.Reading;
using Criteria.Engine;
using Criteria.Engine.Changes;
using Criteria.Engine.Findings;
using Criteria.Engine.Output;

namespace Criteria.Cli.Commands;

/// <summary><c>criteria explain</c>: the whole trace of one finding.</summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A case file; `-` reads standard input." };
        var id = new Argument<string>("FINDING") { Description = "The name in brackets behind a finding, such as severity.rei-4." };
        file.Validators.Add(SharedOptions.RefuseOptions);
        id.Validators.Add(SharedOptions.RefuseOptions);
        var night = new Option<string?>("--night") { Description = "Of several nights, only this one.", HelpName = "DATE" };
        var figure = new Option<string?>("--figure")
        {
            Description = "Also write the index on its severity scale, as a picture. The file is written whole or not at all.",
            HelpName = "OUT.svg|OUT.png",
        };
        figure.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && FigureFile.WrongName(result.Tokens[0].Value) is { } wrong)
            {
                result.AddError(wrong);
            }
        });
        var pairs = new Option<bool>("--pairs") { Description = "Also look for two changes that turn the finding together though neither does alone. May take some seconds." };
        var format = SharedOptions.Format("text", "json");
        var asOf = SharedOptions.AsOf();
        var rulesets = SharedOptions.Rulesets();
        var command = new Command("explain", "Show the whole trace of one finding: every step with its value and origin, what remains, whom to ask, the sources.")
        {
            file, id, night, figure, pairs, format, asOf, rulesets,
        };
        command.SetAction(parsed => Run(
            terminal, parsed.GetValue(file)!, parsed.GetValue(id)!, parsed.GetValue(night), parsed.GetValue(figure), parsed.GetValue(pairs), parsed.GetValue(format)!,
            parsed.GetValue(asOf), parsed.GetValue(rulesets)));
        return command;
    }

    private static int Run(Terminal terminal, string name, string id, string? night, string? figure, bool pairs, string format, DateOnly? asOf, string? rulesets)
    {
        if (figure is not null && OutputFile.IsSame(name, figure))
        {
            terminal.Error.WriteLine($"{figure}: is the case itself, and the figure would overwrite it");
            return ExitCode.Usage;
        }

        if (RulesLoader.Load(rulesets, terminal, out var code) is not { } library)
        {
            return code;
        }

        if (InputFiles.Read(name, terminal.In, out var why) is not { } file)
        {
            terminal.Error.WriteLine(why);
            return ExitCode.CaseProblems;
        }

        var reading = new CaseReader(library.Vocabulary).Read(file);
        Diagnostics.Print(reading.Problems, terminal.Error);
        if (reading.Case is not { } subject)
        {
            return ExitCode.CaseProblems;
        }

        if ((asOf ?? subject.RulesDate) is not { } date)
        {
            Diagnostics.Print([FileDiagnostics.NoDate(file.Name)], terminal.Error);
            return ExitCode.CaseProblems;
        }

        var assessor = new Assessor(library, CasesExpected.One);
        var assessment = assessor.Assess(subject, date, reading.Problems);
        var findings = assessment.Of(id).ToArray();
        if (findings.Length == 0)
        {
            return NoSuchFinding(terminal, assessment, id);
        }

        var chosen = findings.Where(finding => night is null || finding.Night == night).ToArray();
        if (chosen.Length == 0)
        {
            terminal.Error.WriteLine($"There is no night `{night}` here; there are {string.Join(", ", findings.Select(finding => finding.Night))}.");
            return ExitCode.Usage;
        }

        // The file first: when it cannot be written, nothing else looks as if all were done.
        if (figure is not null && FigureFile.Write(figure, chosen, terminal) is var written and not ExitCode.Done)
        {
            return written;
        }

        var found = chosen.Select(finding => (finding, pairs ? assessor.PairsOf(subject, assessment, finding) : (IReadOnlyList<ChangePair>?)null)).ToArray();
        Print(terminal.Out, assessment, assessor.OutlookOf(subject, assessment), found, format);
        return ExitCode.Done;
    }

    private static void Print(TextWriter output, Assessment assessment, Outlook outlook, (Finding Finding, IReadOnlyList<ChangePair>? Pairs)[] findings, string format)
    {
        if (format == "json")
        {
            output.WriteLine(JsonText.Of(
                writer =>
                {
                    writer.WriteStartArray();
                    foreach (var (finding, pairs) in findings)
                    {
                        AssessmentJson.WriteFinding(writer, finding, outlook, pairs);
                    }

                    writer.WriteEndArray();
                },
                indented: true));
            return;
        }

        for (var i = 0; i < findings.Length; i++)
        {
            if (i > 0)
            {
                output.WriteLine();
            }

            TraceText.Write(assessment, outlook, findings[i].Pairs, findings[i].Finding, output);
        }
    }

    private static int NoSuchFinding(Terminal terminal, Assessment assessment, string id)
    {
        var known = assessment.Findings.Select(finding => finding.Id).Distinct(StringComparer.Ordinal).ToArray();
        var near = NearestName.Of(id, known);
        terminal.Error.WriteLine($"There is no finding `{id}` for this case.{(near is null ? "" : $" Did you mean `{near}`?")}");
        terminal.Error.WriteLine($"Findings: {string.Join(", ", known)}");
        return ExitCode.Usage;
    }
}

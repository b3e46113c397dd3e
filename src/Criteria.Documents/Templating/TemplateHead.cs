using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Documents.Templating;

/// <summary>Which of the two functions a document serves. They are kept apart, and each document says which it is.</summary>
internal enum DocumentPart
{
    /// <summary>A clinical draft.</summary>
    Clinical = 0,

    /// <summary>A coverage check, or a letter about coverage.</summary>
    Coverage,

    /// <summary>Both, each under a heading of its own.</summary>
    Both,
}

/// <summary>The head of a template: what the document is and what it may carry.</summary>
internal sealed record TemplateHead
{
    /// <summary>The title.</summary>
    public string Title { get; init; } = "";

    /// <summary>One sentence for a list of documents.</summary>
    public string Summary { get; init; } = "";

    /// <summary>Which function it serves.</summary>
    public DocumentPart Part { get; init; }

    /// <summary>The names of identity that it may carry.</summary>
    public ImmutableArray<string> Carries { get; init; } = [];

    /// <summary>The kinds of recipient that it may go to; empty when it is written to nobody.</summary>
    public ImmutableArray<string> To { get; init; } = [];

    /// <summary>Whether the reasons stand at its end.</summary>
    public bool Why { get; init; } = true;

    /// <summary>Whether a clinician must have released it to the patient.</summary>
    public bool Release { get; init; }

    /// <summary>Whether a reader's override is printed in words for the patient: what is read, without its reason and date.</summary>
    public bool PlainOverrides { get; init; }

    private const string Fence = "---";
    private static readonly string[] Keys = ["title", "summary", "part", "carries", "to", "why", "release", "overrides"];

    /// <summary>Reads the lines between the two <c>---</c> at the top; the body keeps its line numbers.</summary>
    public static (TemplateHead Head, string Body) Read(string file, string text, List<Diagnostic> problems)
    {
        var lines = text.Split('\n');
        var end = lines[0].TrimEnd() == Fence ? Array.FindIndex(lines, 1, line => line.TrimEnd() == Fence) : -1;
        if (end < 0)
        {
            problems.Add(TemplateDiagnostics.NoHead(SourceSpan.StartOf(file)));
            return (new TemplateHead(), text);
        }

        var head = new TemplateHead();
        for (var i = 1; i < end; i++)
        {
            var line = lines[i].TrimEnd();
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var key = colon < 0 ? line : line[..colon];
            var value = colon < 0 ? "" : line[(colon + 1)..].Trim();
            if (line.Length > 0 && head.With(key, value) is not { } next)
            {
                var span = new SourceSpan(file, i + 1, 1, i + 1, line.Length + 1);
                problems.Add(Keys.Contains(key) ? TemplateDiagnostics.HeadValue(key, value, span) : TemplateDiagnostics.HeadKey(key, NearestName.Of(key, Keys), Keys, span));
            }
            else if (line.Length > 0)
            {
                head = head.With(key, value)!;
            }
        }

        if (head.Title.Length == 0 || head.Summary.Length == 0)
        {
            problems.Add(TemplateDiagnostics.HeadIncomplete(SourceSpan.StartOf(file)));
        }

        return (head, new string('\n', end + 1) + string.Join('\n', lines.Skip(end + 1)));
    }

    private TemplateHead? With(string key, string value) => key switch
    {
        "title" => this with { Title = value },
        "summary" => this with { Summary = value },
        "part" => value switch { "clinical" => this with { Part = DocumentPart.Clinical }, "coverage" => this with { Part = DocumentPart.Coverage }, "both" => this with { Part = DocumentPart.Both }, _ => null },
        "carries" => this with { Carries = Names(value) },
        "to" => this with { To = Names(value) },
        "why" => YesNo(value) is { } why ? this with { Why = why } : null,
        "release" => YesNo(value) is { } release ? this with { Release = release } : null,
        "overrides" => value switch { "plain" => this with { PlainOverrides = true }, "whole" => this with { PlainOverrides = false }, _ => null },
        _ => null,
    };

    private static ImmutableArray<string> Names(string value) => [.. value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    private static bool? YesNo(string value) => value switch { "yes" => true, "no" => false, _ => null };
}

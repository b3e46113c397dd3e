using System.Globalization;
using System.Text.Encodings.Web;
using Criteria.Documents.Model;
using Fluid;
using Fluid.Ast;
using Fluid.Values;

namespace Criteria.Documents.Templating;

/// <summary>Liquid with two blocks of our own: <c>rests_on</c> and <c>without</c>.</summary>
internal sealed class TemplateParser : FluidParser
{
    /// <summary>Prints its content, with the marks of what it rests on, when all of that stands; else nothing.</summary>
    public const string RestsOn = "rests_on";

    /// <summary>Prints its content when something of what it names does not stand.</summary>
    public const string Without = "without";

    /// <summary>The argument of <c>rests_on</c> that also lets open findings stand.</summary>
    public const string Open = "open";

    /// <summary>The argument of <c>rests_on</c> that leaves out the marks where the page itself names what it rests on.</summary>
    public const string Marks = "marks";

    // More facts behind one sentence share a mark.
    private const int MostMarks = 2;

    /// <summary>The only one there needs to be; it keeps no state of a rendering.</summary>
    public static readonly TemplateParser Instance = new();

    private TemplateParser()
    {
        RegisterParserBlock(RestsOn, ArgumentsList, RenderRestsOn);
        RegisterParserBlock(Without, ArgumentsList, RenderWithout);
    }

    private static async ValueTask<Completion> RenderRestsOn(
        IReadOnlyList<FilterArgument> arguments, IReadOnlyList<Statement> statements, TextWriter output, TextEncoder encoder, TemplateContext context)
    {
        var traced = await Named(arguments, context);
        var open = await Flag(arguments, Open, context);
        if (traced.Count == 0 || traced.Any(one => one is null || !(one.Stands || (open == true && one.IsOpen))))
        {
            await output.WriteAsync(Tidy.Nothing);
            return Completion.Normal;
        }

        var (text, completion) = await Inner(statements, encoder, context);
        if (string.IsNullOrWhiteSpace(text))
        {
            await output.WriteAsync(Tidy.Nothing);
            return completion;
        }

        // The marks stand behind the words, before the line ends; an override is read where the finding is.
        var words = text.TrimEnd();
        await output.WriteAsync(words);
        if (await Flag(arguments, Marks, context) != false)
        {
            await output.WriteAsync(MarksOf(traced.OfType<ITraced>(), context));
        }

        // Beside a sentence about that finding: whole at its first mention, short after it.
        if (traced is [FindingModel { Override: { } differs } finding] && await Flag(arguments, Marks, context) != false)
        {
            await output.WriteAsync($" {encoder.Encode(((TraceNotes)context.AmbientValues[TraceNotes.Key]).Of(finding, differs))}");
        }

        await output.WriteAsync(text[words.Length..]);
        return completion;
    }

    private static async ValueTask<Completion> RenderWithout(
        IReadOnlyList<FilterArgument> arguments, IReadOnlyList<Statement> statements, TextWriter output, TextEncoder encoder, TemplateContext context)
    {
        var traced = await Named(arguments, context);
        if (traced.Count > 0 && traced.All(one => one is { Stands: true }))
        {
            await output.WriteAsync(Tidy.Nothing);
            return Completion.Normal;
        }

        var (text, completion) = await Inner(statements, encoder, context);
        var words = text.TrimEnd();
        await output.WriteAsync(words);
        if (words.Length > 0)
        {
            await output.WriteAsync(MarksOf(traced.OfType<FindingModel>().Where(one => one.IsOpen), context));
        }

        await output.WriteAsync(text[words.Length..]);
        return completion;
    }

    // Two marks that touch would read as a link in Markdown.
    private static string MarksOf(IEnumerable<ITraced> traced, TemplateContext context)
    {
        var notes = (TraceNotes)context.AmbientValues[TraceNotes.Key];
        return string.Join(' ', traced.DistinctBy(one => one.Key).Select(notes.Mark).Where(mark => mark.Length > 0));
    }

    private static async ValueTask<(string Text, Completion Completion)> Inner(IReadOnlyList<Statement> statements, TextEncoder encoder, TemplateContext context)
    {
        using var inner = new StringWriter(CultureInfo.InvariantCulture);
        foreach (var statement in statements)
        {
            var completion = await statement.WriteToAsync(inner, encoder, context);
            if (completion != Completion.Normal)
            {
                return (inner.ToString(), completion);
            }
        }

        return (inner.ToString(), Completion.Normal);
    }

    private static async ValueTask<List<ITraced?>> Named(IReadOnlyList<FilterArgument> arguments, TemplateContext context)
    {
        var traced = new List<ITraced?>();
        foreach (var argument in arguments.Where(argument => argument.Name is null))
        {
            var value = await argument.Expression.EvaluateAsync(context);
            switch (value.Type)
            {
                case FluidValues.String:
                    traced.Add(Find(value.ToStringValue(), context));
                    break;
                case FluidValues.Array:
                    traced.AddRange(Grouped([.. value.Enumerate(context).Select(item => item.ToObjectValue() as ITraced)]));
                    break;
                default:
                    traced.Add(value.ToObjectValue() as ITraced);
                    break;
            }
        }

        return traced;
    }

    private static IEnumerable<ITraced?> Grouped(ITraced?[] items) =>
        items.Length > MostMarks && items.All(item => item is FactModel) ? [new FactGroupModel([.. items.Cast<FactModel>()])] : items;

    // Inside `for night in nights` a name means that night; elsewhere the last one.
    private static ITraced? Find(string id, TemplateContext context)
    {
        var (findings, facts) = context.GetValue("night").ToObjectValue() is NightModel night
            ? (night.Findings, night.Facts)
            : ((FindingTable)context.AmbientValues[nameof(FindingTable)], (FactTable)context.AmbientValues[nameof(FactTable)]);
        return findings[id] ?? (ITraced?)facts[id];
    }

    private static async ValueTask<bool?> Flag(IReadOnlyList<FilterArgument> arguments, string name, TemplateContext context)
    {
        foreach (var argument in arguments.Where(argument => argument.Name == name))
        {
            return (await argument.Expression.EvaluateAsync(context)).ToBooleanValue();
        }

        return null;
    }
}

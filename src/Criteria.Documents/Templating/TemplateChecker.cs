using Criteria.Core.Reading;
using Criteria.Documents.Model;
using Fluid.Ast;
using Fluid.Parser;

namespace Criteria.Documents.Templating;

/// <summary>Checks a template before it is used: every name is known, and nothing of the case is printed without its trace.</summary>
/// <remarks>It follows types and what depends on the case through variables and loops, and reports everything at once.</remarks>
internal sealed partial class TemplateChecker : AstVisitor
{
    private readonly TemplateText _text;
    private readonly TemplateHead _head;
    private readonly KnownNames _known;
    private readonly List<Diagnostic> _problems;
    private readonly Dictionary<string, Meaning> _variables = new(StringComparer.Ordinal);

    // How many rests_on or without blocks, and how many branches that depend on the case, surround the place.
    private int _traced;
    private int _branches;

    private TemplateChecker(TemplateText text, TemplateHead head, KnownNames known, List<Diagnostic> problems) =>
        (_text, _head, _known, _problems) = (text, head, known, problems);

    /// <summary>Adds every problem of a parsed template.</summary>
    public static void Check(FluidTemplate template, string file, string body, TemplateHead head, KnownNames known, List<Diagnostic> problems) =>
        new TemplateChecker(new TemplateText(file, body), head, known, problems).VisitTemplate(template);

    protected override Statement VisitOutputStatement(OutputStatement outputStatement)
    {
        var meaning = MeaningOf(outputStatement.Expression);
        if (meaning.DependsOnCase && _traced == 0)
        {
            _problems.Add(TemplateDiagnostics.Untraced(meaning.Name, meaning.Span));
        }

        return outputStatement;
    }

    protected override Statement VisitTextSpanStatement(TextSpanStatement textSpanStatement)
    {
        if (_branches == 0 || _traced > 0)
        {
            return textSpanStatement;
        }

        // Headings and the head of a table say nothing of the patient.
        foreach (var line in textSpanStatement.Text.ToString().Split('\n').Select(line => line.Trim()))
        {
            if (line.Length > 0 && line[0] is not ('#' or '|') && line.Any(char.IsLetter))
            {
                _problems.Add(TemplateDiagnostics.UntracedText(Wording.Words.Start(line), _text.Next(line)));
            }
        }

        return textSpanStatement;
    }

    protected override Statement VisitAssignStatement(AssignStatement assignStatement)
    {
        _variables[assignStatement.Identifier] = MeaningOf(assignStatement.Value);
        return assignStatement;
    }

    protected override Statement VisitForStatement(ForStatement forStatement)
    {
        var list = MeaningOf(forStatement.Source);
        var item = list.Type is null ? null : TemplateNames.ItemOf(list.Type);
        if (list.Type is not null && item is null)
        {
            _problems.Add(TemplateDiagnostics.NotAList(list.Name, list.Span));
        }

        var outer = _variables.GetValueOrDefault(forStatement.Identifier);
        _variables[forStatement.Identifier] = list with { Type = item, Name = forStatement.Identifier };
        Branch(list.DependsOnCase, forStatement.Statements);
        if (forStatement.Else is { } none)
        {
            Branch(list.DependsOnCase, none.Statements);
        }

        if (outer is null)
        {
            _variables.Remove(forStatement.Identifier);
        }
        else
        {
            _variables[forStatement.Identifier] = outer;
        }

        return forStatement;
    }

    protected override Statement VisitIfStatement(IfStatement ifStatement)
    {
        var depends = MeaningOf(ifStatement.Condition).DependsOnCase;
        Branch(depends, ifStatement.Statements);
        foreach (var other in ifStatement.ElseIfs)
        {
            depends |= MeaningOf(other.Condition).DependsOnCase;
            Branch(depends, other.Statements);
        }

        Branch(depends, ifStatement.Else?.Statements ?? []);
        return ifStatement;
    }

    protected override Statement VisitUnlessStatement(UnlessStatement unlessStatement)
    {
        var depends = MeaningOf(unlessStatement.Condition).DependsOnCase;
        Branch(depends, unlessStatement.Statements);
        Branch(depends, unlessStatement.Else?.Statements ?? []);
        return unlessStatement;
    }

    protected override Statement VisitCaseStatement(CaseStatement caseStatement)
    {
        var depends = MeaningOf(caseStatement.Expression).DependsOnCase;
        foreach (var when in caseStatement.Whens)
        {
            depends |= when.Options.Select(MeaningOf).Any(option => option.DependsOnCase);
            Branch(depends, when.Statements);
        }

        Branch(depends, caseStatement.Else?.Statements ?? []);
        return caseStatement;
    }

    protected override Statement VisitParserBlockStatement<T>(ParserBlockStatement<T> parserBlockStatement)
    {
        if (parserBlockStatement.Value is IReadOnlyList<FilterArgument> arguments)
        {
            _text.Next(parserBlockStatement.TagName);
            foreach (var argument in arguments)
            {
                CheckTraced(argument);
            }
        }

        _traced++;
        foreach (var statement in parserBlockStatement.Statements)
        {
            Visit(statement);
        }

        _traced--;
        return parserBlockStatement;
    }

    // Everything that could hide what is printed, read another file or keep a state.
    protected override Statement VisitCaptureStatement(CaptureStatement captureStatement) => Refuse("capture", captureStatement);

    protected override Statement VisitCycleStatement(CycleStatement cycleStatement) => Refuse("cycle", cycleStatement);

    protected override Statement VisitDecrementStatement(DecrementStatement decrementStatement) => Refuse("decrement", decrementStatement);

    protected override Statement VisitIncrementStatement(IncrementStatement incrementStatement) => Refuse("increment", incrementStatement);

    protected override Statement VisitFromStatement(FromStatement fromStatement) => Refuse("from", fromStatement);

    protected override Statement VisitIncludeStatement(IncludeStatement includeStatement) => Refuse("include", includeStatement);

    protected override Statement VisitRenderStatement(RenderStatement renderStatement) => Refuse("render", renderStatement);

    protected override Statement VisitMacroStatement(MacroStatement macroStatement) => Refuse("macro", macroStatement);

    protected override Statement VisitLiquidStatement(LiquidStatement liquidStatement) => Refuse("liquid", liquidStatement);

    protected override Statement VisitTableRowStatement(TableRowStatement tableRowStatement) => Refuse("tablerow", tableRowStatement);

    protected override Statement VisitIfChangedStatement(IfChangedStatement ifChangedStatement) => Refuse("ifchanged", ifChangedStatement);

    protected override Statement VisitRawStatement(RawStatement rawStatement) => Refuse("raw", rawStatement);

    private void Branch(bool dependsOnCase, IReadOnlyList<Statement> statements)
    {
        _branches += dependsOnCase ? 1 : 0;
        foreach (var statement in statements)
        {
            Visit(statement);
        }

        _branches -= dependsOnCase ? 1 : 0;
    }

    private void CheckTraced(FilterArgument argument)
    {
        if (argument.Name is not null)
        {
            if (argument.Name is not (TemplateParser.Open or TemplateParser.Marks))
            {
                _problems.Add(TemplateDiagnostics.UnknownName(argument.Name, NearestName.Of(argument.Name, ["marks", "open"]), ["marks", "open"], _text.Next(argument.Name)));
            }

            return;
        }

        if (argument.Expression is LiteralExpression { Value: var id })
        {
            CheckId(id.ToStringValue(), _known.Findings.Concat(_known.Facts));
            return;
        }

        var meaning = MeaningOf(argument.Expression);
        if (meaning.Type is { } type && !typeof(ITraced).IsAssignableFrom(TemplateNames.ItemOf(type) ?? type))
        {
            _problems.Add(TemplateDiagnostics.NotTraceable(meaning.Span));
        }
    }

    private void CheckId(string id, IEnumerable<string> known)
    {
        var span = _text.Next(id);
        var all = known.ToArray();
        if (!all.Contains(id))
        {
            _problems.Add(TemplateDiagnostics.UnknownFinding(id, NearestName.Of(id, all), span));
        }
    }

    private Statement Refuse(string tag, Statement statement)
    {
        _problems.Add(TemplateDiagnostics.NotAllowed(tag, _text.Next(tag)));
        return statement;
    }
}

using Criteria.Core.Reading;
using Criteria.Documents.Model;
using Fluid.Ast;

namespace Criteria.Documents.Templating;

/// <summary>What an expression means: its type, and whether it depends on the case.</summary>
internal sealed partial class TemplateChecker
{
    private static readonly Meaning Plain = new("", null, false, default);

    private Meaning MeaningOf(Expression expression)
    {
        switch (expression)
        {
            case MemberExpression member:
                return MeaningOf(member);
            case FilterExpression filter:
                return MeaningOf(filter);
            case BinaryExpression binary:
                var (left, right) = (MeaningOf(binary.Left), MeaningOf(binary.Right));
                return (left.DependsOnCase ? left : right) with { Type = null };
            case RangeExpression:
                _problems.Add(TemplateDiagnostics.NotAllowed("..", _text.Next("..")));
                return Plain;
            default:
                return Plain;
        }
    }

    private Meaning MeaningOf(FilterExpression filter)
    {
        var input = MeaningOf(filter.Input);
        var span = _text.Next(filter.Name);
        if (!TemplateNames.Filters.Contains(filter.Name))
        {
            _problems.Add(TemplateDiagnostics.UnknownFilter(filter.Name, NearestName.Of(filter.Name, TemplateNames.Filters), TemplateNames.Filters.Order(StringComparer.Ordinal), span));
        }

        var depends = filter.Parameters.Select(parameter => MeaningOf(parameter.Expression)).Any(parameter => parameter.DependsOnCase);
        var type = !TemplateNames.KeepType.Contains(filter.Name) || input.Type is null ? null
            : filter.Name is "first" or "last" ? TemplateNames.ItemOf(input.Type)
            : input.Type;
        return input with { Type = type, DependsOnCase = input.DependsOnCase || depends };
    }

    private Meaning MeaningOf(MemberExpression member)
    {
        var root = ((IdentifierSegment)member.Segments[0]).Identifier;
        var span = _text.Next(root);
        if (root is "forloop" or "empty" or "blank")
        {
            return Plain;
        }

        Meaning meaning;
        if (_variables.TryGetValue(root, out var variable))
        {
            meaning = variable with { Span = span };
        }
        else if (TemplateNames.Of(typeof(CaseModel)).TryGetValue(root, out var property))
        {
            meaning = new Meaning(root, property.PropertyType, !property.IsDefined(typeof(UntracedAttribute), inherit: false), span);
            CheckRecipient(root, span);
        }
        else
        {
            var names = TemplateNames.Of(typeof(CaseModel)).Keys.Concat(_variables.Keys).Order(StringComparer.Ordinal).ToArray();
            _problems.Add(TemplateDiagnostics.UnknownName(root, NearestName.Of(root, names), names, span));
            return Plain;
        }

        return member.Segments.Skip(1).Aggregate(meaning, Step);
    }

    private Meaning Step(Meaning of, MemberSegment segment)
    {
        switch (segment)
        {
            case IdentifierSegment name:
                return Member(of, name.Identifier);
            case IndexerSegment { Expression: LiteralExpression literal }:
                return Indexed(of, literal.Value.ToStringValue());
            case IndexerSegment indexer:
                var index = MeaningOf(indexer.Expression);
                return of with { Type = ItemOfTable(of.Type), DependsOnCase = of.DependsOnCase || index.DependsOnCase };
            default:
                return of with { Type = null };
        }
    }

    private Meaning Member(Meaning of, string name)
    {
        // Without a type there was an error before, or it is text.
        if (of.Type is null)
        {
            return of;
        }

        var span = _text.Next(name);
        if (of.Type == typeof(IdentityTable))
        {
            CheckIdentity(name, span);
            return of with { Type = typeof(string), Name = $"{of.Name}.{name}", Span = span };
        }

        if (TemplateNames.ItemOf(of.Type) is { } item && name is "first" or "last" or "size")
        {
            return of with { Type = name == "size" ? typeof(int) : TemplateNames.ItemOf(of.Type), Span = span };
        }

        var members = TemplateNames.Of(of.Type);
        if (members.TryGetValue(name, out var property))
        {
            var untraced = property.IsDefined(typeof(UntracedAttribute), inherit: false);
            return new Meaning($"{of.Name}.{name}", property.PropertyType, of.DependsOnCase && !untraced, span);
        }

        var known = members.Keys.Order(StringComparer.Ordinal).ToArray();
        _problems.Add(TemplateDiagnostics.UnknownName($"{of.Name}.{name}", NearestName.Of(name, known), known, span));
        return of with { Type = null };
    }

    private Meaning Indexed(Meaning of, string id)
    {
        if (of.Type == typeof(FindingTable))
        {
            CheckId(id, _known.Findings);
        }
        else if (of.Type == typeof(FactTable))
        {
            CheckId(id, _known.Facts);
        }
        else if (of.Type == typeof(FactSections))
        {
            CheckPlace(id);
        }
        else if (of.Type == typeof(IdentityTable))
        {
            CheckIdentity(id, _text.Next(id));
        }

        return of with { Type = ItemOfTable(of.Type), Name = $"{of.Name}[\"{id}\"]" };
    }

    private static Type? ItemOfTable(Type? type) => type == typeof(FindingTable) ? typeof(FindingModel)
        : type == typeof(FactTable) ? typeof(FactModel)
        : type == typeof(FactSections) ? typeof(IReadOnlyList<FactModel>)
        : type is null ? null : TemplateNames.ItemOf(type);

    private void CheckIdentity(string name, SourceSpan span)
    {
        if (!_known.Identity.Contains(name))
        {
            _problems.Add(TemplateDiagnostics.UnknownName($"identity.{name}", NearestName.Of(name, _known.Identity), _known.Identity, span));
        }
        else if (!_head.Carries.Contains(name))
        {
            _problems.Add(TemplateDiagnostics.NotDeclared(name, _head.Carries, span));
        }
    }

    private void CheckPlace(string place)
    {
        var span = _text.Next(place);
        if (!_known.Places.Contains(place))
        {
            _problems.Add(TemplateDiagnostics.UnknownName(place, NearestName.Of(place, _known.Places), _known.Places.Order(StringComparer.Ordinal), span));
        }
    }

    private void CheckRecipient(string root, SourceSpan span)
    {
        if (root == "recipient" && _head.To.IsEmpty)
        {
            _problems.Add(TemplateDiagnostics.NotDeclared(root, _head.To, span));
        }
    }

    private sealed record Meaning(string Name, Type? Type, bool DependsOnCase, SourceSpan Span);
}

/// <summary>The names of the rules that templates may use.</summary>
/// <param name="Findings">The criteria, of every payer and date.</param>
/// <param name="Facts">The facts.</param>
/// <param name="Identity">The names of identity.</param>
/// <param name="Places">The sections of a case file.</param>
internal sealed record KnownNames(IReadOnlySet<string> Findings, IReadOnlySet<string> Facts, IReadOnlySet<string> Identity, IReadOnlySet<string> Places);

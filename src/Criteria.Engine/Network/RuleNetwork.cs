using System.Linq.Expressions;
using System.Reflection;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;
using NRules;
using NRules.RuleModel;
using NRules.RuleModel.Builders;

namespace Criteria.Engine.Network;

/// <summary>Builds the NRules network of a selection of rules: one rule of the canonical model for each criterion.</summary>
internal static class RuleNetwork
{
    private static readonly MethodInfo KeyMethod = typeof(CriterionRule).GetMethod(nameof(CriterionRule.Key))!;
    private static readonly MethodInfo FireMethod = typeof(CriterionRule).GetMethod(nameof(CriterionRule.Fire))!;

    public static ISessionFactory Compile(RulesInForce rules, CasesExpected expected)
    {
        // The whole set at once and without a cancellation token: a cancelled compilation would silently lack rules.
        var compiler = new RuleCompiler();
        if (expected == CasesExpected.One)
        {
            compiler.ExpressionCompiler = new InterpretedExpressions();
        }

        var settler = new Settler(rules);
        return compiler.Compile(rules.Criteria.Select(criterion => Rule(criterion, rules, settler)));
    }

    private static IRuleDefinition Rule(Criterion criterion, RulesInForce rules, Settler settler)
    {
        var rule = new RuleBuilder();
        rule.Name(criterion.Id);
        rule.Description(criterion.Title);
        rule.Property("ruleset", criterion.Ruleset.Id);
        rule.Property("version", criterion.Ruleset.Version);
        rule.Property("cites", string.Join("; ", criterion.Cites));

        var left = rule.LeftHandSide();
        var subject = Expression.Parameter(typeof(Subject), "subject");
        left.Pattern(typeof(Subject), subject.Name!).Condition(Expression.Lambda(
            Expression.Property(subject, criterion.PerNight ? nameof(Subject.IsNight) : nameof(Subject.IsCase)), subject));

        var upstream = new List<ParameterExpression>();
        foreach (var index in criterion.ReadsCriteria)
        {
            var finding = Expression.Parameter(Shelves.TypeOf(index), $"finding{upstream.Count}");
            var pattern = left.Pattern(finding.Type, finding.Name!);
            pattern.Condition(Expression.Lambda(
                Expression.Equal(Expression.Property(finding, nameof(FindingFact.Criterion)), Expression.Constant(index)), finding));
            if (rules.Criteria[index].PerNight)
            {
                pattern.Condition(Expression.Lambda(
                    Expression.Equal(Expression.Property(finding, nameof(FindingFact.Subject)), Expression.Property(subject, nameof(Subject.Number))),
                    subject, finding));
            }

            upstream.Add(finding);
        }

        var evaluator = Expression.Constant(new CriterionRule(criterion, settler));
        var findings = Expression.NewArrayInit(typeof(FindingFact), upstream);
        rule.Filters().Filter(FilterType.KeyChange, Expression.Lambda(
            Expression.Call(evaluator, KeyMethod, subject, findings), [subject, .. upstream]));
        var context = Expression.Parameter(typeof(IContext), "context");
        rule.RightHandSide().Action(Expression.Lambda(
            Expression.Call(evaluator, FireMethod, context, subject, findings), [context, subject, .. upstream]));
        return rule.Build();
    }
}

using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads the quantities of rulesets.</summary>
internal static class Quantities
{
    /// <summary>A quantity of a fact's dimension, or null (and a diagnostic).</summary>
    public static Quantity? Read(string text, FactDefinition fact, DiagnosticBag bag, Func<int, int, SourceSpan> place)
    {
        var fault = QuantityReader.Read(text, out var quantity, out var at, out var part);
        if (fault != QuantityFault.None)
        {
            var why = fault switch
            {
                QuantityFault.DecimalComma => "it has a decimal comma",
                QuantityFault.UnknownUnit => $"unknown unit `{part}`",
                QuantityFault.MixedUnits => "its parts do not belong together",
                QuantityFault.TooManyDigits => "it has too many digits",
                QuantityFault.Negative => "it is below zero",
                QuantityFault.NumberForm => "it is not a plain number",
                _ => "no number in it",
            };
            bag.Add(RulesetDiagnostics.BadQuantity(text, why, place(at, part.Length)));
            return null;
        }

        if (quantity!.Dimension != fact.Unit.Dimension)
        {
            bag.Add(RulesetDiagnostics.WrongDimension(text, fact, Units.Of(fact.Unit.Dimension), place(0, text.Length)));
            return null;
        }

        return quantity;
    }

    public static Quantity? Read(ScalarNode node, FactDefinition fact, DiagnosticBag bag) => Read(node.Text, fact, bag, node.Part);
}

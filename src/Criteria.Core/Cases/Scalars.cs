using System.Text.Json;
using System.Text.RegularExpressions;
using Criteria.Core.Facts;

namespace Criteria.Core.Cases;

/// <summary>Values as a case file writes them.</summary>
internal static partial class Scalars
{
    private const int AllDecimals = 12;

    /// <summary>The value, with where it came from when that is a place in a document.</summary>
    public static string Of(Fact fact)
    {
        var value = fact.State switch
        {
            FactState.Known => Value(fact),
            FactState.NotApplicable => ValueReader.NotApplicableWord,
            _ => ValueReader.UnknownWord,
        };
        return fact.Origin.Kind == OriginKind.Document ? $"{{ value: {value}, from: {Text(fact.Origin.Text)} }}" : value;
    }

    /// <summary>A text, in quotes unless it cannot be taken for anything else.</summary>
    public static string Text(string text) => Plain().IsMatch(text) ? text : JsonSerializer.Serialize(text);

    private static string Value(Fact fact) => fact.Value switch
    {
        NumberValue { Range: var range } => Number(fact, range),
        DurationsValue { Times: var times } => $"[{string.Join(", ", times.Select(time => time is { } minutes ? $"{minutes.ToText(AllDecimals)} {Units.Minute}" : ValueReader.UnknownWord))}]",
        _ => Text(fact.Text),
    };

    // As somebody wrote it: the number of decimals says what a rounded figure stands for.
    private static string Number(Fact fact, Interval range)
    {
        if (fact.Written is { } written && QuantityReader.Read(written, out _, out _, out _) == QuantityFault.None)
        {
            return Text(written);
        }

        var unit = fact.Definition.Unit.Dimension == Dimension.Duration ? Units.Minute : fact.Definition.Unit;
        return Text($"{Ratio.Divide(range.Low, unit.Factor).ToText(AllDecimals)} {unit.Symbol}".TrimEnd());
    }

    // No sign that YAML reads, inside braces too.
    [GeneratedRegex(@"^[A-Za-z0-9](?:[%/. _A-Za-z0-9-]*[%A-Za-z0-9])?$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}

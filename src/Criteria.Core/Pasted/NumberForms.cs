using System.Text.RegularExpressions;

namespace Criteria.Core.Pasted;

/// <summary>What printed digits may stand for, with a decimal point.</summary>
internal static partial class NumberForms
{
    /// <summary>One form, or two where a point or comma may part decimals or thousands; none when it is no number.</summary>
    public static IReadOnlyList<string> Of(string digits, bool commasAreDecimal) => digits switch
    {
        _ when Plain().IsMatch(digits) => [digits],
        _ when Thousands().IsMatch(digits) => digits.Contains(',', StringComparison.Ordinal) || commasAreDecimal
            ? [digits.Replace(',', '.'), digits.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal)]
            : [digits],
        _ when Decimal().IsMatch(digits) => [digits.Replace(',', '.')],
        _ => [],
    };

    /// <summary>Whether a text writes decimal commas somewhere.</summary>
    public static bool HasDecimalComma(string text) => Comma().IsMatch(text);

    [GeneratedRegex("^[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();

    [GeneratedRegex("^[1-9][0-9]{0,2}[.,][0-9]{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();

    [GeneratedRegex("^[0-9]+[.,][0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"(?<![0-9.,])[0-9]+,[0-9]{1,2}(?![0-9.,])", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}

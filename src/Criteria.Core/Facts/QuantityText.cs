using System.Globalization;
using System.Text;

namespace Criteria.Core.Facts;

/// <summary>Prints numbers in units.</summary>
public static class QuantityText
{
    /// <summary>The number in <paramref name="unit"/>, with at most <paramref name="decimals"/> decimals. Durations print as hours and minutes.</summary>
    public static string Of(Ratio value, Unit unit, int decimals = 2)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (unit.Dimension == Dimension.Duration)
        {
            return Duration(value);
        }

        var number = Ratio.Divide(value, unit.Factor).ToText(decimals);
        return unit.Symbol.Length == 0 ? number : unit.Symbol[0] is '/' or '%' ? $"{number}{(unit.Symbol == "%" ? " %" : unit.Symbol)}" : $"{number} {unit.Symbol}";
    }

    private static string Duration(Ratio minutes)
    {
        var whole = decimal.Floor(minutes.Rounded / 60);
        var rest = Ratio.Of(minutes.Numerator - (whole * 60 * minutes.Denominator), minutes.Denominator);
        var text = new StringBuilder();
        if (whole > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"{whole:0} h");
        }

        if (rest.Numerator != 0 || whole == 0)
        {
            text.Append(text.Length > 0 ? " " : "").Append(rest.ToText(1)).Append(" min");
        }

        return text.ToString();
    }
}

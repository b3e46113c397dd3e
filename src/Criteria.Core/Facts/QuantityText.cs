using System.Globalization;
using System.Text;

namespace Criteria.Core.Facts;

/// <summary>Prints numbers in units.</summary>
public static class QuantityText
{
    private const int MostDecimals = 4;

    /// <summary>The number in <paramref name="unit"/>, with at most <paramref name="decimals"/> decimals. Durations print as hours and minutes.</summary>
    public static string Of(Ratio value, Unit unit, int decimals = 2)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (unit.Dimension == Dimension.Duration)
        {
            return Duration(value);
        }

        if (unit.Dimension == Dimension.Rate)
        {
            return $"{Rate(Ratio.Divide(value, unit.Factor))}{unit.Symbol}";
        }

        var number = Ratio.Divide(value, unit.Factor).ToText(decimals);
        return unit.Symbol.Length == 0 ? number : unit.Symbol[0] is '/' or '%' ? $"{number}{(unit.Symbol == "%" ? " %" : unit.Symbol)}" : $"{number} {unit.Symbol}";
    }

    // One decimal, as reports print rates; more where one would print 14.96 as 15.0 and so move it onto a threshold.
    private static string Rate(Ratio perHour)
    {
        for (var decimals = 1; decimals <= MostDecimals; decimals++)
        {
            var rounded = decimal.Round(perHour.Rounded, decimals, MidpointRounding.AwayFromZero);
            if (rounded != decimal.Truncate(rounded) || perHour == rounded || decimals == MostDecimals)
            {
                return rounded.ToString(decimals == 1 ? "0.0" : "0.0###", CultureInfo.InvariantCulture);
            }
        }

        return perHour.ToText(MostDecimals);
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

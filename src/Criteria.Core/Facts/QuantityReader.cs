using System.Globalization;

namespace Criteria.Core.Facts;

/// <summary>Why a text is not a quantity.</summary>
internal enum QuantityFault
{
    /// <summary>It is one.</summary>
    None = 0,

    /// <summary>No number at its start.</summary>
    NoNumber,

    /// <summary>A decimal comma.</summary>
    DecimalComma,

    /// <summary>A sign, an exponent or a thousands separator.</summary>
    NumberForm,

    /// <summary>More digits than any measurement has.</summary>
    TooManyDigits,

    /// <summary>A unit that is not known.</summary>
    UnknownUnit,

    /// <summary>Parts that do not belong together, as in <c>5 ft 3 kg</c>.</summary>
    MixedUnits,

    /// <summary>A number below zero.</summary>
    Negative,
}

/// <summary>Reads quantities: <c>178 cm</c>, <c>5 ft 10 in</c>, <c>7 h 12 min</c>, <c>88 %</c>, <c>101</c>.</summary>
internal static class QuantityReader
{
    /// <summary>Reads the whole text as one quantity.</summary>
    /// <param name="text">The text.</param>
    /// <param name="quantity">What was read, or null.</param>
    /// <param name="at">Where in the text a fault lies.</param>
    /// <param name="part">The faulty part of the text.</param>
    public static QuantityFault Read(string text, out Quantity? quantity, out int at, out string part)
    {
        ArgumentNullException.ThrowIfNull(text);
        quantity = null;
        at = 0;
        part = text;
        var position = 0;
        decimal total = 0;
        decimal step = 1;
        Dimension? dimension = null;
        var parts = 0;
        var previousFactor = decimal.MaxValue;
        while (true)
        {
            position = Skip(text, position);
            if (position >= text.Length)
            {
                break;
            }

            at = position;
            var fault = Number(text, ref position, out var number, out var decimals, out part);
            if (fault != QuantityFault.None)
            {
                return fault;
            }

            position = Skip(text, position);
            if (position < text.Length && char.IsAsciiDigit(text[position]))
            {
                // `1 000 cm`: a number after a number is a thousands separator, not a unit.
                var end = position;
                while (end < text.Length && char.IsAsciiDigit(text[end]))
                {
                    end++;
                }

                part = text[at..end];
                return QuantityFault.NumberForm;
            }

            var unitStart = position;
            while (position < text.Length && !char.IsWhiteSpace(text[position]) && !(char.IsAsciiDigit(text[position]) && Compound(text, unitStart, position)))
            {
                position++;
            }

            var symbol = text[unitStart..position];
            var unit = symbol.Length == 0 ? Units.One : Units.Find(symbol);
            if (unit is null)
            {
                (at, part) = (unitStart, symbol);
                return QuantityFault.UnknownUnit;
            }

            if ((dimension is { } known && known != unit.Dimension) || unit.Factor >= previousFactor
                || (parts > 0 && unit.Dimension is not (Dimension.Length or Dimension.Duration or Dimension.Mass)))
            {
                part = text[at..position];
                return QuantityFault.MixedUnits;
            }

            dimension = unit.Dimension;
            previousFactor = unit.Factor;
            total += number * unit.Factor;
            step = unit.Factor * PowerOfTenth(decimals);
            parts++;
        }

        if (parts == 0)
        {
            return QuantityFault.NoNumber;
        }

        quantity = new Quantity(total, dimension!.Value, step, text.Trim());
        return QuantityFault.None;
    }

    // `5ft10in`: a digit ends the unit before it, except in `kg/m2` and `/h`-like symbols that hold one.
    private static bool Compound(string text, int unitStart, int position) => Units.Find(text[unitStart..position]) is not null
        && !text.AsSpan(unitStart).StartsWith("kg/m2", StringComparison.Ordinal);

    private static QuantityFault Number(string text, ref int position, out decimal number, out int decimals, out string part)
    {
        number = 0;
        decimals = 0;
        var start = position;
        while (position < text.Length && (char.IsAsciiDigit(text[position]) || text[position] is '.' or ',' or '+' or '-' or '\u2212'))
        {
            position++;
        }

        part = text[start..position];
        if (part.Length == 0)
        {
            part = text[start..];
            return QuantityFault.NoNumber;
        }

        if (part.Contains(',', StringComparison.Ordinal))
        {
            return QuantityFault.DecimalComma;
        }

        if (part[0] is '-' or '\u2212')
        {
            return QuantityFault.Negative;
        }

        var digits = part.Count(char.IsAsciiDigit);
        var dots = part.Length - digits;
        if (dots > 1 || digits == 0 || (dots == 1 && (part[0] == '.' || part[^1] == '.' || !part.Contains('.', StringComparison.Ordinal)))
            || (position < text.Length && text[position] is 'e' or 'E' && position + 1 < text.Length && char.IsAsciiDigit(text[position + 1])))
        {
            return QuantityFault.NumberForm;
        }

        if (digits > Ratio.MostDigits)
        {
            return QuantityFault.TooManyDigits;
        }

        decimals = dots == 0 ? 0 : part.Length - 1 - part.IndexOf('.', StringComparison.Ordinal);
        number = decimal.Parse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return QuantityFault.None;
    }

    private static decimal PowerOfTenth(int decimals)
    {
        var power = 1m;
        for (var i = 0; i < decimals; i++)
        {
            power /= 10;
        }

        return power;
    }

    private static int Skip(string text, int position)
    {
        while (position < text.Length && char.IsWhiteSpace(text[position]))
        {
            position++;
        }

        return position;
    }
}

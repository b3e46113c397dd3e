namespace Criteria.Core.Facts;

/// <summary>Written numbers as whole numbers of one scale, so that they are compared without decimals.</summary>
internal static class ScaledNumber
{
    /// <summary>The number is multiplied by ten so often. Written numbers have few decimals; pounds in kilograms have the most, eight.</summary>
    public const int Decimals = 9;

    private static readonly long[] PowersOfTen = [.. Enumerable.Range(0, Decimals + 1).Select(power => (long)Math.Pow(10, power))];

    /// <summary>What one is.</summary>
    public static long One => PowersOfTen[Decimals];

    /// <summary>The number times ten to the ninth, when that is whole and fits.</summary>
    public static bool TryScale(decimal value, out long scaled)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        var digits = unchecked(((ulong)(uint)bits[1] << 32) | (uint)bits[0]);
        var decimals = (bits[3] >> 16) & 0xFF;
        scaled = 0;
        if (bits[2] != 0 || decimals > Decimals || Math.BigMul(digits, (ulong)PowersOfTen[Decimals - decimals], out var low) != 0 || low > long.MaxValue)
        {
            return false;
        }

        scaled = bits[3] < 0 ? -(long)low : (long)low;
        return true;
    }
}

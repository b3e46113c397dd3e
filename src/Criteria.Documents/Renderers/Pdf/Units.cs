using System.Collections.Frozen;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Which words stay on one line: a number and its unit, a sign of comparison and its number.</summary>
internal static class Units
{
    private static readonly FrozenSet<string> Names = FrozenSet.ToFrozenSet(
        ["%", "/h", "h", "min", "s", "cm", "mm", "kg", "kg/m2", "kg/m\u00B2", "mmHg", "ft", "lb", "years", "L/min", "cmH2O", "mmol/L"], StringComparer.Ordinal);

    private static readonly FrozenSet<string> Signs = FrozenSet.ToFrozenSet(["<", ">", "<=", ">=", "=", "\u2264", "\u2265"], StringComparer.Ordinal);

    /// <summary>Whether no line ends between the two words.</summary>
    public static bool Joins(string first, string second) => IsUnitOf(first, second) || (Signs.Contains(first) && second.Length > 0 && char.IsAsciiDigit(second[0]));

    private static bool IsUnitOf(string number, string word) =>
        number.Length > 0 && char.IsAsciiDigit(number[^1]) && Names.Contains(word.TrimEnd('.', ',', ';', ':', ')'));
}

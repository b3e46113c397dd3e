using System.Collections.Frozen;

namespace Criteria.Documents.Renderers.Pdf;

/// <summary>Which words stay on one line: a number and its unit.</summary>
internal static class Units
{
    private static readonly FrozenSet<string> Names = FrozenSet.ToFrozenSet(
        ["%", "/h", "h", "min", "s", "cm", "mm", "kg", "kg/m2", "kg/m\u00B2", "mmHg", "ft", "lb", "L/min", "cmH2O", "mmol/L"], StringComparer.Ordinal);

    /// <summary>Whether the second word is the unit of the first.</summary>
    public static bool Joins(string first, string second) =>
        first.Length > 0 && char.IsAsciiDigit(first[^1]) && Names.Contains(second.TrimEnd('.', ',', ';', ':', ')'));
}

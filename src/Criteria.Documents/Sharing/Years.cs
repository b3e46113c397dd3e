using System.Text.RegularExpressions;

namespace Criteria.Documents.Sharing;

/// <summary>Texts in which every date is its year.</summary>
internal static partial class Years
{
    /// <summary>The text with years in the place of dates, as documents and findings write dates.</summary>
    public static string Only(string text) => Iso().Replace(Written().Replace(text, "$1"), "$1");

    [GeneratedRegex(@"\b\d{1,2} (?:January|February|March|April|May|June|July|August|September|October|November|December) (\d{4})\b", RegexOptions.CultureInvariant)]
    private static partial Regex Written();

    [GeneratedRegex(@"\b(\d{4})-\d{2}-\d{2}\b", RegexOptions.CultureInvariant)]
    private static partial Regex Iso();
}

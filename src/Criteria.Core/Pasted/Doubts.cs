namespace Criteria.Core.Pasted;

/// <summary>The sentences with which the reading asks instead of guessing.</summary>
internal static class Doubts
{
    public const string Unknown = "There are words or signs beside it that are not understood.";
    public const string Aside = "A word beside it says that it may be a part of the night, a bound or an earlier figure.";
    public const string SeveralNames = "More than one name stands before it.";
    public const string SeveralFigures = "More than one figure stands with these words.";
    public const string SeveralRules = "More than one scoring rule stands with it.";
    public const string UnitMissing = "No unit is printed.";
    public const string UnitDiffers = "A unit beside it is of another kind.";
    public const string Implausible = "The value is unusual: check the figure and its unit.";
    public const string Order = "Figures stand before the words: it may belong to other words.";
    public const string Columns = "The row does not line up with the heading of its columns.";
    public const string Lines = "The words stand on another line, and it is open whether they belong together.";
    public const string WhichNight = "The text has several nights and does not tell which one this is.";

    public static string Other(string value, int line) => $"The text gives another value for the same fact: {value}, line {line}.";

    public static string Above(string fact, string value, int line) => $"It lies above what it cannot exceed: {fact} is {value} on line {line}. Swapped?";

    public static string Below(string fact, string value, int line) => $"It lies below what cannot exceed it: {fact} is {value} on line {line}. Swapped?";

    public const string Fits = "it fits no fact of that name: another unit, or a value that cannot be";
    public const string SetAside = "a word beside it makes it another figure than the fact";
}

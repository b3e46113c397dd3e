namespace Criteria.Core.Facts;

/// <summary>What is known of a fact in one whole number: an exact number, an answer, the place of a word, or that there is none.</summary>
/// <remarks>Made with the set of facts, one beside the other, so that a reader of many facts need not look at their values. <see cref="Other"/> says that it has to.</remarks>
internal static class FactMark
{
    /// <summary>Nothing is known. The lowest of the marks that are no numbers; they follow each other.</summary>
    public const long Unknown = long.MinValue;

    /// <summary>It does not apply.</summary>
    public const long NotApplicable = Unknown + 1;

    /// <summary>No.</summary>
    public const long No = Unknown + 2;

    /// <summary>Yes.</summary>
    public const long Yes = Unknown + 3;

    /// <summary>The first word of the choices; the others follow.</summary>
    public const long FirstWord = Unknown + 4;

    /// <summary>All that one whole number does not say: a range, a quotient, a printed figure, a date, a text.</summary>
    public const long Other = long.MaxValue;

    /// <summary>Numbers, scaled, lie between this and its opposite, both left out: the difference of two of them still fits.</summary>
    public const long NumberLimit = long.MaxValue / 2;

    /// <summary>Whether it is a number.</summary>
    public static bool IsNumber(long mark) => mark is > -NumberLimit and < NumberLimit;

    /// <summary>The mark of a fact.</summary>
    public static long Of(Fact fact) => (fact.State, fact.Value) switch
    {
        (FactState.Absent or FactState.Unknown, null) => Unknown,
        (FactState.NotApplicable, null) => NotApplicable,
        (FactState.Known, YesNoValue { Yes: var yes }) => yes ? Yes : No,
        (FactState.Known, ChoiceValue { Word: var word }) => OfWord(fact.Definition, word),
        (FactState.Known, NumberValue { Printed: null } number) => OfNumber(number.Range),
        _ => Other,
    };

    private static long OfWord(FactDefinition definition, string word)
    {
        var place = definition.Choices.IsDefault ? -1 : definition.Choices.IndexOf(word);
        return place < 0 ? Other : FirstWord + place;
    }

    private static long OfNumber(Interval range) =>
        range.Low.IsUndivided && range.High.IsUndivided && range.HighIncluded && range.Low.Numerator == range.High.Numerator
        && ScaledNumber.TryScale(range.Low.Numerator, out var scaled) && IsNumber(scaled)
            ? scaled : Other;
}

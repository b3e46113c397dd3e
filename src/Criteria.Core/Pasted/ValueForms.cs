using System.Globalization;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>Reads a printed figure as a value of a fact, with the reader of case files.</summary>
internal sealed class ValueForms(Vocabulary vocabulary, bool commasAreDecimal)
{
    private const int MinutesInAnHour = 60;

    /// <summary>The facts that it may be, most plausible ones only; and whether a unit was missing or all are implausible.</summary>
    public (IReadOnlyList<Fact> Facts, bool UnitMissing, bool Implausible) Of(FactDefinition fact, Item item, IReadOnlyList<Unit> labelled, Provenance origin)
    {
        var (texts, missing) = item.Kind == ItemKind.Date ? (Date(item.Text, fact), false) : Texts(item, fact, labelled);
        var read = texts.Distinct(StringComparer.Ordinal).Select(text => Read(fact, text, origin)).Where(one => one.Fact is not null).ToArray();
        var plausible = read.Where(one => !one.Doubtful).ToArray();
        return ([.. (plausible.Length > 0 ? plausible : read).Select(one => one.Fact!).DistinctBy(one => one.Value)], missing, read.Length > 0 && plausible.Length == 0);
    }

    private (Fact? Fact, bool Doubtful) Read(FactDefinition fact, string text, Provenance origin)
    {
        var bag = new DiagnosticBag();
        var read = new ValueReader(vocabulary, bag).Read(fact, new ScalarNode(text, Quoted: false, SourceSpan.StartOf("")), unitInKey: fact.Index is not null);
        return read is null || bag.HasErrors ? (null, false) : (read with { Origin = origin }, bag.Ordered().Count > 0);
    }

    private static IEnumerable<string> Date(string text, FactDefinition fact) =>
        fact.Kind == FactKind.Date && Dates.TryRead(text, out _) ? [text] : [];

    private (IEnumerable<string> Texts, bool UnitMissing) Texts(Item item, FactDefinition fact, IReadOnlyList<Unit> labelled)
    {
        if (item.Fault is not null || !fact.IsNumeric)
        {
            return ([], false);
        }

        var first = item.Numbers[0];
        if (first.IsClock)
        {
            return (item.Numbers.Length == 1 && fact.Unit.Dimension == Dimension.Duration ? Clock(first, labelled) : [], false);
        }

        if (item.Numbers.Length > 1)
        {
            return (Compound(item, fact), false);
        }

        var forms = NumberForms.Of(first.Digits, commasAreDecimal);
        var dimension = fact.Unit.Dimension;
        if (first.Units.Length > 0)
        {
            return (forms.SelectMany(_ => first.Units.Where(unit => unit.Dimension == dimension), Written), false);
        }

        if (dimension == Dimension.None || fact.Index is not null)
        {
            return (forms, false);
        }

        var units = labelled.Where(unit => unit.Dimension == dimension).Distinct().ToArray();
        return units.Length > 0
            ? (forms.SelectMany(_ => units, Written), false)
            : (forms.SelectMany(_ => Units.Of(dimension).Select(symbol => Units.Find(symbol)!).DistinctBy(unit => unit.Factor), Written), true);
    }

    private static string Written(string number, Unit unit) => $"{number} {unit.Symbol}".TrimEnd();

    private static IEnumerable<string> Compound(Item item, FactDefinition fact)
    {
        var texts = item.Numbers.Select((number, place) =>
        {
            var unit = number.Units.FirstOrDefault(unit => unit.Dimension == fact.Unit.Dimension);
            return unit is not null ? Written(number.Digits.Replace(',', '.'), unit)
                : place > 0 && number.Units.IsEmpty && fact.Unit.Dimension == Dimension.Duration ? Written(number.Digits, Units.Minute)
                : "";
        }).ToArray();
        return texts.Contains("") ? [] : [string.Join(' ', texts)];
    }

    // `7:12:30` is told by its parts; `7:12` may be hours and minutes, or minutes and seconds.
    private static IEnumerable<string> Clock(PrintedNumber clock, IReadOnlyList<Unit> labelled)
    {
        var parts = clock.Digits.Split(':').Select(part => decimal.Parse(part, NumberStyles.None, CultureInfo.InvariantCulture)).ToArray();
        if (parts.Skip(1).Any(part => part >= MinutesInAnHour))
        {
            return [];
        }

        var units = clock.Units.Length > 0 ? clock.Units : [.. labelled];
        var (hours, minutes) = (units.Contains(Units.Hour), units.Contains(Units.Minute));
        return parts.Length == 3 ? [Hours(parts[0], parts[1], parts[2])]
            : hours && !minutes ? [Hours(parts[0], parts[1], 0)]
            : minutes && !hours ? [Hours(0, parts[0], parts[1])]
            : [Hours(parts[0], parts[1], 0), Hours(0, parts[0], parts[1])];
    }

    private static string Hours(decimal hours, decimal minutes, decimal seconds)
    {
        var total = minutes + decimal.Round(seconds / MinutesInAnHour, 2);
        return (hours > 0 ? string.Create(CultureInfo.InvariantCulture, $"{hours:0} {Units.Hour} ") : "") + string.Create(CultureInfo.InvariantCulture, $"{total:0.##} {Units.Minute}");
    }
}

using System.Collections.Immutable;
using Criteria.Core.Cases;
using Criteria.Core.Facts;
using CsCheck;

namespace Criteria.Engine.Tests.Support;

/// <summary>Random cases in the words of the shipped vocabulary.</summary>
/// <remarks>
/// A case is decoded from whole numbers, one for each fact; 0 leaves the fact out, so that shrinking ends at the facts that matter.
/// </remarks>
internal static class RandomCases
{
    private const int Codes = 100_000;
    private const int EveryIndex = -1;

    // Enough for three documents and one trial with every attribute.
    private const int RecordCodes = 600;

    // Numbers that lie close to thresholds on purpose: chance alone would hardly ever hit one.
    private static readonly Dictionary<string, decimal[]> Near = new(StringComparer.Ordinal)
    {
        ["age"] = [17, 18, 30, 50, 51, 70],
        ["neck"] = [38, 40, 40.5m, 41, 43, 45],
        ["bicarbonate"] = [25, 27, 28, 30],
        ["epworth_total"] = [5, 10, 11, 20],
        ["height"] = [150, 170, 200],
        ["weight"] = [60, 100, 140, 141],
        ["bmi"] = [22, 35, 36],
        ["spo2_lowest"] = [80, 92, 95],
        ["spo2_mean"] = [90, 92, 94],
    };

    private static readonly decimal[] Minutes = [60, 119, 120, 239, 240, 300, 360, 420];

    private static readonly decimal[] Counts = [4, 9, 10, 27, 28, 29, 30, 60, 89, 90, 150, 179, 180, 240];

    // From the narrowest: each pair may rely on the one before.
    private static readonly (string Narrow, string Wide)[] NarrowAndWide =
        [("rei_4", "rei_3"), ("ahi_4", "ahi_3a"), ("ahi_4", "rdi_arousal_3a"), ("ahi_3a", "rdi_arousal_3a"), ("odi_4", "odi_3")];

    private static readonly string[] DiagnosisCodes = ["G47.33", "G47.31", "R06.83", "E66.811", "Z99.89"];

    private static readonly DateOnly FirstDay = new(2026, 5, 20);

    /// <summary>The facts that a case may hold, in the order of the codes.</summary>
    public static ImmutableArray<FactDefinition> Writable { get; } =
        [.. Rules.Library.Vocabulary.Facts.Where(fact => fact.Computed is null || fact.At is not null)];

    /// <summary>Cases with whatever is known, unknown or does not apply, figures that may disagree, and one or two nights.</summary>
    public static Gen<Case> Any { get; } = Gen.Select(
        Code(Writable.Length), Code(Writable.Length), Gen.Int[0, 2], Lists,
        (first, second, nights, lists) => Build(Facts(first, FactScope.Case), lists, [.. new[] { first, second }.Take(nights).Select(codes => Facts(codes, FactScope.Night))]));

    /// <summary>Single facts, as somebody would change them.</summary>
    public static Gen<Fact> Change { get; } = Gen.Select(Gen.Int[0, Writable.Length - 1], Gen.Int[0, Codes], (place, code) => Decode(Writable[place], code));

    /// <summary>The document and therapy lists of a case.</summary>
    public static Gen<RecordList[]> Lists => Gen.Select(
        Code(RecordCodes), Gen.Int[0, 3], Gen.Int[0, 1], Gen.Bool, Gen.Bool,
        (codes, documents, trials, closeDocuments, closeTherapy) => new[]
        {
            List("documents", documents, codes, closeDocuments),
            List("therapy", trials, [.. codes.Reverse()], closeTherapy),
        });

    /// <summary>Adults of whom all is known, one index for the payer, and no figure that disagrees with another.</summary>
    public static Gen<WholeCase> Consistent => Whole(Gen.Int[0, 2], agree: true);

    /// <summary>The same with every index.</summary>
    public static Gen<WholeCase> WithEveryIndex => Whole(Gen.Const(EveryIndex), agree: true);

    /// <summary>The same with one index for the payer, but printed figures may disagree with counts, times and measures.</summary>
    public static Gen<WholeCase> Contradictory => Whole(Gen.Int[0, 2], agree: false);

    /// <summary>A case with one night, or with none, from the facts given.</summary>
    public static Case Build(IReadOnlyCollection<Fact> facts, RecordList[] lists, params IReadOnlyList<IReadOnlyCollection<Fact>> nights)
    {
        var ofCase = FactSet.Of(Rules.Library.Vocabulary, [.. facts, .. Coverage()], lists);

        return new Case("HT-RANDOM", Rules.Date, ofCase, [.. nights.Select((night, number) => new Night($"night {number + 1}", ofCase.With(night)))]);
    }

    /// <summary>The same case in the words of another vocabulary that has them all.</summary>
    public static Case In(Vocabulary vocabulary, Case subject)
    {
        return subject with { Facts = Moved(subject.Facts), Nights = [.. subject.Nights.Select(night => night with { Facts = Moved(night.Facts) })] };

        FactSet Moved(FactSet facts) => FactSet.Of(
            vocabulary,
            facts.Entered.Select(fact => fact with { Definition = vocabulary.Find(fact.Definition.Id)! }),
            facts.Records.Select(list => Of(list, vocabulary.Record(list.Definition.At)!)));

        static RecordList Of(RecordList list, RecordDefinition definition) =>
            list with { Definition = definition, Items = [.. list.Items.Select(item => item with { Attributes = [.. item.Attributes.Select((fact, slot) => fact with { Definition = definition.Attributes[slot] })] })] };
    }

    private static Gen<WholeCase> Whole(Gen<int> payerIndex, bool agree) => Gen.Select(
        Code(Writable.Length), payerIndex, Code(RecordCodes), Gen.Int[0, 3], Gen.Int[0, 1],
        (codes, index, recordCodes, documents, trials) => Agreeing(codes, index, recordCodes, documents, trials, agree));

    private static Gen<int[]> Code(int length) => Gen.Int[0, Codes].Array[length];

    private static IReadOnlyCollection<Fact> Facts(int[] codes, FactScope scope) =>
        [.. Writable.Select((definition, place) => Decode(definition, codes[place])).Where(fact => fact.Definition.Scope == scope && fact.State != FactState.Absent)];

    private static Fact[] Coverage()
    {
        var vocabulary = Rules.Library.Vocabulary;

        return
        [
            Fact.Known(vocabulary.Find("coverage.payer")!, new ChoiceValue("medicare"), Provenance.Entered),
            Fact.Known(vocabulary.Find("coverage.item")!, new ChoiceValue("pap"), Provenance.Entered),
        ];
    }

    private static Fact Decode(FactDefinition definition, int code) => (code % 20) switch
    {
        < 6 => Fact.Absent(definition),
        6 => new Fact(definition, FactState.Unknown, null, Provenance.Entered),
        7 => new Fact(definition, FactState.NotApplicable, null, Provenance.Entered),
        _ => Fact.Known(definition, Value(definition, code / 20), Provenance.Entered, "as written"),
    };

    private static FactValue Value(FactDefinition definition, int code) => definition.Kind switch
    {
        FactKind.YesNo => new YesNoValue(code % 2 == 0),
        FactKind.Choice => new ChoiceValue(definition.Choices[code % definition.Choices.Length]),
        FactKind.Date => new DateValue(FirstDay.AddDays(code % 5)),
        FactKind.Text => new TextValue("text"),
        FactKind.Code => new CodeValue(DiagnosisCodes[code % DiagnosisCodes.Length]),
        FactKind.Durations => new DurationsValue([.. Enumerable.Range(0, 92 + (code % 40)).Select(night => (Ratio?)Minutes[(code + (night * night)) % Minutes.Length])]),
        FactKind.Duration => Number(definition, Minutes[code % Minutes.Length]),
        FactKind.Count => Number(definition, Near.GetValueOrDefault(definition.Id, Counts) is var counts ? counts[code % counts.Length] : 0),
        _ => Number(definition, Near.TryGetValue(definition.Id, out var near) ? near[code % near.Length] : code % 40),
    };

    // A printed figure stands for what rounds to it.
    private static NumberValue Number(FactDefinition definition, decimal value) => definition.Rounded
        ? new NumberValue(new Interval(Math.Max(0, value - 0.05m), value + 0.05m, HighIncluded: false), value)
        : new NumberValue(Interval.Exactly(value));

    private static RecordList List(string at, int length, int[] codes, bool closed)
    {
        var definition = Rules.Library.Vocabulary.Record(at)!;
        var next = 0;
        var items = Enumerable.Range(1, length).Select(number =>
        {
            var kind = definition.Kinds[codes[next++] % 5 % definition.Kinds.Length];
            return new CaseRecord($"{at} {number}", kind, [.. definition.Attributes.Select(attribute => Decode(attribute, codes[next++]))]);
        });

        return new RecordList(definition, [.. items], closed ? "a reviewer" : null);
    }

    // Of the indices that may stand for the payer's rate one is on file: a second one is another measurement, not more knowledge.
    private static WholeCase Agreeing(int[] codes, int payerIndex, int[] recordCodes, int documents, int trials, bool agree)
    {
        var vocabulary = Rules.Library.Vocabulary;
        var facts = Writable.Select((definition, place) => Fact.Known(definition, Value(definition, codes[place] / 20), Provenance.Entered, "as written"))
            .ToDictionary(fact => fact.Definition.Id, StringComparer.Ordinal);
        foreach (var (narrow, wide) in NarrowAndWide)
        {
            // What counts by the narrow rule counts by the wide one; where figures may contradict each other, one rule is enough.
            var (few, many) = (facts[$"{narrow}.events"], facts[$"{wide}.events"]);
            if (few.Number!.Value.Low > many.Number!.Value.Low)
            {
                (facts[few.Definition.Id], facts[many.Definition.Id]) = (few with { Value = many.Value }, many with { Value = few.Value });
            }
        }

        string[] payerIndices = ["rdi_payer_4", "ahi_4", "rei_4"];
        foreach (var index in vocabulary.Indices)
        {
            var time = facts[index.Rate.Computed!.From[3]];
            facts[index.Time.Id] = time with { Definition = index.Time };
            if (agree)
            {
                facts[index.Printed.Id] = Quotient(index.Printed, facts[index.Events.Id].Number!.Value.Low.Rounded * 60 / time.Number!.Value.Low.Rounded);
            }

            if (payerIndex != EveryIndex && payerIndices.Contains(index.Rate.Id) && index.Rate.Id != payerIndices[payerIndex])
            {
                foreach (var part in (FactDefinition[])[index.Printed, index.Events, index.Time])
                {
                    facts.Remove(part.Id);
                }
            }
        }

        foreach (var (_, wide) in agree ? [] : NarrowAndWide)
        {
            foreach (var part in (string[])["printed", "events", "time"])
            {
                facts.Remove($"{wide}.{part}");
            }
        }

        if (agree)
        {
            var height = facts["height"].Number!.Value.Low.Rounded;
            facts["bmi"] = Quotient(vocabulary.Find("bmi")!, facts["weight"].Number!.Value.Low.Rounded * 10_000 / (height * height));
        }

        if (facts["age"].Number!.Value.Low < 18)
        {
            facts["age"] = Fact.Known(facts["age"].Definition, Number(facts["age"].Definition, 18), Provenance.Entered);
        }

        facts.Remove("coverage.payer");
        facts.Remove("coverage.item");
        int[] known = [.. recordCodes.Select(code => (code / 20 * 20) + 10)];
        var therapy = Exact(List("therapy", trials, [.. known.Reverse()], closed: true));
        if (agree && therapy.Items.Count(trial => trial.Kind == "PAP") == 1)
        {
            // The nights of use say it all; a figure beside them would be another measurement.
            foreach (var run in vocabulary.Facts.Where(fact => fact.Computed?.Run is not null))
            {
                facts.Remove(run.Id);
            }
        }

        return new WholeCase([.. facts.Values], [Exact(List("documents", documents, known, closed: true)), therapy]);
    }

    // A rounded figure of a document or trial stays open on its threshold: there is no count beside it to settle it.
    private static RecordList Exact(RecordList list) => list with
    {
        Items =
        [
            .. list.Items.Select(item => item with
            {
                Attributes =
                [
                    .. item.Attributes.Select(fact => fact.Value is NumberValue { Printed: { } printed } ? fact with { Value = new NumberValue(Interval.Exactly(printed)) } : fact),
                ],
            }),
        ],
    };

    private static Fact Quotient(FactDefinition definition, decimal exact) =>
        Fact.Known(definition, Number(definition, decimal.Round(exact, 1, MidpointRounding.AwayFromZero)), Provenance.Entered, "as printed");
}

/// <summary>All about one case: each fact has a value, each list is closed.</summary>
internal sealed record WholeCase(ImmutableArray<Fact> Facts, RecordList[] Lists)
{
    /// <summary>The case as it stands when only the facts and documents are known that <paramref name="known"/> names.</summary>
    public Case Reveal(Func<string, bool> known)
    {
        var facts = Facts.Where(fact => known(fact.Definition.Id)).ToArray();
        var lists = Lists.Select(list => new RecordList(
            list.Definition,
            [
                .. list.Items.Where(item => known(item.Id)).Select(item => item with
                {
                    Attributes = [.. item.Attributes.Select(fact => known($"{item.Id} {fact.Definition.Id}") ? fact : Fact.Absent(fact.Definition))],
                }),
            ],
            list.Items.All(item => known(item.Id)) && known(list.Definition.At) ? list.ClosedBy : null));

        return RandomCases.Build(
            [.. facts.Where(fact => fact.Definition.Scope == FactScope.Case)], [.. lists], [.. new[] { facts.Where(fact => fact.Definition.Scope == FactScope.Night).ToArray() }]);
    }

    /// <summary>The names of all that can be revealed.</summary>
    public string[] Names =>
    [
        .. Facts.Select(fact => fact.Definition.Id),
        .. Lists.SelectMany(list => list.Items.SelectMany(item => item.Attributes.Select(fact => $"{item.Id} {fact.Definition.Id}").Prepend(item.Id)).Append(list.Definition.At)),
    ];
}
